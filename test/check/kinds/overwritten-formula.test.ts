import { foundIn, shown } from "./declared.ts";

// The taper of 73.03 and 73.01 is 0.02.
const rows = (third: number | string) => ({
  Bores: [["Cylinder", "Top", "Low", "Taper"], ...[2, 3, 4, 5, 6].map((row) => [row - 1, 73.03, 73.01, row === 4 ? third : `=HATCH.TAPER(B${row}:C${row},1)`])],
});

test("a number typed over a formula is told with the formula and what it would give", () => {
  const found = foundIn("overwritten formula", rows(0.01));
  expect(found).toMatchObject([
    {
      ...{ value: 0.01, lower: null, upper: null, margin: null, verdict: null },
      details: { formula: "=HATCH.TAPER(B4:C4,1)", wouldGive: 0.02 },
      sentence:
        "0.01 is typed where the cells beside it hold a formula, which is =HATCH.TAPER(B4:C4,1) for this one and would give 0.02 here: put the formula back, or this cell no longer follows its readings",
    },
  ]);
  expect(shown(found[0]!)).toEqual(["overwritten formula", "fault"]);
});
