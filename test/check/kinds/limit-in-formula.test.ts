import { foundIn, shown } from "./declared.ts";

test("limits written inside formulas are limits like all others; no single reading is meant", () => {
  const found = foundIn("limit in formula", {
    Bores: [["Cylinder", "Taper", "Verdict"], ...[0.012, 0.015].map((value, i) => [i + 1, value, `=HATCH.VERDICT(B${i + 2},-0.003,0.02)`])],
  });
  expect(found).toMatchObject([
    {
      ...{ value: null, lower: -0.003, upper: 0.02, margin: null, verdict: null },
      details: { formulas: 2 },
      sentence:
        "the limits -0.003 and 0.02 are written inside the formula and in 1 more on this sheet: type it into a cell with its source beside it, and let the formula refer to that cell",
    },
  ]);
  expect(shown(found[0]!)).toEqual(["limit in formula", "fault"]);
});
