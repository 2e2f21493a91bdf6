import { Fault, type FaultCode, refuse, swapped, tooFew, unlike } from "../../src/core/fault.ts";
import { checkText, faultBody, sentence, show } from "../../src/core/sentences.ts";

/** Every code of a fault with what it holds, and the sentence it makes. */
const SAID: Record<FaultCode, [Fault, string]> = {
  missing: [new Fault("missing", "skirt", undefined, "a length above 0"), "skirt is not given: it must be a length above 0"],
  surplus: [new Fault("surplus", "shaft", 3, "2 inputs (hole, shaft)"), "takes 2 inputs (hole, shaft), 3 are given"],
  empty: [new Fault("empty", "readings", undefined, "a length above 0"), "readings is an empty range: it must be a length above 0"],
  shape: [
    new Fault("shape", "skirt", "2×1", "readings of 3×1"),
    "skirt is 2×1 cells, which does not fit readings of 3×1: ranges must be of one size, or one row, one column or one cell",
  ],
  "number-as-text": [new Fault("number-as-text", "skirt", "73.02"), 'skirt holds "73.02" as text: type it again as a number'],
  "decimal-comma": [
    new Fault("decimal-comma", "skirt", "73,02"),
    'skirt holds the text "73,02": a decimal comma is not read, type it with this sheet\'s decimal sign',
  ],
  text: [new Fault("text", "skirt", "worn", "a length above 0"), 'skirt holds the text "worn": it must be a length above 0'],
  truth: [new Fault("truth", "skirt", true, "a length above 0"), "skirt holds TRUE: it must be a length above 0"],
  "cell-error": [new Fault("cell-error", "skirt", { error: "#N/A" }), "skirt holds the error #N/A: correct that cell first"],
  upstream: [new Fault("upstream", "value", "skirt 2 is larger than bore 1: are they swapped?"), "skirt 2 is larger than bore 1: are they swapped?"],
  "not-finite": [new Fault("not-finite", "skirt", Number.NaN, "a length above 0"), "skirt is not a finite number: it must be a length above 0"],
  "too-small": [new Fault("too-small", "skirt", -1, "a length above 0"), "skirt -1 is too small: it must be a length above 0"],
  "too-large": [
    new Fault("too-large", "angle", 400, "an angle in degrees of at most 360"),
    "angle 400 is too large: it must be an angle in degrees of at most 360",
  ],
  "not-whole": [new Fault("not-whole", "axes", 1.5, "a whole number of at least 1"), "axes 1.5 is not a whole number: it must be a whole number of at least 1"],
  "not-a-choice": [new Fault("not-a-choice", "unit", "cm", "one of mm, in"), 'unit "cm" is not known: it must be one of mm, in'],
  swapped: [swapped("skirt", 73.06, "bore", 73.02), "skirt 73.06 is larger than bore 73.02: are they swapped?"],
  units: [unlike("skirt", 2.87, "bore", 73)!, "skirt 2.87 is about 1/25.4 of bore 73: is one in inches, the other in millimetres?"],
  axes: [
    new Fault("axes", "readings", 2, "5 columns of readings"),
    "axes 2 does not divide the 5 columns of readings: each row must hold every height of one bore",
  ],
  "too-few": [tooFew("readings", "one height", "taper needs two or more"), "readings has one height: taper needs two or more"],
  unfit: [refuse("chamber", 24.1, "it leaves no room"), "chamber 24.1: it leaves no room"],
};

test.each(Object.entries(SAID))("a fault %s has its sentence", (code, [fault, said]) => {
  expect(fault.code).toBe(code);
  expect(faultBody(fault)).toBe(said);
});

test("no sentence ends with a stop or speaks of blame", () => {
  for (const [fault] of Object.values(SAID)) expect(sentence(fault.placed("TAPER", "row 3"))).not.toMatch(/\.$|invalid|illegal|wrong|error:/i);
});

test("placed, a fault names its function and the place in the range", () => {
  const fault = SAID["too-small"][0].placed("TAPER", "row 3");
  expect(fault).toMatchObject({ code: "too-small", function: "TAPER", param: "skirt", at: "row 3", got: -1, want: "a length above 0" });
  expect(sentence(fault)).toBe("TAPER: skirt -1 is too small: it must be a length above 0 (row 3)");
  expect(checkText(fault)).toBe("check: skirt -1 is too small: it must be a length above 0 (row 3)");
});

