import type { Place } from "../../../src/pane/measure/places.ts";
import { accepted, back, declined, entered, next, type Round, readEntry, refused, seen, spoken, startRound } from "../../../src/pane/measure/round.ts";

// Sizes are invented; what deviations come to is worked out by hand beside them.

const place = (name: string, over: Partial<Place> = {}): Place => ({
  cell: { sheet: "Bores", row: 3, column: 1 },
  name,
  like: "bores",
  unit: "mm",
  least: 0,
  allowsZero: false,
  ...over,
});

const PLACES = ["top thrust", "top pin", "middle thrust", "middle pin", "bottom thrust", "bottom pin"].map((name) => place(name));
const blank = (places: readonly Place[] = PLACES): Round =>
  startRound(
    places,
    places.map(() => null),
  );

/** Types one reading after the other; what is written. */
function typed(round: Round, entries: readonly string[]): { round: Round; written: number[] } {
  const written: number[] = [];
  let now = round;
  for (const entry of entries) {
    const { round: after, write } = entered(now, entry);
    if (write !== undefined) written.push(write);
    now = after;
  }
  return { round: now, written };
}

describe("the walk", () => {
  test("starts at the first blank place, and each reading goes to its place and on to the next", () => {
    const round = startRound(PLACES, [73.02, null, null, null, null, null]);
    expect(round.at).toBe(1);
    const { round: after, written } = typed(round, ["73.01", "73.015"]);
    expect(written).toEqual([73.01, 73.015]);
    expect(after).toMatchObject({ at: 3, last: 2, asked: null, trouble: "", readings: [73.02, 73.01, 73.015, null, null, null] });
  });

  test("skip and back go by one, neither before the first nor beyond the end; behind the last place all are through", () => {
    const round = blank();
    expect(back(round).at).toBe(0);
    expect(next(next(round)).at).toBe(2);
    const end = PLACES.reduce(next, round);
    expect(end.at).toBe(6);
    expect(next(end).at).toBe(6);
    expect(entered(end, "73.02")).toEqual({ round: end });
  });

  test("Enter on an empty field goes on and writes nothing", () => {
    expect(entered(blank(), " ")).toEqual({ round: { ...blank(), at: 1 } });
  });

  test("a reading that stands there is replaced only when that is asked for", () => {
    const round = back(entered(blank(), "73.02").round);
    const again = entered(round, "73.03");
    expect(again.write).toBeUndefined();
    expect(again.round.asked).toEqual({ value: 73.03, sentence: "73.02 stands here: write 73.03 in its place?" });
    expect(accepted(again.round)).toMatchObject({ write: 73.03, round: { at: 1 } });
    expect(declined(again.round)).toMatchObject({ at: 0, asked: null });
    // The same reading once more is no replacement.
    expect(entered(round, "73.02").write).toBe(73.02);
  });

  test("a write that is refused brings its place back, with the sentence, and leaves what was read meanwhile", () => {
    const before = entered(blank(), "73.02").round;
    const after = entered(entered(before, "73.01").round, "73.015").round;
    expect(refused(after, before, "The sheet Bores is protected.")).toMatchObject({
      ...{ at: 1, last: 0, trouble: "The sheet Bores is protected." },
      readings: [73.02, null, 73.015, null, null, null],
    });
  });

  test("what stands in the sheet counts: a cell that was cleared is blank, one that was filled is read", () => {
    expect(seen(blank(), [1, null, 2, null, null, null]).readings).toEqual([1, null, 2, null, null, null]);
  });
});

