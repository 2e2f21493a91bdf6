import { foundIn, readings, shown } from "./declared.ts";

// Readings are invented.
test("a reading within its limits, no further from one than was typed; the nearest stands first", () => {
  const found = foundIn(
    "near limit",
    readings(["clearance", 0.038, 0.02, 0.04, null, 0.003], ["clearance", 0.0395, 0.02, 0.04, null, 0.003], ["clearance", 0.03, 0.02, 0.04, null, 0.003]),
  );
  expect(found.map(({ value, margin, verdict, sentence }) => [value, margin, verdict, sentence])).toEqual([
    [0.0395, 0.0005, "near limit", "0.0395 is within 0.02 to 0.04, 0.0005 from the upper limit, near limit as it is no further than 0.003"],
    [0.038, 0.002, "near limit", "0.038 is within 0.02 to 0.04, 0.002 from the upper limit, near limit as it is no further than 0.003"],
  ]);
  expect(found[0]!.details).toEqual({ uncertainty: 0, near: 0.003, rule: null, unseen: null });
  expect(shown(found[0]!)).toEqual(["near limit", "near"]);
});
