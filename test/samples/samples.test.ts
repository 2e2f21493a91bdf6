import { readFileSync } from "node:fs";
import { join } from "node:path";
import { engineSample } from "../../samples/engine/engine.ts";
import { readingsCsv } from "../../samples/readings.ts";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { CheckResult } from "../../src/check/finding.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import { root } from "../../src/tools/paths.ts";
import { placeName } from "../../src/workbook/address.ts";
import { crosshatch } from "../cli/run.ts";

/** What samples/README.md says a check must find. The readings are invented; only the planting is asserted. */
describe("the sample build sheet", () => {
  let result: CheckResult;
  let cell: (sheet: string, row: number, column: number) => unknown;
  beforeAll(async () => {
    const snapshot = await (await openWorkbook(readFileSync(join(root, "samples", "build-sheet.xlsx")), "build-sheet.xlsx")).read();
    cell = (sheet, row, column) => {
      const found = snapshot.sheets.find(({ name }) => name === sheet)!;
      return found.values[row - found.row]![column - found.column];
    };
    result = checkWorkbook(snapshot);
  });

  test("every row is checked and just the planted findings are reported, worst first", () => {
    expect(result).toMatchObject({ rowsIn: 27, checked: 27, refused: 0 });
    expect(
      result.findings.map(({ kind, cell: at, value, lower, upper, margin, verdict }) => ({ kind, at: placeName(at), value, lower, upper, margin, verdict })),
    ).toEqual([
      { kind: "outside limit", at: "Bores!C17", value: 0.025, lower: null, upper: 0.02, margin: -0.005, verdict: "over" },
      { kind: "outside limit", at: "Bores!E17", value: 0.025, lower: null, upper: 0.02, margin: -0.005, verdict: "over" },
      { kind: "outside limit", at: "Bores!I17", value: 0.045, lower: 0.02, upper: 0.04, margin: -0.005, verdict: "over" },
      { kind: "outside limit", at: "'Bore book'!I5", value: 0.025, lower: null, upper: 0.02, margin: -0.005, verdict: "over" },
      { kind: "missing reading", at: "Rings!C7", value: null, lower: 0.25, upper: 0.55, margin: null, verdict: null },
    ]);
  });

  test("a clearance and a taper on their limits are within them, with a margin of nothing", () => {
    expect([cell("Bores", 17, 8), cell("Bores", 17, 9), cell("Bores", 17, 10)]).toEqual([0.04, "within", 0]);
    expect([cell("Bores", 17, 2), cell("Bores", 17, 3)]).toEqual([0.02, "within"]);
  });

  test("the row of the reading not taken stays blank", () => {
    expect([3, 5, 6].map((column) => cell("Rings", 6, column))).toEqual([0.2921, "", ""]);
  });
});

describe("crankshaft, head and oil of engine B", () => {
  const bytes = readFileSync(join(root, "samples", "engine", "crankshaft-head-oil.xlsx"));

  test("the file is what its maker makes, and just the planted findings are reported", async () => {
    expect(Buffer.from(engineSample()).equals(bytes)).toBe(true);
    const result = checkWorkbook(await (await openWorkbook(bytes, "crankshaft-head-oil.xlsx")).read());
    expect(result).toMatchObject({ rowsIn: 91, checked: 91, refused: 0 });
    expect(result.findings.map(({ kind, label, value, upper }) => [kind, label, value, upper])).toEqual([
      ["likely slip", "Cylinder 2, Exhaust, Guide bottom", 7.066, null],
      ["outside limit", "Cylinder 2, Exhaust, Stem clearance, loosest", 0.106, 0.08],
      ["outside limit", "Cylinder 2, Exhaust, Guide taper", 0.045, 0.03],
      ["outside limit", "Cylinder 2, Crankpin wear", 0.076, 0.04],
      ["outside limit", "Sample 4, Lead, Content", 31, 20],
      ["outside limit", "Head, Flatness", expect.closeTo(0.0746, 4), 0.05],
      ["outside limit", "Head, Flatness over a span", expect.closeTo(0.0742, 4), 0.05],
      ["outside limit", "Cylinder 2, Big end clearance", 0.099, 0.08],
      ["outside limit", "Sample 4, Iron, Content", 74, 60],
    ]);
  });

  test("the crankpins are ground alike, and the oil's rates are those worked out by hand", async () => {
    const { sheets } = await (await openWorkbook(bytes, "crankshaft-head-oil.xlsx")).read();
    const column = (name: string, heading: string, rows = 5): unknown[] => {
      const { values } = sheets.find((sheet) => sheet.name === name)!;
      const head = values.findIndex((line) => line.includes(heading));
      return values.slice(head + 1, head + 1 + rows).map((line) => line[values[head]!.indexOf(heading)]);
    };
    expect(column("Regrind", "Finish").slice(0, 3)).toEqual([39.75, 39.75, 39.75]);
    // 40 − 2 × (40 − 39.924) − 0.03.
    expect(column("Regrind", "Needed")[1]).toBe(39.818);
    // 0.78 l in 240 h, and 0.2 in the last 40.
    const oil = "Oil and blow-by";
    expect([column(oil, "Oil use")[0], column(oil, "Last interval")[0]]).toEqual([expect.closeTo(0.00325, 9), expect.closeTo(0.005, 9)]);
    // (18 − 2) ÷ 250 and (74 − 2) ÷ 240; 57 l in 2 minutes.
    const worn = column(oil, "Worn in per hour", 28);
    expect([worn[0], worn[21]]).toEqual([0.064, 0.3]);
    expect(column(oil, "Blow-by", 8).at(-1)).toBe(1710);
    expect(column(oil, "In words")[0]).toBe("grows");
  });
});

describe("the sample readings", () => {
  test("the file is what its generator makes", () => {
    expect(readFileSync(join(root, "samples", "readings.csv"), "utf8")).toBe(readingsCsv());
  });

  test("every planted slip is found at its line and nothing else is", async () => {
    const { code, out } = await crosshatch(["check", "--json", join(root, "samples", "readings.csv")]);
    expect(code).toBe(1);
    const lines = out
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line) as { kind?: string; line?: number; rowsIn?: number; checked?: number; refused?: number });
    expect(lines.at(-1)).toMatchObject({ rowsIn: 78, checked: 76, refused: 2 });
    const found = lines.slice(0, -1).map(({ kind, line }) => `${line} ${kind}`);
    expect(found.sort((a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10))).toEqual([
      "7 not proven",
      "15 outside limit",
      "21 refused",
      "40 mixed units",
      "44 likely slip",
      "44 outside limit",
      "51 refused",
      "55 mixed units",
      "55 outside limit",
      "62 missing reading",
      "69 likely slip",
      "69 outside limit",
      "78 likely slip",
      "78 outside limit",
    ]);
  });
});
