import fc from "fast-check";
import { broadcast } from "../../../src/core/broadcast.ts";
import { sentence } from "../../../src/core/sentences.ts";
import { slip, slipOf } from "../../../src/functions/measurement/slip.ts";

const said = (...args: Parameters<typeof broadcast>[1]) => {
  const outcome = broadcast(slip, args);
  return outcome !== null && typeof outcome === "object" && "code" in outcome ? sentence(outcome) : outcome;
};

// No outside table of keying slips exists; the cases follow the definition (common practice). The
// unit slip rests on 1 in = 25.4 mm exactly (NIST SP 811, appendix B).
describe("cited values", () => {
  test.each([
    [730.2, "decimal point"],
    [7.302, "decimal point"],
    [73020, "decimal point"],
    [0.07302, "decimal point"],
    [2.875, "inch for mm"],
    [37.02, "two digits swapped"],
    [70.32, "two digits swapped"],
    [73.84, "one digit wrong"],
    [78.02, "one digit wrong"],
    [93.02, "one digit wrong"],
    [60, ""],
    [73.3, ""],
  ])("a bore of 73 typed as %p is named %p", (typed, name) => {
    expect(said(typed, 73, 0.3)).toBe(name);
  });

  test("millimetres typed where the sheet is in inches are named", () => {
    expect(said(73.02, 2.875, 0.01)).toBe("mm for inch");
  });

  test("a swap with the trailing zero that a sheet drops is seen: 73.10 for 73.01", () => {
    expect(said(73.1, 73.01, 0.03)).toBe("two digits swapped");
  });
});

describe("identities", () => {
  const cents = fc.integer({ min: 1000, max: 99_999 });

  test("shifting the decimal point of any honest reading is named a decimal point", () => {
    fc.assert(
      fc.property(cents, fc.constantFrom(-3, -2, -1, 1, 2, 3), (typed, places) => {
        const honest = typed / 100;
        expect(slipOf(honest * 10 ** places, honest, honest / 200)).toBe("decimal point");
      }),
    );
  });

  test("swapping two neighbouring digits of a reading always brings some slip to light", () => {
    fc.assert(
      fc.property(cents, fc.nat(2), (typed, at) => {
        const digits = [...String(typed)];
        fc.pre(digits[at] !== digits[at + 1]);
        [digits[at], digits[at + 1]] = [digits[at + 1]!, digits[at]!];
        expect(slipOf(Number(digits.join("")) / 100, typed / 100, 0.05)).not.toBe("");
      }),
    );
  });

  test("a reading and its nominal, both ten times as large, get the same word", () => {
    fc.assert(
      fc.property(cents, cents, (typed, nominal) => {
        expect(slipOf(typed / 10, nominal / 10, 0.4)).toBe(slipOf(typed / 100, nominal / 100, 0.04));
      }),
    );
  });
});

describe("at the limits", () => {
  test("a reading exactly on the window is honest in decimals", () => {
    expect(said(73.04, 73, 0.04)).toBe("");
    expect(said(73.05, 73, 0.04)).toBe("one digit wrong");
  });

  test("a window of 0 lets only the nominal itself pass", () => {
    expect(said(73, 73, 0)).toBe("");
    expect(said(73.1, 73, 0)).toBe("one digit wrong");
  });

  test("numbers nobody types are left alone", () => {
    expect(slipOf(1e300, 73, 7.3)).toBe("");
    expect(slipOf(73, 1e300, 1)).toBe("");
    expect(slipOf(Number.NaN, 73, 7.3)).toBe("");
    // From sixteen digits on they are not looked at, in the reading or in the nominal.
    expect([slipOf(9e14, 10, 10), slipOf(1e15, 10, 10)]).toEqual(["one digit wrong", ""]);
    expect([slipOf(123_456_789_012_345, 999_999_999_999_999, 2e14), slipOf(123_456_789_012_345, 1e15, 2e14)]).toEqual(["two digits swapped", ""]);
    expect(slipOf(-37, 73, 7.3)).toBe("");
    expect(slipOf(0, 73, 7.3)).toBe("");
    expect(slipOf(5, 0, 1)).toBe("");
  });
});

describe("faults", () => {
  test("a negative reading is refused and named", () => {
    expect(said(-73, 73, 0.3)).toBe("SLIP: value -73 is too small: it must be a number above 0");
  });

  test("a negative window is refused and named", () => {
    expect(said(73, 73, -1)).toBe("SLIP: window -1 is too small: it must be a number of at least 0");
  });

  test("a missing nominal is named", () => {
    expect(said(73)).toBe("SLIP: nominal is not given: it must be a number above 0");
  });

  test("a missing window is named: what an honest reading is depends on the quantity", () => {
    expect(said(73, 73)).toBe("SLIP: window is not given: it must be a number of at least 0");
  });
});

test("a blank reading stays blank in a column of readings", () => {
  expect(said([[73.02], [null], [0], [7.302]], 73, 0.3)).toEqual([[""], [""], [""], ["decimal point"]]);
});
