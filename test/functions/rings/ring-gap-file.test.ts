import fc from "fast-check";
import { ringGapFile } from "../../../src/functions/rings/ring-gap-file.ts";
import { small } from "../arbitrary.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // TM 9-2320-366-34: top ring .016 to .026 in a 4.134 in bore. Filing up to the least of it; the
  // measured gaps are ours.
  test.each([
    [0.012, 0.004],
    [0.016, 0],
    [0.02, 0],
  ])("a gap of %p in needs %p off to reach the .016 of TM 9-2320-366-34", (measured, off) => {
    expect(ask(ringGapFile, measured, 0.016)).toBe(off);
  });
});

describe("identities", () => {
  test("what is filed off brings the gap to the target, or nothing is", () => {
    fc.assert(
      fc.property(small, small, (measured, target) => {
        const off = number(ringGapFile, measured, target);
        expect(Number((measured + off).toFixed(9))).toBe(Math.max(measured, target));
      }),
    );
  });

  test("in inches it is the same cut, in inches", () => {
    fc.assert(
      fc.property(small, small, (measured, target) => {
        expect(number(ringGapFile, measured / 25.4, target / 25.4) * 25.4).toBeCloseTo(number(ringGapFile, measured, target), 7);
      }),
    );
  });
});

describe("at the limits", () => {
  test("0.30 − 0.10 is 0.2, which in binary it is not", () => {
    expect(0.3 - 0.1).not.toBe(0.2);
    expect(ask(ringGapFile, 0.1, 0.3)).toBe(0.2);
  });

  test("a gap open by the noise of the computer only needs nothing off, and never -0", () => {
    expect(ask(ringGapFile, 0.1 + 0.2, 0.3)).toBe(0);
    expect(Object.is(ask(ringGapFile, 0.3, 0.1 + 0.2), -0)).toBe(false);
  });

  test("ends that touch lose at least the whole target", () => {
    expect(ask(ringGapFile, [[0], [0.1]], 0.29)).toEqual([[0.29], [0.19]]);
  });

  test("each ring meets its own target, or one for all", () => {
    expect(ask(ringGapFile, [[0.22], [0.31]], [[0.29], [0.35]])).toEqual([[0.07], [0.04]]);
    expect(ask(ringGapFile, [[0.22], [0.31]], 0.29)).toEqual([[0.07], [0]]);
  });
});

describe("faults", () => {
  test("a gap typed as text with a decimal comma is refused by name", () => {
    expect(ask(ringGapFile, "0,22", 0.29)).toEqual({
      code: "decimal-comma",
      sentence: 'RINGGAPFILE: measured holds the text "0,22": a decimal comma is not read, type it with this sheet\'s decimal sign',
    });
  });

  test("a negative target is refused", () => {
    expect(ask(ringGapFile, 0.22, -0.29)).toEqual({ code: "too-small", sentence: "RINGGAPFILE: target -0.29 is too small: it wants a length above 0" });
  });

  test("what the target's own formula complains of is passed on", () => {
    expect(ask(ringGapFile, 0.22, "check: bore -73 is too small: it wants a length above 0")).toEqual({
      code: "upstream",
      sentence: "RINGGAPFILE: bore -73 is too small: it wants a length above 0",
    });
  });
});

describe("blanks", () => {
  test("a ring not measured yet has nothing to file", () => {
    for (const blank of BLANKS) expect(ask(ringGapFile, blank, 0.29)).toBe("");
    for (const blank of BLANKS_AND_ZERO) expect(ask(ringGapFile, 0.22, blank)).toBe("");
  });
});
