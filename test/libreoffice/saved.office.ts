import { readFileSync } from "node:fs";
import { join } from "node:path";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import { readOds } from "../../src/ods/read.ts";
import { root } from "../../src/tools/paths.ts";
import { LAYOUT_KEY, LAYOUT_ON_SHEET } from "../../src/workbook/storage.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { Made } from "../setup/made.ts";
import { compared } from "./compared.ts";
import type { Office } from "./office.ts";
import { officeWithExtension } from "./stand.ts";

let office: Office;
beforeAll(async () => {
  office = await officeWithExtension();
}, 120_000);
afterAll(() => office.close());

const sample = (name: string): Buffer => readFileSync(join(root, "samples", name));

/** LibreOffice writes 73.00 as 73, and names of sheets without quotes that they do not need. */
const plainly = (formula: string): string =>
  formula
    .replace(/(\.\d*?)0+(?!\d)/g, "$1")
    .replace(/\.(?!\d|\w)/g, "")
    .replace(/'(\w+)'!/g, "$1!")
    .replace(/\b(TRUE|FALSE)\(\)/g, "$1");

/** What check says of a workbook. */
async function findingsOf(bytes: Uint8Array) {
  const host = await openWorkbook(bytes, "saved");
  const { findings, ...counts } = checkWorkbook(await host.read());
  return { ...counts, notes: host.notes(), findings: findings.map(({ kind, cell, label, value, sentence }) => ({ kind, cell, label, value, sentence })) };
}

describe("saved by LibreOffice, check says of it what it says of the original", () => {
  test.each([
    ["the sample build sheet", async () => sample("build-sheet.xlsx")],
    ["the self-check", async () => sample("self-check.xlsx")],
    ["a build sheet for sixteen cylinders", async () => (await Made.of({ cylinders: 16, secondReadings: true })).bytes],
  ])(
    "%s",
    async (_, original) => {
      const bytes = await original();
      const wanted = await findingsOf(bytes);
      expect(wanted.findings.length).toBeGreaterThan(2);
      await office.ask("open", { key: "a", file: office.put("original.xlsx", bytes), calculate: false });
      for (const ending of ["xlsx", "ods"]) {
        const file = join(office.folder, `saved.${ending}`);
        await office.ask("store", { key: "a", file });
        expect(await findingsOf(readFileSync(file))).toEqual(wanted);
        await office.ask("open", { key: "again", file, calculate: false });
        expect((await compared(office, "again", await openWorkbook(bytes, "original"))).differences).toEqual([]);
        await office.ask("close", { key: "again" });
      }
      await office.ask("close", { key: "a" });
    },
    120_000,
  );
});

test("a layout that is kept in a workbook is kept by LibreOffice too", async () => {
  const bytes = sample("layouts/cylinders-across.xlsx");
  const { storedTexts } = readXlsx(bytes);
  expect(storedTexts.size).toBeGreaterThan(0);
  await office.ask("open", { key: "layout", file: office.put("layout.xlsx", bytes), calculate: false });
  const file = join(office.folder, "saved-layout.xlsx");
  await office.ask("store", { key: "layout", file });
  expect(readXlsx(readFileSync(file)).storedTexts).toEqual(storedTexts);
  // An .ods has no such part: there it comes from its sheet.
  const ods = join(office.folder, "saved-layout.ods");
  await office.ask("store", { key: "layout", file: ods });
  const read = readOds(readFileSync(ods));
  expect([...read.storedTexts]).toEqual([[LAYOUT_ON_SHEET, storedTexts.get(LAYOUT_KEY)]]);
  expect(read.sheets.map(({ name }) => name)).toEqual(readXlsx(bytes).sheets.map(({ name }) => name));
  await office.ask("close", { key: "layout" });
}, 60_000);

describe("save a copy for Excel", () => {
  test.each(["build-sheet.xlsx", "self-check.xlsx"])("%s comes back with every formula and every reach that it had", async (name) => {
    await office.ask("open", { key: "a", file: office.put(name, sample(name)), calculate: false });
    const copy = join(office.folder, `for-excel-${name}`);
    await office.ask("command", { service: "crosshatch.Menu", text: `save-for-excel ${copy}` });
    await office.ask("close", { key: "a" });
    const [before, after] = [readXlsx(sample(name)), readXlsx(readFileSync(copy))];
    const formulas = ({ sheets }: typeof before) =>
      sheets.map(({ cells }) =>
        cells.filter(({ formula }) => formula !== undefined).map(({ row, column, formula, array }) => ({ row, column, formula: plainly(formula!), array })),
      );
    expect(formulas(after)).toEqual(formulas(before));
    expect(after.names).toEqual(before.names);
    await office.ask("open", { key: "b", file: copy, calculate: false });
    expect((await compared(office, "b", await openWorkbook(sample(name), name))).differences).toEqual([]);
    await office.ask("close", { key: "b" });
  });
});
