import fc from "fast-check";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { type CheckResult, FINDING_KINDS, type Finding } from "../../src/check/finding.ts";
import { memoryHost } from "../../src/hosts/memory.ts";
import { placeName } from "../../src/workbook/address.ts";
import { type Typed, workbook } from "./workbook.ts";

const check = (rows: Typed): CheckResult => checkWorkbook(workbook({ Bores: rows }));
const briefly = ({ findings }: CheckResult) => findings.map(({ kind, cell, label }) => [kind, placeName(cell), label]);
const counts = ({ rowsIn, checked, refused }: CheckResult) => ({ rowsIn, checked, refused });

describe("tables in long form", () => {
  const TABLE: Typed = [
    ["Readings of engine A"],
    ["Engine", "Cyl.", "Characteristic", "Reading (mm)", "Min", "Max", "Unit"],
    ["A", 1, "gap", 0.3, 0.25, 0.55, "mm"],
    ["A", 2, "gap", 0.6, 0.25, 0.55, "mm"],
    ["A", 3, "gap", "0,3", 0.25, 0.55, "mm"],
    ["A", 4, "gap", null, 0.25, 0.55, "mm"],
    ["A", 5, "gap", 0.3, null, null, "mm"],
    [null],
    ["Squared up in its own bore", null, null, "by hand"],
  ];

  test("are judged as data, row by row, and end where other text begins", () => {
    const result = check(TABLE);
    expect(briefly(result)).toEqual([
      ["outside limit", "Bores!D4", "engine A, cylinder 2, gap"],
      ["refused", "Bores!D5", "engine A, cylinder 3, gap"],
      ["missing reading", "Bores!D6", "engine A, cylinder 4, gap"],
      ["missing limit", "Bores!D7", "engine A, cylinder 5, gap"],
    ]);
    expect(counts(result)).toEqual({ rowsIn: 5, checked: 4, refused: 1 });
  });

  test("a row that a verdict beside it judges by the same limits counts once", () => {
    const result = check([...TABLE.slice(0, 1), [...TABLE[1]!, "Verdict"], [...TABLE[3]!, "=HATCH.VERDICT(D3,E3,F3)"]]);
    expect(counts(result)).toEqual({ rowsIn: 1, checked: 1, refused: 0 });
    expect(result.findings).toHaveLength(1);
  });

  test("a table of limits alone is no table of readings", () => {
    expect(
      check([
        ["Characteristic", "Lower", "Upper"],
        ["Gap", 0.25, 0.55],
      ]),
    ).toMatchObject({ rowsIn: 0, findings: [], inputs: 0 });
  });
});

describe("whatever stands in a table", () => {
  const cell = fc.oneof(
    fc.constantFrom(null, "", "73,02", "check: no", "n/a", 0, -1, { error: "#N/A" }, true, Number.MAX_VALUE),
    fc.double({ min: -100, max: 100, noNaN: true }),
  );
  const row = fc.tuple(cell, cell, cell, cell, fc.constantFrom("mm", "in", "psi", ""), fc.constantFrom("bore", "gap"));

  test("every row is counted once as checked or refused, and findings stand worst first", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(row, { maxLength: 40 }), async (rows) => {
        const head = ["Value", "Lower", "Upper", "U", "Unit", "Characteristic"];
        const result = checkWorkbook(await memoryHost([{ name: "Any", cells: [head, ...rows] }]).read());
        expect(result.rowsIn).toBe(result.checked + result.refused);
        expect(result.rowsIn).toBeLessThanOrEqual(rows.length);
        expect(result.findings.filter(({ kind }) => kind === "refused")).toHaveLength(result.refused);
        // What others come from stands before all the rest, and they follow it.
        const caused = ({ details }: Finding) => (details.causes as readonly string[] | undefined)?.length ?? 0;
        let rest = result.findings;
        while (rest[0] && caused(rest[0]) > 0) rest = rest.slice(1 + caused(rest[0]));
        expect(rest.filter((finding) => caused(finding) > 0)).toEqual([]);
        const ranks = rest.map(({ kind }) => FINDING_KINDS.indexOf(kind));
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
      }),
      { numRuns: 300 },
    );
  });
});

test("a heading that gives the limits or the uncertainty in another unit than the readings refuses its rows, blank ones are still missing", () => {
  const heads = ["Cyl.", "Reading (mm)", "Min (in)", "Max (in)", "Unit"];
  const result = check([heads, [1, 0.4, 0.01, 0.018, null], [2, 0.015, 0.01, 0.018, "in"], [3, null, 0.01, 0.018, null]]);
  expect(result.findings.map(({ kind, cell, sentence }) => [kind, placeName(cell), sentence])).toEqual([
    ["refused", "Bores!B2", "the heading of lower says inches and the reading is in mm: write both in one unit"],
    ["missing reading", "Bores!B4", "the reading is still blank"],
  ]);
  expect(counts(result)).toEqual({ rowsIn: 3, checked: 2, refused: 1 });
});
