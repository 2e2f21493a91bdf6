import { readFileSync } from "node:fs";
import { join } from "node:path";
import { FIRST_SHEET, selfCheckWorkbook } from "../../samples/self-check.ts";
import { GROUP_TITLES, GROUPS } from "../../src/core/define.ts";
import { specs } from "../../src/functions/index.ts";
import { type FileHost, openWorkbook } from "../../src/hosts/file.ts";
import { root } from "../../src/tools/paths.ts";
import type { SheetSnapshot } from "../../src/workbook/port.ts";

const onDisk = new Uint8Array(readFileSync(join(root, "samples", "self-check.xlsx")));
const [FUNCTION, FORMULA, RESULT, EXPECTED, ALLOWED, SOURCE, VERDICT] = [0, 1, 2, 3, 4, 5, 6] as const;
const FIRST_ROW = 3;

const open = (): Promise<FileHost> => openWorkbook(onDisk, "self-check.xlsx");
const sheetsOf = async (host: FileHost): Promise<Map<string, SheetSnapshot>> => new Map((await host.read()).sheets.map((sheet) => [sheet.name, sheet]));
const master = (sheets: ReadonlyMap<string, SheetSnapshot>): unknown => sheets.get(FIRST_SHEET)!.values[3]![0];
const rowsOf = (sheet: SheetSnapshot): SheetSnapshot["values"] => sheet.values.slice(FIRST_ROW - sheet.row);

let sheets: Map<string, SheetSnapshot>;
beforeAll(async () => {
  const host = await open();
  sheets = await sheetsOf(host);
  expect(host.notes()).toEqual([]);
});

test("the sample on disk is what its generator writes, byte for byte, and writes again", async () => {
  const [once, again] = [await selfCheckWorkbook(), await selfCheckWorkbook()];
  expect(Buffer.compare(once, again)).toBe(0);
  expect(Buffer.compare(once, onDisk)).toBe(0);
});

test("the first sheet is followed by one sheet for each group, and every function is in its own", () => {
  expect([...sheets.keys()]).toEqual([FIRST_SHEET, ...GROUPS.map((group) => GROUP_TITLES[group])]);
  for (const { name, group } of specs) expect(rowsOf(sheets.get(GROUP_TITLES[group])!).map((row) => row[FUNCTION])).toContain(name);
});

describe.each(GROUPS.map((group) => GROUP_TITLES[group]))("%s", (title) => {
  test("every row agrees, is live and names its source", () => {
    const sheet = sheets.get(title)!;
    for (const [i, row] of rowsOf(sheet).entries()) {
      const formulas = sheet.formulas[FIRST_ROW - sheet.row + i]!;
      const where = `${row[FORMULA]}`;
      expect([where, row[VERDICT]]).toEqual([where, "agrees"]);
      expect(formulas[RESULT]).toBe(row[FORMULA]);
      expect(formulas[FORMULA]).toBeNull();
      expect(formulas[EXPECTED]).toBeNull();
      expect(typeof row[RESULT]).toBe(typeof row[EXPECTED]);
      expect(row[ALLOWED]).toEqual(typeof row[EXPECTED] === "number" ? expect.any(Number) : "to the letter");
      expect(String(row[SOURCE]).length).toBeGreaterThan(10);
    }
  });
});

test("the master cell counts every verdict", () => {
  const count = GROUPS.reduce((sum, group) => sum + rowsOf(sheets.get(GROUP_TITLES[group])!).length, 0);
  expect(count).toBeGreaterThan(250);
  expect(master(sheets)).toBe(`all ${count} checks agree`);
});

describe("the master cell notices", () => {
  const count = (): number => Number(/\d+/.exec(String(master(sheets)))![0]);
  const change = async (title: string, column: number, content: number | string, row = FIRST_ROW): Promise<Map<string, SheetSnapshot>> => {
    const host = await open();
    await host.write([{ sheet: title, row, column, cells: [[content]] }]);
    return sheetsOf(host);
  };

  test("an expected number that is off by a little, and where", async () => {
    const { values } = sheets.get("Rings")!;
    const [expected, allowed] = [values[FIRST_ROW]![EXPECTED] as number, values[FIRST_ROW]![ALLOWED] as number];
    const changed = await change("Rings", EXPECTED, expected + 2.1 * allowed);
    expect(changed.get("Rings")!.values[FIRST_ROW]![VERDICT]).toBe("differs");
    expect(master(changed)).toBe(`1 of ${count()} differ: see Rings`);
  });

  test("expected text of another case", async () => {
    const { values } = sheets.get("Tests on the assembled engine")!;
    const row = values.findIndex((line, at) => at >= FIRST_ROW && typeof line[EXPECTED] === "string");
    const changed = await change("Tests on the assembled engine", EXPECTED, String(values[row]![EXPECTED]).toUpperCase(), row);
    expect(master(changed)).toBe(`1 of ${count()} differ: see Tests on the assembled engine`);
  });

  test("a function that gives an error or is not there", async () => {
    const changed = await change("Valves and camshaft", RESULT, "=HATCH.COILBIND(40)");
    expect(master(changed)).toBe(`1 of ${count()} differ: see Valves and camshaft`);
    const missing = await change("Valves and camshaft", RESULT, "=HATCH.NOTHERE(1)");
    expect(master(missing)).toBe(`1 of ${count()} differ: see Valves and camshaft`);
  });

  test("several groups at once, all named", async () => {
    const host = await open();
    const edits = ["Rings", "Valves and camshaft"].map((sheet) => ({ sheet, row: FIRST_ROW, column: EXPECTED, cells: [[-1]] }));
    await host.write(edits);
    expect(master(await sheetsOf(host))).toBe(`2 of ${count()} differ: see Rings, Valves and camshaft`);
  });
});
