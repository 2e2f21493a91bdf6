import fc from "fast-check";
import { clearance } from "../../../src/functions/cylinder/clearance.ts";
import { finishBore } from "../../../src/functions/cylinder/finish-bore.ts";
import { millimetres, small } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // Selective assembly in classes, a published worked example on limits and fits: pistons 79.965
  // to 79.975 with a clearance of 0.025 to 0.045 imply bores of 80.000 to 80.010, and so on by 0.010.
  test.each([
    [79.965, 79.975, 80.0, 80.01],
    [79.975, 79.985, 80.01, 80.02],
    [79.985, 79.995, 80.02, 80.03],
  ])("pistons %p to %p are met by bores %p to %p", (smallest, largest, from, to) => {
    expect(ask(finishBore, smallest, 0.045)).toBe(to);
    expect(ask(finishBore, largest, 0.025)).toBe(from);
  });
});

describe("identities", () => {
  test("the finished bore has the clearance wanted, to the typed digit", () => {
    fc.assert(fc.property(millimetres, small, (piston, gap) => expect(ask(clearance, number(finishBore, piston, gap), piston)).toBe(gap)));
  });

  test("in inches it is the same bore", () => {
    fc.assert(
      fc.property(millimetres, small, (piston, gap) =>
        expect(number(finishBore, piston / 25.4, gap / 25.4) * 25.4).toBeCloseTo(number(finishBore, piston, gap), 7),
      ),
    );
  });
});

describe("at the limits", () => {
  test("0.1 + 0.2 is 0.3, which in binary it is not", () => {
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(ask(finishBore, 0.2, 0.1)).toBe(0.3);
  });

  test("pistons down the sheet and clearances across it give a block", () => {
    expect(ask(finishBore, [[73.46], [73.47]], [[0.04, 0.05]])).toEqual([
      [73.5, 73.51],
      [73.51, 73.52],
    ]);
  });
});

describe("faults", () => {
  test("a negative clearance is refused by name", () => {
    expect(ask(finishBore, 73.46, -0.04)).toEqual({ code: "too-small", sentence: "FINISHBORE: clearance -0.04 is too small: it must be a length above 0" });
  });

  test("one bad piston of several keeps to its own cell", () => {
    expect(ask(finishBore, [[73.46], ["73,47"]], 0.04)).toEqual([
      [73.5],
      ['check: piston holds the text "73,47": a decimal comma is not read, type it with this sheet\'s decimal sign'],
    ]);
  });

  test("a clearance not given is asked for", () => {
    expect(ask(finishBore, 73.46)).toEqual({ code: "missing", sentence: "FINISHBORE: clearance is not given: it must be a length above 0" });
  });
});

describe("blanks", () => {
  test("a piston not measured or a clearance not chosen leaves the bore blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(finishBore, blank, 0.04)).toBe("");
      expect(ask(finishBore, 73.46, blank)).toBe("");
    }
  });
});
