import { compare, reading } from "./stand.ts";

/** Two engines with two cylinders, each changed by its own amount; skirts shrink. */
const both = (byA: number, byB: number) =>
  compare(
    ["A", "B"].flatMap((engine) => ["1", "2"].map((cylinder) => reading(73, { engine, cylinder }))),
    ["A", "B"].flatMap((engine) => ["1", "2"].map((cylinder) => reading(73 + (engine === "A" ? byA : byB), { engine, cylinder }))),
  );

// By hand: what has gone further from where it was has changed by more, whichever way it went.
test.each([
  [0.01, 0.03, "engine B grew by 0.02 more"],
  [0.03, 0.01, "engine B grew by 0.02 less"],
  [-0.01, -0.03, "engine B shrank by 0.02 more"],
  [-0.03, -0.01, "engine B shrank by 0.02 less"],
  [-0.01, 0.01, "engine B grew and engine A shrank, 0.02 apart"],
  [0.01, -0.01, "engine B shrank and engine A grew, 0.02 apart"],
  [0, -0.02, "engine B shrank by 0.02 more"],
  [0.02, 0, "engine B grew by 0.02 less"],
  [0.02, 0.02, "changed alike"],
])("of changes of %p and %p it is said that %s", (byA, byB, words) => {
  const { differences, meanDifferences } = both(byA, byB);
  expect(differences[0]!.says.startsWith(`${words}:`)).toBe(true);
  expect(meanDifferences[0]!.says.replace(/0\.020/, "0.02").startsWith(`${words} on average`)).toBe(true);
});

// U = 0.003 that is not split: the change has u = 0.0015 √2, so 1.96 u = 0.0042 at 95 %, and 1.645 u = 0.0035 at 90 %, by which what is the same is judged.
test.each([
  [0.0038, "reads alike on average over 2 places: the same within 0.0038, by two one-sided tests at 5 % (-0.0042 to 0.0042 at 95 % by the gauge)"],
  [0.0043, "reads alike on average over 2 places: the same within 0.0043 (-0.0042 to 0.0042 by the gauge)"],
])("what is the same within %p says by what, where the interval beside it is wider", (matters, says) => {
  const two = () => ["1", "2"].map((cylinder) => reading(73.001, { cylinder }));
  const { means } = compare(two(), two(), { matters: { general: matters, of: new Map() } });
  expect(means.map((mean) => mean.says)).toEqual([says]);
});

test("lines are counted apart from places, so that what they came to adds up", () => {
  const { verdicts, rows, places, means, differences, meanDifferences } = both(0.01, 0.03);
  const lines = places.length + means.length + differences.length + meanDifferences.length;
  expect([rows, places.length, lines]).toEqual([4, 4, 9]);
  expect(verdicts).toBe("of 9 lines 9 differ, 0 cannot be told; nothing is called the same until what matters is typed");
});

describe("what was worked out from typed sizes is told with a decimal more", () => {
  const at = { gauge: "MIC-1" };
  const master = (value: number) => reading(value, { ...at, engine: "", cylinder: "", characteristic: "master", position: "" });

  test("half a step by which a master moved is not rounded to a whole one", () => {
    // 39.981 − 39.982 and 0.0005 back: −0.0005.
    const { places } = compare(
      [master(50), master(50.001), reading(39.982, at)],
      [master(50), master(50), reading(39.981, at), reading(39.98, { ...at, cylinder: "2" })],
    );
    expect(places[0]!.says).toContain("0.0005 smaller (less the 0.0005 by which the master read smaller)");
    expect([places[0]!.sizeDecimals, places[0]!.decimals]).toEqual([3, 4]);
  });

  test("and so is the mean of repeats, with its sizes", () => {
    const { places } = compare([reading(73.01), reading(73.011)], [reading(73.02), reading(73.02)]);
    expect(places[0]!.says).toContain("0.0095 larger by the means of 2 and 2 readings");
    expect([places[0]!.sizeDecimals, places[0]!.decimals]).toEqual([4, 4]);
  });

  test("sizes as typed are not: their decimals are those that were read", () => {
    const { places } = compare([reading(73.01), reading(73.011, { cylinder: "2" })], [reading(73.02), reading(73.021, { cylinder: "2" })]);
    expect(places.map(({ sizeDecimals, decimals }) => [sizeDecimals, decimals])).toEqual([
      [3, 3],
      [3, 3],
    ]);
  });
});
