import { foundIn, readings, shown } from "./declared.ts";

// 1 in = 25.4 mm exactly (NIST SP 811, appendix B): 2.8748 in = 73.01992 mm, 73.02 mm = 2.874803 in.
const all = (values: number[]): (number | string | null)[][] => values.map((value) => ["bore", value, null, 80]);

test("inches among millimetres, and millimetres among inches, by their size", () => {
  const [inches] = foundIn("mixed units", readings(...all([73.03, 73.02, 73.02, 2.8748, 73.01, 73.01])));
  expect(inches).toMatchObject({
    value: 2.8748,
    details: { unit: "in", likeUnit: "mm", expected: 73.015, beside: "similar readings", converted: 2.8748 * 25.4 },
    sentence: "2.8748 is far from 73.015, the middle of similar readings: inches among millimetres? 2.8748 in is 73.02 mm",
  });
  const [millimetres] = foundIn("mixed units", readings(...all([2.875, 2.8748, 2.8751, 73.02, 2.8748, 2.8747])));
  expect(millimetres!.sentence).toBe("73.02 is far from 2.8749, the middle of similar readings: millimetres among inches? 73.02 mm is 2.8748 in");
  expect(shown(inches!)).toEqual(["mixed units", "fault"]);
});

test("a unit written beside it that is not that of its like", () => {
  const rows = ["mm", "mm", "in", "mm", "mm"].map((unit, i) => ["crankpin", 39.98 + i / 1000, 39.9, 40.1, null, null, unit]);
  expect(foundIn("mixed units", readings(...rows))).toMatchObject([
    {
      details: { unit: "in", likeUnit: "mm", expected: null, beside: null, converted: null, causes: [] },
      sentence: "the unit says inches where similar readings are in mm",
    },
  ]);
});