describe("what is typed", () => {
  const value = (text: string, scale: 1 | 0.001 = 1, nominal: number | null = null) => readEntry(text, { scale, nominal });

  test.each([
    // text, scale, nominal, size
    ["73.02", 1, null, 73.02],
    [".0015", 1, null, 0.0015],
    ["73,02", 1, null, 73.02],
    // 2.875 + 0.0015, 2.875 − 0.0002
    ["+.0015", 1, 2.875, 2.8765],
    ["-.0002", 1, 2.875, 2.8748],
    ["−.0002", 1, 2.875, 2.8748],
    ["0", 1, 2.875, 2.875],
    ["2.876", 1, 2.875, 2.876],
    // thou and microns: thousandths of the sheet's unit
    ["1.5", 0.001, 2.875, 2.8765],
    ["+15", 0.001, 73, 73.015],
    ["-2", 0.001, 73, 72.998],
    ["15", 0.001, null, 0.015],
  ] as const)("%s, steps of %s, nominal %s is %s", (text, scale, nominal, size) => {
    expect(value(text, scale, nominal)).toEqual({ value: size, isAsked: false });
  });

  test("a comma that may part thousands is asked about, never taken for one", () => {
    expect(value("73,025")).toEqual({ value: 73.025, isAsked: true });
    const { round, write } = entered(blank(), "73,025");
    expect([write, round.asked?.sentence]).toEqual([undefined, "is 73,025 meant as 73.025?"]);
    expect(accepted(round).write).toBe(73.025);
  });

  test("what is no number, or cannot be there, is said and not written", () => {
    expect(value("73.0.2")).toEqual({ sentence: '"73.0.2" is no number' });
    expect(value("1e3")).toEqual({ sentence: '"1e3" is no number' });
    expect(value("+.0015")).toEqual({ sentence: "a deviation needs a nominal size first" });
    expect(entered(blank(), "-3")).toMatchObject({ round: { at: 0, trouble: "-3 cannot be here: it must be a number above 0" } });
    expect(entered(blank(), "0").write).toBeUndefined();
    expect(entered(blank([place("inlet", { allowsZero: true })]), "0").write).toBe(0);
  });
});

describe("a reading far from its like", () => {
  const read = ["73.02", "73.015", "73.02", "73.01"];

  test("is asked about at once, by the words of Check, and written after a yes", () => {
    const { round, written } = typed(blank(), [...read, "37.02"]);
    expect(written).toHaveLength(4);
    expect(round.asked?.value).toBe(37.02);
    expect(round.asked?.sentence).toContain("were two digits swapped?");
    expect(accepted(round).write).toBe(37.02);
    expect(entered(round, "73.02").write).toBe(73.02);
  });

  test("is asked about its unit where it is in inches", () => {
    // 73.02 / 25.4 = 2.8748
    expect(typed(blank(), [...read, "2.8748"]).round.asked?.sentence).toMatch(/in|inch/);
  });

  test("honest wear is not asked about: 0.2 mm is less than 0.3 % of 73 mm", () => {
    expect(typed(blank(), [...read, "73.2"]).written).toHaveLength(5);
  });

  test("what is not alike is not compared", () => {
    const places = [...PLACES.slice(0, 4), place("skirt", { like: "skirts" })];
    expect(typed(blank(places), [...read, "37.02"]).written).toHaveLength(5);
  });
});

describe("a blind round", () => {
  const HELD = [73.02, 73.015, 73.02, 73.01, null, null];

  test("shows and compares nothing that was read before, and overwrites it only when asked", () => {
    const round = { ...startRound(PLACES, HELD, true), at: 0 };
    expect(round.readings).toEqual([null, null, null, null, null, null]);
    const first = entered(round, "37.02");
    expect(first.round.asked?.sentence).toBe("a reading stands here already: write 37.02 in its place?");
    expect(JSON.stringify(first.round.asked)).not.toContain("73");
    expect(accepted(first.round).write).toBe(37.02);
  });

  test("a change of the sheet brings none of the earlier readings in", () => {
    expect(seen(startRound(PLACES, HELD, true), HELD).readings).toEqual([null, null, null, null, null, null]);
  });
});

test("a reading is said digit by digit behind its point", () => {
  expect(spoken(place("cylinder 1, top thrust"), 73.025)).toBe("cylinder 1, top thrust: 73 point 0 2 5");
  expect(spoken(place("deck"), -0.15)).toBe("deck: minus 0 point 1 5");
  expect(spoken(place("dry"), 150)).toBe("dry: 150");
});
