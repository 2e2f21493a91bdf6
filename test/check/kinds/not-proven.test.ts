import { foundIn, readings, shown } from "./declared.ts";

// ISO 14253-1: between a limit drawn in by U and the same let out by U nothing is proven. Readings are invented.
test("a reading whose uncertainty reaches across its limit, from inside, on it and from outside; what is furthest outside stands first", () => {
  const found = foundIn("not proven", readings(["bore", 73.079, 73, 73.08, 0.003], ["bore", 73.08, 73, 73.08, 0.003], ["bore", 73.082, 73, 73.08, 0.003]));
  expect(found.map(({ margin, sentence }) => [margin, sentence])).toEqual([
    [-0.002, "73.082 is over the upper limit 73.08 by 0.002, not proven either way with an uncertainty of 0.003"],
    [0, "73.08 is on the upper limit 73.08, not proven either way with an uncertainty of 0.003"],
    [0.001, "73.079 is inside the upper limit 73.08 by 0.001, not proven either way with an uncertainty of 0.003"],
  ]);
  expect(found[0]!.details).toEqual({ uncertainty: 0.003, near: 0, rule: "full U", unseen: null });
  expect(found.map(shown)).toEqual(Array(3).fill(["not proven", "doubt"]));
});

test("limits closer together than twice the uncertainty: the sentence says that nothing could be proven", () => {
  const [finding] = foundIn("not proven", readings(["fit", 0.03, 0.028, 0.032, 0.003]));
  expect(finding!.sentence).toBe(
    "0.03 is inside the upper limit 0.032 by 0.002, not proven either way with an uncertainty of 0.003, which is too much for limits so close together",
  );
});
