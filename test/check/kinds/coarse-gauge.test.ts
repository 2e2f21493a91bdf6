import { foundIn, foundInCsv, readings, shown } from "./declared.ts";

// A third of the tolerance is common practice (shops ask for a tenth to a third); numbers are invented.
test("value, limits and margin are those of the first reading; U, tolerance and what would do have fields of their own", () => {
  const found = foundIn("coarse gauge", {
    Pistons: [["Cylinder", "Fit", "Verdict"], ...[0.027, 0.028].map((value, i) => [i + 1, value, `=HATCH.VERDICT(B${i + 2},$F$1,$F$2,$F$3)`])].map((row, i) => [
      ...row,
      null,
      ["lower", "upper", "U"][i]!,
      [0.02, 0.035, 0.006][i]!,
    ]),
  });
  expect(found).toMatchObject([
    {
      ...{ value: 0.027, lower: 0.02, upper: 0.035, margin: 0.007, verdict: "within" },
      details: { uncertainty: 0.006, tolerance: 0.015, largestUncertainty: 0.005, readings: 2 },
      sentence:
        "the uncertainty 0.006 is more than a third of the tolerance 0.015 between 0.02 and 0.035, here and for 1 more reading: measure with a gauge whose U is at most 0.005",
    },
  ]);
  expect(shown(found[0]!)).toEqual(["coarse gauge", "doubt"]);
});

test("in a file of readings it is not known how many there are", async () => {
  const found = await foundInCsv("coarse gauge", "characteristic,value,lower,upper,uncertainty\nfit,0.027,0.02,0.035,0.006\nfit,0.05,0.02,0.035,0.006\n");
  expect(found).toMatchObject([{ line: 2, value: 0.027, details: { readings: null } }]);
  expect(found[0]!.sentence).toContain("here and in rows like it: measure");
});

test("an uncertainty is not rounded down to one that would do", () => {
  // A third of 0.015 is 0.005; 0.00503 with two digits would be 0.005.
  const [finding] = foundIn("coarse gauge", readings(["fit", 0.027, 0.02, 0.035, 0.00503]));
  expect(finding!.sentence).toMatch(/^the uncertainty 0\.00503 is more than a third of the tolerance 0\.015 /);
});

test("limits that are one and the same leave nothing that could be proven", () => {
  const [finding] = foundIn("coarse gauge", readings(["fit", 0.03, 0.03, 0.03, 0.002]));
  expect(finding!.sentence).toMatch(/: no gauge can prove this$/);
});
