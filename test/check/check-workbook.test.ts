import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { CheckResult, Finding } from "../../src/check/finding.ts";
import { memoryHost } from "../../src/hosts/memory.ts";
import { placeName } from "../../src/workbook/address.ts";
import { type Typed, workbook } from "./workbook.ts";

/** Limits stand inside formulas here to keep the sheets small, which has tests of its own. */
function check(rows: Typed, more: Record<string, Typed> = {}): CheckResult {
  const result = checkWorkbook(workbook({ Bores: rows, ...more }));
  return { ...result, findings: result.findings.filter(({ kind }) => kind !== "limit in formula") };
}
const briefly = ({ findings }: CheckResult) => findings.map(({ kind, cell, label }) => [kind, placeName(cell), label]);
const counts = ({ rowsIn, checked, refused }: CheckResult) => ({ rowsIn, checked, refused });

const LIMITS: Typed = [
  ["Characteristic", "Lower", "Upper"],
  ["Clearance", 0.02, 0.04],
  ["Gap", 0.25, 0.55],
];

describe("verdicts", () => {
  // ISO 14253-1 zones as VERDICT keeps them; the expected words are those of its own cited tests.
  const RESULTS: Typed = [
    ["Cylinder", "Clearance", "U", "Near", "Verdict"],
    ...[
      [0.03, null, null],
      [0.041, null, null],
      [0.019, null, null],
      [0.039, 0.002, null],
      [0.038, null, 0.003],
      [0.04, null, null],
    ].map(([value, u, near], i) => {
      const row = i + 2;
      return [i + 1, value!, u!, near!, `=HATCH.VERDICT(B${row}, Limits!$B$2, Limits!$C$2, C${row}, D${row})`];
    }),
  ];

  test("readings are judged with their limits, uncertainty and near, worst first and each with its own cell", () => {
    const result = check(RESULTS, { Limits: LIMITS });
    expect(briefly(result)).toEqual([
      ["outside limit", "Bores!B3", "Cylinder 2, Clearance"],
      ["outside limit", "Bores!B4", "Cylinder 3, Clearance"],
      ["not proven", "Bores!B5", "Cylinder 4, Clearance"],
      ["near limit", "Bores!B6", "Cylinder 5, Clearance"],
    ]);
    expect(counts(result)).toEqual({ rowsIn: 6, checked: 6, refused: 0 });
  });

  test("a finding holds value, limits, margin, verdict and one plain sentence", () => {
    const [first] = check(RESULTS, { Limits: LIMITS }).findings;
    expect(first).toEqual({
      kind: "outside limit",
      cell: { sheet: "Bores", row: 2, column: 1 },
      label: "Cylinder 2, Clearance",
      value: 0.041,
      lower: 0.02,
      upper: 0.04,
      margin: -0.001,
      verdict: "over",
      details: { uncertainty: 0, near: 0, rule: null, unseen: null },
      sentence: "0.041 is over the upper limit 0.04 by 0.001",
    } satisfies Finding);
  });

  // 0.82 U inside a limit is a probability of 95 % (ILAC-G8:09/2019: 1.645 u).
  test("the decision rule that a verdict asks for is the one that the finding follows and names", () => {
    const { findings } = check([
      ["Clearance", "U", "Verdict", "In words"],
      [0.0383, 0.002, '=HATCH.VERDICT(A2, , 0.04, B2, , "95 %")', ""],
      [0.0385, 0.002, '=HATCH.VERDICT(A3, , 0.04, B3, , "95 %")', ""],
      [0.0381, 0.002, '=HATCH.VERDICT(A4, , 0.04, B4, , "95 %")', "=HATCH.EXPLAIN(A4, , 0.04, B4)"],
    ]);
    expect(findings.map(({ cell, details, sentence }) => [placeName(cell), (details as { rule?: string }).rule, sentence])).toEqual([
      ["Bores!A3", "95 %", "0.0385 is inside the upper limit 0.04 by 0.0015, not proven either way at 95 % with an uncertainty of 0.002"],
      ["Bores!A4", "full U", "0.0381 is inside the upper limit 0.04 by 0.0019, not proven either way with an uncertainty of 0.002"],
    ]);
  });

  test("a difference exactly on the limit is no finding: 73.04 − 73.00 is within 0.04", () => {
    const result = check([
      ["Hole", "Shaft", "Verdict"],
      [73.04, 73, "=HATCH.VERDICT(A2-B2, , 0.04)"],
    ]);
    expect(result).toMatchObject({ findings: [], rowsIn: 1, checked: 1 });
  });

  test("one reading judged by VERDICT, EXPLAIN and MARGIN counts once, by the one that knows the uncertainty", () => {
    const result = check([
      ["Clearance", "Verdict", "In words", "Margin"],
      [0.039, "=HATCH.VERDICT(A2,0.02,0.04)", "=HATCH.EXPLAIN(A2,0.02,0.04,0.002)", "=HATCH.MARGIN(A2,0.02,0.04)"],
    ]);
    expect(counts(result)).toEqual({ rowsIn: 1, checked: 1, refused: 0 });
    expect(briefly(result)).toEqual([["not proven", "Bores!A2", "Clearance"]]);
  });

  test("a value worked out inside the formula is found at its verdict, once for the same words", () => {
    const result = check([
      ["Cylinder", "Bore", "Skirt", "Verdict", "Margin"],
      [1, 73.05, 73, "=HATCH.VERDICT(HATCH.CLEARANCE(B2,C2),0.02,0.04)", "=HATCH.MARGIN(HATCH.CLEARANCE($B2, C2),0.02,0.04)"],
      [2, 73.03, 73, "=HATCH.VERDICT(B3-C3,0.02,0.04)", null],
    ]);
    expect(briefly(result)).toEqual([["outside limit", "Bores!D2", "Cylinder 1"]]);
    expect(result.rowsIn).toBe(2);
  });

  test("the same numbers typed into two formulas are two rows", () => {
    expect(check([["=HATCH.VERDICT(0.05,,0.04)"], ["=HATCH.VERDICT(0.05,,0.04)"]]).findings).toHaveLength(2);
  });

  test("a block judged by one formula is one row for each cell, and each is found at its reading", () => {
    const result = check(
      [
        ["Cylinder", "Gap", "Verdict"],
        [1, 0.3, "=HATCH.VERDICT(B2:B5, Limits!B3, Limits!C3)"],
        [2, 0.2, null],
        [3, null, null],
        [4, 0.6, null],
      ],
      { Limits: LIMITS },
    );
    expect(briefly(result)).toEqual([
      ["outside limit", "Bores!B3", "Cylinder 2, Gap"],
      ["outside limit", "Bores!B5", "Cylinder 4, Gap"],
      ["missing reading", "Bores!B4", "Cylinder 3, Gap"],
    ]);
    expect(counts(result)).toEqual({ rowsIn: 4, checked: 4, refused: 0 });
  });

  test("a verdict inside another formula is found too", () => {
    const result = check([
      ["Gap", "Note"],
      [0.7, '=IF(HATCH.VERDICT(A2,0.25,0.55)="within","fine","look")'],
    ]);
    expect(briefly(result)).toEqual([["outside limit", "Bores!A2", "Gap"]]);
  });
});

