import { foundIn, shown } from "./declared.ts";

test("a lower limit of 0 under what cannot be below 0 is told once, with what the sheet says because of it", () => {
  const found = foundIn("zero limit", {
    Bores: [
      ["Cylinder", "Taper", "Verdict", "Lower", "Upper", "U"],
      [1, 0.001, "=HATCH.VERDICT(B2,D$2,E$2,F$2)", 0, 0.02, 0.004],
      [2, 0.003, "=HATCH.VERDICT(B3,D$2,E$2,F$2)", null, null, null],
      [3, 0.01, "=HATCH.VERDICT(B4,D$2,E$2,F$2)", null, null, null],
    ],
  });
  expect(found).toMatchObject([
    {
      ...{ value: 0.001, lower: 0, upper: 0.02, margin: null, verdict: null },
      details: { says: "not proven", readings: 2 },
      sentence:
        "nothing can be below this lower limit of 0, so it is left out; the sheet's own verdict goes by it and says not proven of 0.001, and differs from what is said here for 1 more reading: leave the limit blank",
    },
  ]);
  expect(shown(found[0]!)).toEqual(["zero limit", "doubt"]);
});
