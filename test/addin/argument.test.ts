import { argumentsFrom } from "../../src/addin/argument.ts";

/** What Excel hands over behind the arguments. */
const CALL = { functionName: "TAPER", address: "Sheet1!C3" };

test("a block comes through row by row, and the object about the call is dropped", () => {
  expect(
    argumentsFrom([
      [
        [73.01, 73.02],
        [73, 73.01],
      ],
      CALL,
    ]),
  ).toEqual([
    [
      [73.01, 73.02],
      [73, 73.01],
    ],
  ]);
});

test("a block of one cell is that cell", () => {
  expect(argumentsFrom([[[73.04]], [["mean"]], [[true]], CALL])).toEqual([73.04, "mean", true]);
});

test("an argument left out at the end is not given; one left out in between is a blank", () => {
  expect(argumentsFrom([[[73.04]], null, [[2]], null, null, CALL])).toEqual([73.04, undefined, 2]);
  expect(argumentsFrom([[[73.04]], undefined, undefined])).toEqual([73.04]);
});

test("a blank cell is given, whether Excel says 0, null or empty text", () => {
  expect(argumentsFrom([[[0]], CALL])).toEqual([0]);
  expect(argumentsFrom([[[null]], CALL])).toEqual([[[null]]]);
  expect(argumentsFrom([[[""]], CALL])).toEqual([""]);
  expect(argumentsFrom([[[73.01, null]], CALL])).toEqual([[[73.01, null]]]);
});

test("an error is its code, as a custom-function error and as a rich one", () => {
  const ours = { code: "#DIV/0!", message: "divided by nothing" };
  const rich = { type: "Error", errorType: "Ref", basicType: "Error", basicValue: "#REF!" };
  expect(argumentsFrom([[[ours, rich]], CALL])).toEqual([[[{ error: "#DIV/0!", message: "divided by nothing" }, { error: "#REF!" }]]]);
});

test("a rich cell counts for the value it stands for", () => {
  const formatted = { type: "FormattedNumber", basicType: "Double", basicValue: 73.04, numberFormat: "0.00" };
  const text = { type: "String", basicType: "String", basicValue: "mean" };
  const empty = { type: "Empty", basicType: "Empty", basicValue: "" };
  expect(argumentsFrom([[[formatted, text, empty]], CALL])).toEqual([[[73.04, "mean", null]]]);
  expect(argumentsFrom([[[formatted]]])).toEqual([73.04]);
});

test("a rich cell that stands for no value, such as a picture, is an error", () => {
  const picture = { type: "WebImage", basicType: "Error", basicValue: "#VALUE!" };
  const entity = { type: "Entity", text: "engine" };
  expect(argumentsFrom([[[picture, entity]], CALL])).toEqual([[[{ error: "#VALUE!" }, { error: "#VALUE!" }]]]);
});

test("a lone rich cell at the end is an argument, not the object about the call", () => {
  expect(argumentsFrom([[[73]], { type: "Double", basicType: "Double", basicValue: 2 }])).toHaveLength(2);
});

describe("a whole column", () => {
  const ROWS = 1_048_576;
  /** A column of a whole sheet, filled at its top. */
  const column = (filled: readonly unknown[], blank: unknown) => Array.from({ length: ROWS }, (_, r) => [r < filled.length ? filled[r] : blank]);

  test.each([null, "", 0])("ends one row behind its last filled cell, where a blank comes as %p", (blank) => {
    expect(argumentsFrom([column([73.01, blank, 73.02], blank), CALL])).toEqual([[[73.01], [blank], [73.02], [blank]]]);
  });

  test("keeps a reading of 0 at its end where the host tells blanks from zeros", () => {
    expect(argumentsFrom([column([12, 0], null), CALL])).toEqual([[[12], [0], [null]]]);
  });

  test("ends with the longer of two, so that they go on fitting each other; a shorter range is left alone", () => {
    const [a, b, c] = argumentsFrom([column([1], null), column([1, 2], null), [[1], [null]], CALL]) as unknown[][];
    expect([a!.length, b!.length, c!.length]).toEqual([3, 3, 2]);
  });

  test("that is blank throughout is one blank", () => {
    expect(argumentsFrom([column([], null), CALL])).toEqual([[[null]]]);
  });

  test("and a whole row are cut alike", () => {
    const row = [Array.from({ length: 16_384 }, (_, c) => (c < 2 ? 73 + c : null))];
    expect(argumentsFrom([row, CALL])).toEqual([[[73, 74, null]]]);
  });
});