describe("formulas that cannot be looked into", () => {
  const rows = [
    { cells: ["Gap", "Verdict"] },
    { value: 0.7, formula: "=HATCH.VERDICT(A2, GapLower, GapUpper)", said: "over" },
    { value: 0.3, formula: "=HATCH.VERDICT(A3, GapLower, GapUpper)", said: "within" },
    { value: 0.3, formula: "=HATCH.MARGIN(A4, GapLower, GapUpper)", said: -0.05 },
    { value: 0.3, formula: '=IF(HATCH.VERDICT(A5, GapLower, GapUpper)="over","no","yes")', said: "no" },
    { value: 0.3, formula: "=HATCH.VERDICT(A6, GapLower, GapUpper)", said: "check: lower 0.6 is larger than upper 0.5: are they swapped?" },
  ];

  test("fall back on what the cell says, and the sentence tells so", async () => {
    const cells = rows.map((row) => ("cells" in row ? (row.cells as string[]) : [row.value, { formula: row.formula, value: row.said }]));
    const result = checkWorkbook(await memoryHost([{ name: "Rings", cells }]).read());
    expect(counts(result)).toEqual({ rowsIn: 5, checked: 3, refused: 2 });
    expect(result.findings.map(({ kind, cell, value, margin, sentence }) => [kind, placeName(cell), value, margin, sentence])).toEqual([
      [
        "outside limit",
        "Rings!A4",
        0.3,
        -0.05,
        "the sheet gives a margin of -0.05, outside a limit; its formula cannot be looked into (the name GapLower is not known), so its limits are not shown",
      ],
      [
        "outside limit",
        "Rings!A2",
        0.7,
        null,
        "the sheet says over; its formula cannot be looked into (the name GapLower is not known), so its limits are not shown",
      ],
      ["refused", "Rings!B5", "no", null, "the formula cannot be looked into (the name GapLower is not known), and its cell shows no verdict"],
      ["refused", "Rings!B6", 0.3, null, "lower 0.6 is larger than upper 0.5: are they swapped?"],
    ]);
  });
});

