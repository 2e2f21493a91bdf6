import type { Argument } from "../../src/core/cell.ts";
import { specs } from "../../src/functions/index.ts";
import { ask, BLANKS_AND_ZERO } from "../functions/ask.ts";

/** Functions that take the readings of a bore and how many axes stand in a row of them. */
const measured = specs
  .filter(
    ({ inputs, returns }) =>
      inputs[0]?.param.broadcastKind === "bore" && inputs.some(({ param }) => param.broadcastKind === "axes") && returns.kind !== "table",
  )
  .map((spec) => ({ name: spec.name, spec, at: spec.inputs.findIndex(({ param }) => param.broadcastKind === "axes") }));

/** What each function needs beside readings near 73 mm. */
const BESIDE: Record<string, Argument[]> = { BOREWEAR: [73], PISTONCLEARANCE: [72.9], REBORESIZE: [73, [[0.25, 0.5]]] };
const TALL = [
  [73.05, 73.04],
  [73.03, 73.02],
  [73.01, 73],
];
const FLAT = [73.05, 73.04, 73.03, 73.02, 73.01, 73];

test("five functions and more take the readings of a bore", () => {
  expect(measured.length).toBeGreaterThanOrEqual(5);
});

describe.each(measured)("$name", ({ name, spec, at }) => {
  const asked = (readings: Argument, axes?: Argument) => {
    const args: Argument[] = [readings, ...(BESIDE[name] ?? [])];
    while (args.length < at) args.push(undefined);
    return ask(spec, ...args, axes);
  };
  const whole = asked(TALL);
  /** The answer for one bore as a row of the answer for several: a lone value, or what stands under the labels. */
  const rowOf = (answer: ReturnType<typeof ask>) => (spec.returns.kind === "row" ? (answer as unknown[][])[1] : [answer]);
  const rowsOf = (answer: ReturnType<typeof ask>) => (answer as unknown[][]).slice(spec.returns.kind === "row" ? 1 : 0);

  test("a row of readings with its axes is the same bore as the block", () => {
    expect(asked([FLAT], 2)).toEqual(whole);
  });

  test("each row is a bore of its own", () => {
    expect(rowsOf(asked([FLAT, FLAT, FLAT], 2))).toEqual([rowOf(whole), rowOf(whole), rowOf(whole)]);
  });

  test("axes left blank is axes not given, in every way a host says blank", () => {
    for (const blank of BLANKS_AND_ZERO) expect(asked(TALL, blank)).toEqual(whole);
    expect(asked(TALL, [[0]])).toEqual(whole);
  });

  test("axes that do not divide the row are refused with both numbers", () => {
    expect(asked([FLAT], 4)).toEqual({
      code: "axes",
      sentence: `${name}: axes 4 does not divide the 6 columns of readings: each row must hold every height of one bore`,
    });
  });

  test.each([
    [-2, "too-small", "axes -2 is too small: it must be a whole number of at least 1"],
    [1.5, "not-whole", "axes 1.5 is not a whole number: it must be a whole number of at least 1"],
    ["two", "text", 'axes holds the text "two": it must be a whole number of at least 1'],
    [true, "truth", "axes holds TRUE: it must be a whole number of at least 1"],
    [{ error: "#NAME?" }, "cell-error", "axes holds the error #NAME?: correct that cell first"],
  ])("axes of %p are refused", (axes, code, sentence) => {
    expect(asked([FLAT], axes)).toEqual({ code, sentence: `${name}: ${sentence}` });
  });

  test("several numbers of axes, or none in a range, are refused", () => {
    expect(asked([FLAT], [[1, 2]])).toEqual({ code: "unfit", sentence: `${name}: axes of several cells: one number is wanted for the whole call` });
    expect(asked([FLAT], [[]])).toEqual({ code: "empty", sentence: `${name}: axes is an empty range: it must be a whole number of at least 1` });
  });

  test("a bad reading is named with its place in the range", () => {
    expect(
      asked([
        [73.05, 73.04],
        [73.03, "73,02"],
      ]),
    ).toEqual({
      code: "decimal-comma",
      sentence: `${name}: readings holds the text "73,02": a decimal comma is not read, type it with this sheet's decimal sign (row 2, column 2)`,
    });
  });

  test("of several bores the bad one says why with its place, the unfinished one stays blank, the others stand", () => {
    const faulty = [...FLAT.slice(0, 5), -73];
    const unfinished = [...FLAT.slice(0, 5), null];
    const rows = rowsOf(asked([FLAT, faulty, unfinished, FLAT], 2));
    expect(rows[0]).toEqual(rowOf(whole));
    expect(rows[1]![0]).toBe("check: readings -73 is too small: it must be a length above 0 (row 2, column 6)");
    expect(rows[2]!.every((cell) => cell === "")).toBe(true);
    expect(rows[3]).toEqual(rowOf(whole));
  });

  test("an inch among millimetres is refused where it stands", () => {
    expect(asked([[73.05], [2.874]])).toEqual({
      code: "units",
      sentence: `${name}: readings 2.874 is about 1/25.4 of reading 73.05: is one in inches, the other in millimetres? (row 2)`,
    });
  });
});
