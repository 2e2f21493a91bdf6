import { readFileSync } from "node:fs";
import { join } from "node:path";
import { openWorkbook } from "../../src/hosts/file.ts";
import { root } from "../../src/tools/paths.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { compared } from "./compared.ts";
import type { Office } from "./office.ts";
import { officeWithExtension } from "./stand.ts";

let office: Office;
beforeAll(async () => {
  office = await officeWithExtension();
}, 120_000);
afterAll(() => office.close());

const sample = (name: string): Buffer => readFileSync(join(root, "samples", name));

/** LibreOffice writes 73.00 as 73. */
const withoutZeros = (formula: string): string => formula.replace(/(\.\d*?)0+(?!\d)/g, "$1").replace(/\.(?!\d|\w)/g, "");

describe("save a copy for Excel", () => {
  test.each(["build-sheet.xlsx", "self-check.xlsx"])("%s comes back with every formula and every reach that it had", async (name) => {
    await office.ask("open", { key: "a", file: office.put(name, sample(name)), calculate: false });
    const copy = join(office.folder, `for-excel-${name}`);
    await office.ask("command", { service: "crosshatch.Menu", text: `save-for-excel ${copy}` });
    await office.ask("close", { key: "a" });
    const [before, after] = [readXlsx(sample(name)), readXlsx(readFileSync(copy))];
    const formulas = ({ sheets }: typeof before) =>
      sheets.map(({ cells }) =>
        cells.filter(({ formula }) => formula !== undefined).map(({ row, column, formula, array }) => ({ row, column, formula: withoutZeros(formula!), array })),
      );
    expect(formulas(after)).toEqual(formulas(before));
    expect(after.names).toEqual(before.names);
    await office.ask("open", { key: "b", file: copy, calculate: false });
    expect((await compared(office, "b", await openWorkbook(sample(name), name))).differences).toEqual([]);
    await office.ask("close", { key: "b" });
  });
});
