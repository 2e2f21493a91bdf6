import { compareReadings } from "../../src/compare/compare.ts";
import type { Reading } from "../../src/compare/readings.ts";
import { compare, csv, reading } from "./stand.ts";

const at = { gauge: "BG-1", uncertainty: 0.004 };
const build = (more: Partial<Reading> = {}) => ({ ...at, day: "2026-03-01", ...more });
const strip = (more: Partial<Reading> = {}) => ({ ...at, day: "2026-11-01", ...more });
const master = (value: number | null, more: Partial<Reading>) => reading(value, { engine: "", cylinder: "", characteristic: "master", position: "", ...more });

/** Three bores with the same change, and the gauge's master with another one. */
function study(change: number, moved: number, more: Partial<Reading> = {}) {
  const bores = (by: number, of: (more: Partial<Reading>) => Partial<Reading>) =>
    [1, 2, 3].map((cylinder) => reading(73 + cylinder / 100 + by, of({ cylinder: `${cylinder}`, ...more })));
  return [
    [master(50, build()), ...bores(0, build)],
    [master(50 + moved, strip()), ...bores(change, strip)],
  ] satisfies Reading[][] as [Reading[], Reading[]];
}

describe("what the master moved by", () => {
  test("is taken out of every change, told in the sentence, and counted in a note", () => {
    const { places, means, notes, rows } = compare(...study(0.012, 0.01));
    expect(rows).toBe(3);
    expect(places.map(({ difference }) => difference)).toEqual([0.002, 0.002, 0.002]);
    expect(means[0]!.difference).toBe(0.002);
    expect(places[0]!.master!.moved).toBe(0.01);
    expect(places[0]!.says).toContain("0.002 larger (less the 0.010 by which the master read larger), which is worse");
    expect(notes).toContain("the master of gauge BG-1 read 0.010 larger after than before: taken out of 3 places");
  });

  // By hand, rule of the mean: own √2 × 0.002 divides by √3, the master's u_r²/1 of each campaign does not.
  test("leaves the doubt of its own readings, which no number of places makes smaller", () => {
    const [mean] = compare(...study(0.012, 0.01)).means;
    expect(mean!.by).toBe("gauge");
    expect(mean!.uncertainty).toBeCloseTo(2 * Math.sqrt((2 * 0.002 ** 2) / 3 + 2 * 0.002 ** 2), 8);
    expect(mean!.commonUncertainty).toBeCloseTo(2 * Math.SQRT2 * 0.002, 8);
  });

  // A common part of 0.003 of U 0.005 leaves 0.004 of each reading's own: 3-4-5.
  test("makes a typed common part cancel", () => {
    const [before, after] = study(0.012, 0.01, { uncertainty: 0.005, common: 0.003 });
    const [place] = compare([...before], [...after]).places;
    expect(place!.uncertainty).toBeCloseTo(2 * Math.sqrt(2 * 0.002 ** 2 + 2 * 0.002 ** 2), 8);
  });

  // By hand: four readings at each end; w of the second campaign is 0.006, so w²/12 = 3e-6.
  test("is the mean of its readings, and what the gauge drifts in a session counts", () => {
    const ends = (of: typeof build, values: readonly number[]) =>
      values.map((value, i) => master(value, of({ position: i < values.length / 2 ? "start" : "end" })));
    const [before, after] = study(0.012, 0.01);
    const first = [...ends(build, [50, 50.001, 50, 50.001]), ...before.slice(1)];
    const last = [...ends(strip, [50.01, 50.012, 50.004, 50.006]), ...after.slice(1)];
    const { places, notes } = compare(first, last);
    expect(places[0]!.master!.moved).toBeCloseTo(0.0075, 9);
    expect(places[0]!.master!.before).toBeCloseTo(0.001, 9);
    expect(places[0]!.master!.after).toBeCloseTo(Math.sqrt(0.002 ** 2 / 4 + 0.006 ** 2 / 12), 9);
    expect(notes).toContain("the master of gauge BG-1 moved by 0.006 within the campaign after, more than its U: measure again");
  });

  test("is nothing to a place that another gauge measured, or a gauge on another day", () => {
    const [before, after] = study(0.012, 0.01);
    const other = after.slice(1).map((one) => ({ ...one, gauge: "BG-2" }));
    expect(compare([...before], [after[0]!, ...other]).places.map(({ master: own }) => own)).toEqual([undefined, undefined, undefined]);
    const later = after.slice(1).map((one) => ({ ...one, day: "2026-11-02" }));
    expect(compare([...before], [after[0]!, ...later]).places[0]!.master).toBeUndefined();
  });

  test("of two engines measured in the same sessions is the same, and cancels with its doubt", () => {
    const [before, after] = study(0.012, 0.01);
    const second = (side: readonly Reading[], by: number) => side.slice(1).map((one) => ({ ...one, engine: "B", value: one.value! + by }));
    const { meanDifferences } = compare([...before, ...second(before, 0)], [...after, ...second(after, 0.004)]);
    expect(meanDifferences[0]!.difference).toBeCloseTo(0.004, 9);
    expect(meanDifferences[0]!.commonUncertainty).toBe(0);
    expect(meanDifferences[0]!.uncertainty).toBeCloseTo(2 * Math.sqrt((4 * 0.002 ** 2) / 3), 8);
  });
});

describe("a master that tells nothing is said by name", () => {
  test("read in one campaign only", () => {
    const [before, after] = study(0.012, 0.01);
    const { places, notes } = compare([...before], after.slice(1));
    expect(places[0]!.difference).toBe(0.012);
    expect(notes).toContain("the master of gauge BG-1 was read before only, so nothing shows whether its setting moved: read it in both campaigns");
  });

  test("without a gauge, or blank", () => {
    const [before, after] = study(0.012, 0.01);
    const { notes } = compare([master(50, {}), ...before.slice(1)], [master(null, strip({ fault: "the reading is still blank" })), ...after.slice(1)]);
    expect(notes.map((note) => note.replace(/line \d+/, "line N"))).toEqual(
      expect.arrayContaining([
        "a reading of the master is left out (line N): no gauge is named",
        "a reading of the master of gauge BG-1 is left out (line N): the reading is still blank",
      ]),
    );
  });

  test("in another unit than the places", () => {
    const [before, after] = study(0.012, 0.01);
    const { places, notes } = compare([{ ...before[0]!, unit: "in" }, ...before.slice(1)], [{ ...after[0]!, unit: "in" }, ...after.slice(1)]);
    expect(places[0]!.difference).toBe(0.012);
    expect(notes).toContain("the master of gauge BG-1 was read, but no place was measured with that gauge on those days, in its unit, before and after");
  });
});

test("a row of a file with the characteristic master is one, whichever campaign it names", async () => {
  const set = await csv(
    [
      "campaign,gauge,cylinder,characteristic,value,unit,U",
      "before,BG-1,,setting ring,50,mm,0.004",
      "before,BG-1,1,bore,73,mm,0.004",
      "after,BG-1,,Master,49.99,mm,0.004",
      "after,BG-1,1,bore,73.002,mm,0.004",
    ].join("\n"),
  );
  const { places, refused } = compareReadings(set, undefined);
  expect(refused).toEqual([]);
  expect(places.map(({ difference }) => difference)).toEqual([0.012]);
});
