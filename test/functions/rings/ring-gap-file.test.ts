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

describe("by limits", () => {
  const within = (measured: unknown, target: unknown = "", least: unknown = 0.25, most: unknown = 0.45) =>
    ask(ringGapFile, measured as number, target as number, least as number, most as number);

  // Common practice, by hand: the middle of 0.25 and 0.45 is 0.35.
  test("a gap inside its limits, or on one of them, stays", () => {
    for (const gap of [0.25, 0.3, 0.45, 0.15 + 0.1]) expect(within(gap)).toBe(0);
    for (const gap of [0.25, 0.3, 0.45]) expect(within(gap, 0.4)).toBe(0);
  });

  test("one below them is filed to their middle, or to a target that lies inside", () => {
    expect(within(0.22)).toBe(0.13);
    expect(within(0.22, 0.3)).toBe(0.08);
    expect(within(0.22, 0.45)).toBe(0.23);
    expect(within(0, 0.25)).toBe(0.25);
  });

  test("a target outside the limits is passed over", () => {
    expect(within(0.22, 0.2)).toBe(0.13);
    expect(within(0.22, 0.5)).toBe(0.13);
  });

  test("one above them is too wide, which no filing mends", () => {
    expect(within(0.62)).toBe("too wide: 0.62 is over 0.45, and filing cannot close it");
    expect(within([[0.2], [0.3], [0.5]])).toEqual([[0.15], [0], ["too wide: 0.5 is over 0.45, and filing cannot close it"]]);
  });

  test("a least gap alone is filed to, or to a target above it", () => {
    expect(within(0.22, "", 0.25, "")).toBe(0.03);
    expect(within(0.22, 0.3, 0.25, "")).toBe(0.08);
    expect(within(0.22, 0.2, 0.25, "")).toBe(0.03);
    expect(within(0.62, "", 0.25, "")).toBe(0);
  });

  test("a largest gap alone leaves the target to file to, which it must not exclude", () => {
    expect(within(0.22, 0.3, "", 0.45)).toBe(0.08);
    expect(within(0.5, 0.3, "", 0.45)).toBe("too wide: 0.5 is over 0.45, and filing cannot close it");
    expect(within(0.22, 0.5, "", 0.45)).toEqual({ code: "unfit", sentence: "RINGGAPFILE: target 0.5: it is wider than most 0.45 allows" });
  });

  test("limits the wrong way round are refused", () => {
    expect(within(0.3, "", 0.45, 0.25)).toEqual({ code: "swapped", sentence: "RINGGAPFILE: least 0.45 is larger than most 0.25: are they swapped?" });
  });

  test("whatever is filed comes to lie inside the limits, and nothing inside is filed", () => {
    const hundredths = fc.integer({ min: 1, max: 60 }).map((n) => n / 100);
    fc.assert(
      fc.property(hundredths, fc.option(hundredths, { nil: "" as const }), hundredths, hundredths, (measured, target, a, b) => {
        const [least, most] = [Math.min(a, b), Math.max(a, b)];
        const off = within(measured, target, least, most);
        if (measured > most) expect(off).toMatch(/^too wide: /);
        else if (measured >= least) expect(off).toBe(0);
        else {
          const after = Number((measured + (off as number)).toFixed(9));
          expect([after >= least, after <= most]).toEqual([true, true]);
        }
      }),
    );
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
    expect(ask(ringGapFile, 0.22, -0.29)).toEqual({ code: "too-small", sentence: "RINGGAPFILE: target -0.29 is too small: it must be a length above 0" });
  });

  test("what the target's own formula complains of is passed on", () => {
    expect(ask(ringGapFile, 0.22, "check: bore -73 is too small: it must be a length above 0")).toEqual({
      code: "upstream",
      sentence: "RINGGAPFILE: bore -73 is too small: it must be a length above 0",
    });
  });
});

describe("blanks", () => {
  test("a ring not measured yet has nothing to file", () => {
    for (const blank of BLANKS) expect(ask(ringGapFile, blank, 0.29)).toBe("");
    for (const blank of BLANKS_AND_ZERO) expect(ask(ringGapFile, 0.22, blank)).toBe("");
    for (const blank of BLANKS_AND_ZERO) expect(ask(ringGapFile, 0.22, blank, blank, 0.45)).toBe("");
  });
});
