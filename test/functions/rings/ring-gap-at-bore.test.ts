import fc from "fast-check";
import { ringGapAtBore } from "../../../src/functions/rings/ring-gap-at-bore.ts";
import { inches, millimetres, small } from "../arbitrary.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // The gap grows by π × the growth of the bore: .001 in → .00314 in (computed from the definition).
  test("a bore larger by .001 in opens the gap by .00314 in", () => {
    expect(number(ringGapAtBore, 0.016, 4, 4.001)).toBeCloseTo(0.016 + 0.00314159265, 9);
  });

  // A printed rule has .0031 in for a bore .0012 in under size; the geometry gives .00377 (computed).
  test("a bore smaller by .0012 in closes the gap by .00377 in, not by .0031", () => {
    expect(number(ringGapAtBore, 0.016, 4, 3.9988)).toBeCloseTo(0.016 - 0.00376991118, 9);
  });
});

describe("identities", () => {
  test("in the bore it was measured in a ring keeps its gap", () => {
    fc.assert(fc.property(small, millimetres, (gap, bore) => expect(ask(ringGapAtBore, gap, bore, bore)).toBe(gap)));
  });

  test("there and back again is the gap it started with", () => {
    fc.assert(
      fc.property(small, millimetres, small, (gap, bore, more) => {
        expect(number(ringGapAtBore, number(ringGapAtBore, gap, bore, bore + more), bore + more, bore)).toBeCloseTo(gap, 8);
      }),
    );
  });

  test("in inches it is the same gap, in inches", () => {
    fc.assert(
      fc.property(small, inches, small, (gap, bore, more) => {
        const metric = number(ringGapAtBore, gap, bore * 25.4, bore * 25.4 + more);
        expect(number(ringGapAtBore, gap / 25.4, bore, bore + more / 25.4) * 25.4).toBeCloseTo(metric, 6);
      }),
    );
  });

  test("a larger bore always opens the gap", () => {
    fc.assert(fc.property(small, millimetres, small, (gap, bore, more) => expect(number(ringGapAtBore, gap, bore, bore + more)).toBeGreaterThan(gap)));
  });
});

describe("at the limits", () => {
  test("a bore so small that the ends meet gives 0 or less, for a lower limit to catch", () => {
    expect(ask(ringGapAtBore, 0.3, 73, 72.9)).toBe(-0.014159265);
  });

  test("ends that touch in one bore part in a larger one", () => {
    expect(ask(ringGapAtBore, 0, 73, 73.1)).toBe(0.314159265);
  });

  test("one ring in several bores gives one gap for each", () => {
    expect(ask(ringGapAtBore, 0.3, 73, [[73], [73.1]])).toEqual([[0.3], [0.614159265]]);
  });
});

describe("faults", () => {
  test("a bore with its decimal point elsewhere is refused", () => {
    expect(ask(ringGapAtBore, 0.3, 73, 7.302)).toEqual({
      code: "units",
      sentence: "RINGGAPATBORE: boreRun 7.302 is about 1/10 of boreMeasuredIn 73: is a decimal point wrong?",
    });
  });

  test("bores of two units are refused and both are named", () => {
    expect(ask(ringGapAtBore, 0.3, 73, 2.875)).toEqual({
      code: "units",
      sentence: "RINGGAPATBORE: boreRun 2.875 is about 1/25.4 of boreMeasuredIn 73: is one in inches, the other in millimetres?",
    });
  });

  test("a missing bore is named", () => {
    expect(ask(ringGapAtBore, 0.3, 73)).toEqual({ code: "missing", sentence: "RINGGAPATBORE: boreRun is not given: it must be a length above 0" });
  });
});

describe("blanks", () => {
  test("each blank input leaves the gap blank", () => {
    for (const blank of BLANKS) expect(ask(ringGapAtBore, blank, 73, 73.1)).toBe("");
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(ringGapAtBore, 0.3, blank, 73.1)).toBe("");
      expect(ask(ringGapAtBore, 0.3, 73, blank)).toBe("");
    }
  });
});
