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
