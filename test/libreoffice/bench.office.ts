import { readFileSync } from "node:fs";
import { join } from "node:path";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import { root } from "../../src/tools/paths.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { factsBeside } from "../bench/facts-beside.ts";
import { shopBook } from "../bench/shop-book.ts";
import { atStand } from "../bench/stand.ts";
import { filledSheet } from "../compare/filled-sheets.ts";
import { Made } from "../setup/made.ts";
import { compared, typeInto } from "./compared.ts";
import type { Office } from "./office.ts";
import { officeWithExtension } from "./stand.ts";

const at = atStand("a page for each test");
let office: Office;
beforeAll(async () => {
  office = await officeWithExtension();
}, 120_000);
afterAll(() => office.close());

async function throughTheBench(name: string, bytes: Uint8Array): Promise<Uint8Array> {
  await at.page.give(name, bytes);
  await at.page.page.locator("#book", { hasText: name }).waitFor();
  return (await at.page.saved()).bytes;
}

const findingsOf = async (bytes: Uint8Array) => {
  const { findings, ...counts } = checkWorkbook(await (await openWorkbook(bytes, "saved.xlsx")).read());
  return { ...counts, findings: findings.map(({ kind, cell, label, value, sentence }) => ({ kind, cell, label, value, sentence })) };
};

/** A build sheet with readings in it, as its bytes. */
async function filledBytes(): Promise<Uint8Array> {
  const made = await filledSheet({ second: [0.001, 0.02, 0] });
  await office.ask("open", { key: "filling", file: office.put("filling.xlsx", made.bytes), calculate: false });
  await typeInto(office, "filling", made.host);
  const file = join(office.folder, "filled.xlsx");
  await office.ask("store", { key: "filling", file });
  await office.ask("close", { key: "filling" });
  return readFileSync(file);
}

describe("a file that the bench has saved, opened in LibreOffice", () => {
  test.each([
    ["the sample build sheet", async () => readFileSync(join(root, "samples", "build-sheet.xlsx"))],
    ["a build sheet with readings, which LibreOffice had saved before", filledBytes],
    ["a new one for sixteen cylinders", async () => (await Made.of({ cylinders: 16 })).bytes],
  ] as const)(
    "%s: shows what the bench has calculated, and Check says the same of what LibreOffice saves",
    async (_, make) => {
      const bytes = await throughTheBench("bench.xlsx", await make());
      await office.ask("open", { key: "bench", file: office.put("bench.xlsx", bytes), calculate: true });
      const host = await openWorkbook(bytes, "bench.xlsx");
      const { own, differences } = await compared(office, "bench", host);
      expect(differences).toEqual([]);
      expect(own).toBeGreaterThan(5);
      // What the bench left in the cells is what we calculate of them.
      const stored = readXlsx(bytes).sheets;
      for (const [i, { values, row, column }] of (await host.read()).sheets.entries())
        for (const cell of stored[i]!.cells)
          if (cell.formula !== undefined) expect([cell, values[cell.row - row]?.[cell.column - column] ?? ""]).toEqual([cell, cell.value ?? ""]);
      const wanted = await findingsOf(bytes);
      for (const ending of ["xlsx", "ods"]) {
        const file = join(office.folder, `from-bench.${ending}`);
        await office.ask("store", { key: "bench", file });
        expect(await findingsOf(readFileSync(file))).toEqual(wanted);
      }
      await office.ask("close", { key: "bench" });
    },
    180_000,
  );
});

test("a file that LibreOffice has saved keeps its looks, rules, names and print set-up when the bench saves it", async () => {
  for (const bytes of [(await Made.of({ cylinders: 2 })).bytes, await shopBook()]) {
    await office.ask("open", { key: "shop", file: office.put("shop.xlsx", bytes), calculate: false });
    const file = join(office.folder, "shop-saved.xlsx");
    await office.ask("store", { key: "shop", file });
    await office.ask("close", { key: "shop" });
    const before = await factsBeside(readFileSync(file));
    const after = await factsBeside(await throughTheBench("shop-saved.xlsx", readFileSync(file)));
    expect(Object.keys(before).length).toBeGreaterThan(50);
    expect(Object.fromEntries(Object.keys(before).map((key) => [key, after[key]]))).toEqual(before);
  }
}, 180_000);
