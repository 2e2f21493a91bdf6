import { join } from "node:path";
import { buildExtension } from "../../src/tools/libreoffice.ts";
import { Office, programs } from "../libreoffice/office.ts";
import type { BenchmarkGroup } from "./benchmark-group.ts";
import { type BenchmarkLine, RUNS, show, summary } from "./measure.ts";
import { inFolder } from "./programs.ts";

const CALLS = 10_000;
const SHEET = "Sheet1";
/** Milliseconds. */
const AIMS = { single: 1500, block: 200 };

/** Recalculation in the cells of LibreOffice with the extension: so many single calls, and one block of as many. */
export async function officeCells(): Promise<BenchmarkGroup> {
  const found = programs();
  if (typeof found === "string")
    return { lines: [{ what: "recalculation in LibreOffice's cells", measured: "–", yardstick: found, unit: "ms" }], profiles: [] };
  return inFolder(async (folder) => {
    const office = new Office(found);
    office.add(await buildExtension(join(folder, "crosshatch.oxt")));
    await office.start();
    try {
      const single = Array.from({ length: CALLS }, (_, i) => [String(7300 + (i % 100)), "7300", `=HATCH.CLEARANCE(A${i + 1};B${i + 1})`]);
      const lines = [
        await line(office, "single", `${CALLS} single calls`, AIMS.single, () =>
          office.ask("type", { key: "single", sheet: SHEET, column: 0, row: 0, formulas: single }),
        ),
      ];
      const values = single.map(([hole, shaft]) => [hole, shaft]);
      const block = async () => {
        await office.ask("type", { key: "block", sheet: SHEET, column: 0, row: 0, formulas: values });
        await office.ask("type_array", { key: "block", sheet: SHEET, box: [2, 0, 2, CALLS - 1], formula: `=HATCH.CLEARANCE(A1:A${CALLS};B1:B${CALLS})` });
      };
      lines.push(await line(office, "block", `one block of ${CALLS} results`, AIMS.block, block));
      return { lines, profiles: [] };
    } finally {
      await office.close();
    }
  });
}

async function line(office: Office, key: string, what: string, aim: number, fill: () => Promise<unknown>): Promise<BenchmarkLine> {
  await office.ask("open", { key });
  await fill();
  const took: number[] = [];
  // The first warms up.
  for (let run = 0; run <= RUNS; run++) took.push(1000 * (await office.ask<number>("calculate", { key })));
  const timing = summary(took.slice(1));
  return { what: `recalculation in LibreOffice's cells: ${what}`, measured: show(timing), yardstick: "–", value: timing.median, unit: "ms", aim };
}
