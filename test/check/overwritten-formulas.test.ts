import fc from "fast-check";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { memoryHost } from "../../src/hosts/memory.ts";
import { at, findingsOf } from "./stand.ts";
import type { Typed } from "./workbook.ts";

// Readings are invented; what the formulas would give is worked out by hand beside them.

const found = (sheets: Record<string, Typed>) => findingsOf("overwritten formula", sheets).map(({ cell }) => at(cell));

/** Bores with their taper; `typed` stands in place of the formula of that row. */
const bores = (count: number, typed: Record<number, number>): Typed => [
  ["Cylinder", "Top", "Bottom", "Taper"],
  ...Array.from({ length: count }, (_, i) => [i + 1, 73.03, 73.01, typed[i] ?? `=HATCH.TAPER(B${i + 2}:C${i + 2},1)`]),
];

describe("a number typed over a formula", () => {
  test("is found between formulas that are alike, with what stood there and what it would give", () => {
    expect(findingsOf("overwritten formula", { Bores: bores(5, { 2: 0.01 }) })).toEqual([
      {
        kind: "overwritten formula",
        cell: { sheet: "Bores", row: 3, column: 3 },
        label: "Cylinder 3, Taper",
        value: 0.01,
        lower: null,
        upper: null,
        margin: null,
        verdict: null,
        // 73.03 − 73.01.
        details: { formula: "=HATCH.TAPER(B4:C4,1)", wouldGive: 0.02 },
        sentence:
          "0.01 is typed where the cells beside it hold a formula, which is =HATCH.TAPER(B4:C4,1) for this one and would give 0.02 here: put the formula back, or this cell no longer follows its readings",
      },
    ]);
  });

  test("is found between two of three, and at either end of a run of three others", () => {
    expect(found({ Bores: bores(3, { 1: 0.02 }) })).toEqual(["Bores!D3"]);
    expect(found({ Bores: bores(4, { 3: 0.02 }) })).toEqual(["Bores!D5"]);
    expect(found({ Bores: bores(4, { 0: 0.02 }) })).toEqual(["Bores!D2"]);
  });

  test("is found across a row, as in a sheet with its cylinders side by side", () => {
    const across: Typed = [
      ["Cylinder", 1, 2, 3, 4],
      ["Bore", 73.03, 73.02, 73.04, 73.03],
      ["Skirt", 73, 72.99, 73, 73],
      ["Clearance", "=B2-B3", "=C2-C3", 0.02, "=E2-E3"],
    ];
    expect(found({ Pistons: across })).toEqual(["Pistons!D4"]);
  });

  test("is found where the formula is one that cannot be worked out here", () => {
    const rows: Typed = [73.03, 73.02, 73.04].map((bore, i) => [i + 1, bore, i === 1 ? 0.1 : `=IFERROR(B${i + 2}-73,"")`]);
    const [finding] = findingsOf("overwritten formula", { S: [["Cylinder", "Bore", "Wear"], ...rows] });
    expect(finding!.sentence).toContain('which is =IFERROR(B3-73,"") for this one: put');
  });

  test("is found with what the formula would give where that asks for blanks first", () => {
    const rows: Typed = [73.03, 73.02, 73.04].map((bore, i) => [i + 1, bore, i === 1 ? 0.1 : `=IF(B${i + 2}="","",B${i + 2}-73)`]);
    const [finding] = findingsOf("overwritten formula", { S: [["Cylinder", "Bore", "Wear"], ...rows] });
    expect(finding!.sentence).toContain('which is =IF(B3="","",B3-73) for this one and would give 0.02 here: put');
  });
});

describe("a typed number is no such thing", () => {
  test.each<[string, Typed]>([
    ["among numbers", [["a"], [1], [2], [3]]],
    ["at the end of two formulas", bores(3, { 2: 0.02 })],
    [
      "between formulas that differ",
      [
        ["x", "y"],
        [1, "=A2+1"],
        [2, 5],
        [3, "=A4+2"],
      ],
    ],
    [
      "turn and turn about with formulas",
      [
        ["x", "y"],
        [1, "=A2+1"],
        [2, 5],
        [3, "=A4+1"],
        [4, 6],
        [5, "=A6+1"],
      ],
    ],
    [
      "that the formulas themselves use: a first reading of a meter",
      [
        ["h", "sum"],
        [5, 100],
        [6, "=B2+A3"],
        [7, "=B3+A4"],
        [8, "=B4+A5"],
      ],
    ],
    [
      "beside a margin that is worked out from it",
      [
        ["a", "m", "b", "m", "c", "m"],
        [1, "=A2-5", 2, "=C2-5", 3, "=E2-5"],
      ],
    ],
    [
      "below verdicts in words",
      [
        ["v", "ok"],
        [1, "=HATCH.VERDICT(A2,,D9)"],
        [2, 7],
        [3, "=HATCH.VERDICT(A4,,D9)"],
        [4, null, null, 5],
      ],
    ],
  ])("%s", (_, rows) => {
    expect(found({ S: rows })).toEqual([]);
  });

  test.each(["Upper limit", "Standard", "Average"])("in a row of its own below the results: %s", (name) => {
    expect(found({ Bores: [...bores(4, {}), [name, 73.05, 73.05, 0.02]] })).toEqual([]);
  });

  test("in a row without readings below the results", () => {
    expect(found({ Bores: [...bores(4, {}), [5, null, null, 0.02]] })).toEqual([]);
  });
});

describe("whatever the readings are", () => {
  const diameter = fc.integer({ min: 73_000, max: 73_100 }).map((thousandths) => thousandths / 1000);
  /** Bores one a row with their difference, whose formula a number stands in place of in the rows named. */
  const sheet = async (readings: readonly (readonly [number, number])[], typed: readonly number[]) => {
    const rows = readings.map(([top, bottom], i) => {
      const formula = { formula: `=B${i + 2}-C${i + 2}`, value: top - bottom };
      return [`Bore ${i + 1}`, top, bottom, typed.includes(i) ? 0.01 : formula];
    });
    const { findings } = checkWorkbook(await memoryHost([{ name: "Bores", cells: [["Bore", "Top", "Bottom", "Taper"], ...rows] }]).read());
    return findings.filter(({ kind }) => kind === "overwritten formula").map(({ cell }) => at(cell));
  };

  test("a column of one formula has none, and one typed inside it is found alone", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(diameter, diameter), { minLength: 3, maxLength: 20 }), fc.nat(), async (readings, seed) => {
        const inside = 1 + (seed % (readings.length - 2));
        expect(await sheet(readings, [])).toEqual([]);
        expect(await sheet(readings, [inside])).toEqual([`Bores!D${inside + 2}`]);
      }),
      { numRuns: 60 },
    );
  });

  test("a column that is mostly typed has none", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(diameter, diameter), { minLength: 4, maxLength: 20 }), async (readings) => {
        const typed = readings.flatMap((_, i) => (i % 2 ? [i] : []));
        expect(await sheet(readings, typed)).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });
});