describe("input that cannot be judged", () => {
  test("text in a number, a decimal comma and an error cell are refused where they stand", () => {
    const result = check([
      ["Gap", "Verdict"],
      ["0.3x", "=HATCH.VERDICT(A2,0.25,0.55)"],
      ["73,02", "=HATCH.VERDICT(A3,0.25,0.55)"],
      ["=1/0", "=HATCH.VERDICT(A4,0.25,0.55)"],
      [0.3, "=HATCH.VERDICT(A5,0.55,0.25)"],
    ]);
    expect(counts(result)).toEqual({ rowsIn: 4, checked: 0, refused: 4 });
    expect(result.findings.map(({ cell, sentence }) => [placeName(cell), sentence])).toEqual([
      ["Bores!A2", 'value holds the text "0.3x": it must be a number'],
      ["Bores!A3", 'value holds the text "73,02": a decimal comma is not read, type it with this sheet\'s decimal sign'],
      ["Bores!A4", "value holds the error #DIV/0!: correct that cell first"],
      ["Bores!A5", "lower 0.55 is larger than upper 0.25: are they swapped?"],
    ]);
  });

  test("a fault is followed back through results, spilled ones too, to the reading that causes it", () => {
    const result = check([
      ["Cylinder", "Top thrust", "Top pin", "Low thrust", "Low pin", "Taper", "Verdict"],
      [1, 73.01, 73.01, 73.0, 73.0, "=HATCH.TAPER(B2:E3, 2)", "=HATCH.VERDICT(F2:F3, , 0.02)"],
      [2, 73.01, "worn", 73.0, 73.0, null, null],
    ]);
    expect(briefly(result)).toEqual([["refused", "Bores!C3", "Cylinder 2, Top pin"]]);
    expect(counts(result)).toEqual({ rowsIn: 2, checked: 1, refused: 1 });
  });

  test("a result that nobody judges is refused as a row of its own, once for its cause", () => {
    const result = check([
      ["Thrust", "Pin", "Taper", "Out-of-round", "Fit"],
      [73.01, "n/a", "=HATCH.TAPER(A2:B3)", "=HATCH.OUTOFROUND(A2:B3)", "=HATCH.CLEARANCE(72, 73)"],
      [73.0, 73.0, null, null, null],
    ]);
    expect(briefly(result)).toEqual([
      ["refused", "Bores!B2", "Pin"],
      ["refused", "Bores!E2", "Fit"],
    ]);
    expect(result.findings[1]!.sentence).toBe("CLEARANCE: shaft 73 is larger than hole 72: are they swapped? A press fit is one for HATCH.INTERFERENCE");
    expect(counts(result)).toEqual({ rowsIn: 2, checked: 0, refused: 2 });
  });

  test("ranges of unequal shape are one fault of the whole formula", () => {
    const result = check([
      [1, 2, "=HATCH.VERDICT(A1:A3, B1:B2)"],
      [1, 2],
      [1, 2],
    ]);
    expect(result.findings.map(({ kind, cell }) => [kind, placeName(cell)])).toEqual([["refused", "Bores!C1"]]);
  });

  test("a limit that is text is refused at the limit", () => {
    const result = check([
      ["Gap", "Least", "Verdict"],
      [0.3, "n/a", "=HATCH.VERDICT(A2,B2)"],
    ]);
    expect(briefly(result)).toEqual([["refused", "Bores!B2", "Least"]]);
  });
});

describe("blanks", () => {
  test("a blank inside begun readings is missing, and the results and verdicts made of it are not told again", () => {
    const result = check([
      ["Cylinder", "Height", "Thrust", "Pin", "Taper", "Verdict"],
      [1, "top", 73.02, 73.02, "=HATCH.TAPER(C2:D3)", "=HATCH.VERDICT(E2,,0.02)"],
      [1, "low", 73.01, null, null, null],
    ]);
    expect(briefly(result)).toEqual([["missing reading", "Bores!D3", "Cylinder 1, low, Pin"]]);
    expect(counts(result)).toEqual({ rowsIn: 1, checked: 1, refused: 0 });
  });

  test("a bore not yet begun is told once", () => {
    const result = check([
      ["Thrust", "Pin", "Taper", "Verdict"],
      [null, null, "=HATCH.TAPER(A2:B3)", "=HATCH.VERDICT(C2,,0.02)"],
      [null, null, null, null],
    ]);
    expect(result.findings.map(({ cell, sentence }) => [placeName(cell), sentence])).toEqual([["Bores!A2", "no readings yet in A2:B3"]]);
  });

  test("formulas filled down ahead of readings and limits stay quiet and are no rows", () => {
    const result = check([["Gap", "Least", "Most", "Verdict"], ...[2, 3, 4].map((row) => [null, null, null, `=HATCH.VERDICT(A${row},B${row},C${row})`])]);
    expect(result).toMatchObject({ findings: [], rowsIn: 0 });
  });

  test("a blank beside its filled partner is missing", () => {
    const result = check([
      ["Hole", "Shaft", "Clearance"],
      [20.02, 20, "=HATCH.CLEARANCE(A2:A4,B2:B4)"],
      [20.02, null, null],
      [null, null, null],
    ]);
    expect(briefly(result)).toEqual([["missing reading", "Bores!B3", "Shaft"]]);
  });

  test("a reading without any limit is told", () => {
    const result = check([
      ["Gap", "Least", "Most", "Verdict"],
      [0.3, null, null, "=HATCH.VERDICT(A2,B2,C2)"],
    ]);
    expect(result.findings.map(({ kind, sentence }) => [kind, sentence])).toEqual([["missing limit", "0.3 has no limit to be judged by"]]);
    expect(counts(result)).toEqual({ rowsIn: 1, checked: 1, refused: 0 });
  });
});

test("an empty workbook has nothing to check", () => {
  expect(checkWorkbook({ name: "", sheets: [] })).toEqual({ findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0 });
});