test("a place once known stays: the outer one does not replace it", () => {
  expect(sentence(SAID.text[0].placed("", "row 2").placed("TAPER", "row 9"))).toBe('TAPER: skirt holds the text "worn": it must be a length above 0 (row 2)');
});

test("without a function or a place the sentence is the fault alone", () => {
  const [fault, said] = SAID.missing;
  expect(sentence(fault)).toBe(said);
  expect(checkText(fault)).toBe(`check: ${said}`);
  expect(sentence(fault.placed("TAPER"))).toBe(`TAPER: ${said}`);
  expect([fault.function, fault.placed("TAPER").function]).toEqual(["", "TAPER"]);
  expect(sentence(SAID.upstream[0].placed("VERDICT", "row 3"))).toBe("VERDICT: skirt 2 is larger than bore 1: are they swapped?");
});

test("one input too many is one, more are more", () => {
  expect(faultBody(new Fault("surplus", "", 1, "no inputs"))).toBe("takes no inputs, 1 is given");
  expect(faultBody(new Fault("surplus", "", 2, "no inputs"))).toBe("takes no inputs, 2 are given");
});

test("an earlier function's complaint is passed on without a second place", () => {
  expect(checkText(SAID.upstream[0].placed("VERDICT", "row 3"))).toBe("check: skirt 2 is larger than bore 1: are they swapped?");
});

describe("a value is shown as a person typed it", () => {
  test.each([
    [73.04 - 73.0, "0.04"],
    [-0, "0"],
    [1e-12, "1e-12"],
    ["73,02", '"73,02"'],
    ["a\nb", '"a b"'],
    [true, "TRUE"],
    [{ error: "#N/A" }, "#N/A"],
    [[[1, 2]], "of several cells"],
    [{ heights: 1, axes: 1, values: [73] }, "of several cells"],
    [null, "nothing"],
    [undefined, "nothing"],
    [false, "FALSE"],
    [0.1 + 0.2, "0.3"],
    ["a  \t b", '"a b"'],
    ["x".repeat(40), `"${"x".repeat(40)}"`],
    ["x".repeat(41), `"${"x".repeat(40)}…"`],
  ])("%p as %s", (value, shown) => {
    expect(show(value)).toBe(shown);
  });
});

describe("a size too far from another says what is likely wrong", () => {
  test.each([
    [730.6, 73.06, "about 10 times bore 73.06: is a decimal point wrong?"],
    [7.3, 73.06, "about 1/10 of bore 73.06: is a decimal point wrong?"],
    [0.73, 73.06, "about 1/100 of bore 73.06: is a decimal point wrong?"],
    [73060, 73.06, "about 1000 times bore 73.06: is a decimal point wrong?"],
    [2.876, 73.06, "about 1/25.4 of bore 73.06: is one in inches, the other in millimetres?"],
    [1855, 73.06, "about 25.4 times bore 73.06: is one in inches, the other in millimetres?"],
    [7.3, 2.874, "about 2.54 times bore 2.874: is one in inches, the other in centimetres?"],
    [37.06, 73.06, "about 1/2 of bore 73.06: is a digit, the decimal point or the unit wrong?"],
    [93.06, 73.06, "more than a fifth above bore 73.06: is a digit, the decimal point or the unit wrong?"],
    [438, 73.06, "about 6 times bore 73.06: is a digit, the decimal point or the unit wrong?"],
  ])("%p beside %p", (got, bound, says) => {
    expect(faultBody(unlike("skirt", got, "bore", bound)!)).toBe(`skirt ${got} is ${says}`);
  });
});

describe("unlike", () => {
  test("a part and its mate, however worn, belong together; an inch among millimetres does not, on either side", () => {
    expect(unlike("skirt", 72.9, "bore", 73)).toBeUndefined();
    expect(unlike("skirt", 64, "bore", 80)).toBeUndefined();
    expect(unlike("skirt", 80, "bore", 64)).toBeUndefined();
    expect(unlike("skirt", 63.99, "bore", 80)).toMatchObject({ code: "units", param: "skirt", got: 63.99, want: { other: "bore", bound: 80 } });
    expect(unlike("solid", 16, "fitted", 80, 5)).toBeUndefined();
    expect(unlike("solid", 15.99, "fitted", 80, 5)).toBeInstanceOf(Fault);
    expect(unlike("skirt", 73 / 25.4, "bore", 73)).toBeInstanceOf(Fault);
    expect(unlike("skirt", 73, "bore", 73 / 25.4)).toBeInstanceOf(Fault);
  });
});
