import { foundIn, readings, shown } from "./declared.ts";

test("one reading that its limits wait for", () => {
  const [finding, ...others] = foundIn("missing reading", readings(["gap", null, 0.25, 0.55]));
  expect(others).toEqual([]);
  expect(finding).toMatchObject({
    ...{ value: null, lower: 0.25, upper: 0.55, margin: null, verdict: null },
    details: { blank: "one reading", range: null },
    sentence: "the reading is still blank",
  });
  expect(shown(finding!)).toEqual(["missing reading", "fault"]);
});

test.each([
  [
    "one of a bore that has others",
    [
      ["Thrust", "Pin", "Taper"],
      [73.02, 73.02, "=HATCH.TAPER(A2:B3)"],
      [73.01, null],
    ],
    { blank: "one of a range", range: null },
    "the reading is still blank, so nothing is worked out from its range",
  ],
  [
    "a bore not yet begun",
    [
      ["Thrust", "Pin", "Taper"],
      [null, null, "=HATCH.TAPER(A2:B3)"],
    ],
    { blank: "a whole range", range: "A2:B3" },
    "no readings yet in A2:B3",
  ],
  [
    "one whose partner is there",
    [
      ["Hole", "Shaft", "Fit"],
      [20.02, null, "=HATCH.CLEARANCE(A2,B2)"],
    ],
    { blank: "one of a row", range: null },
    "the reading is still blank, while others that go with it are there",
  ],
])("%s", (_, rows, details, sentence) => {
  expect(foundIn("missing reading", { Bores: rows as (string | number | null)[][] })).toMatchObject([{ details, sentence }]);
});
