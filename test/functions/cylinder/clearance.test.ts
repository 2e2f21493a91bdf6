import fc from "fast-check";
import { clearance } from "../../../src/functions/cylinder/clearance.ts";
import { inches, millimetres, small } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // ISO 286, Ø50 H7/g6: hole 50.000 to 50.025, shaft 49.975 to 49.991, clearance 0.009 to 0.050 mm.
  test("the least and the most clearance of a 50 H7/g6 fit", () => {
    expect(ask(clearance, 50.0, 49.991)).toBe(0.009);
    expect(ask(clearance, 50.025, 49.975)).toBe(0.05);
  });

  // ISO 286, over 50 to 80 mm: H7 +0.030/0, f7 −0.030/−0.060, so 0.030 to 0.090 mm.
  test("the least and the most clearance of a 73 H7/f7 fit", () => {
    expect(ask(clearance, 73, 72.97)).toBe(0.03);
    expect(ask(clearance, 73.03, 72.94)).toBe(0.09);
  });
});

describe("identities", () => {
  test("hole = shaft + clearance, to the typed digit", () => {
    fc.assert(fc.property(millimetres, small, (shaft, gap) => expect(number(clearance, Number((shaft + gap).toFixed(2)), shaft)).toBe(gap)));
  });

  test("a fit in inches is the same fit in millimetres", () => {
    fc.assert(
      fc.property(inches, small, (shaft, gap) =>
        expect(number(clearance, shaft * 25.4 + gap, shaft * 25.4)).toBeCloseTo(number(clearance, shaft + gap / 25.4, shaft) * 25.4, 7),
      ),
    );
  });

  test("a larger hole never gives less clearance, a larger shaft never more", () => {
    fc.assert(
      fc.property(millimetres, small, small, (shaft, gap, more) => {
        const plain = number(clearance, shaft + gap + more, shaft);
        expect(number(clearance, shaft + gap + more + 0.01, shaft)).toBeGreaterThan(plain);
        expect(number(clearance, shaft + gap + more, shaft + 0.01)).toBeLessThan(plain);
      }),
    );
  });
});

describe("at the limits", () => {
  test("73.04 − 73.00 is 0.04, which in binary it is not", () => {
    expect(73.04 - 73.0).not.toBe(0.04);
    expect(ask(clearance, 73.04, 73.0)).toBe(0.04);
  });

  test("a shaft as large as its hole has no clearance", () => {
    expect(ask(clearance, 22, 22)).toBe(0);
  });

  test("a shaft larger by the noise of the computer only is as large", () => {
    expect(ask(clearance, 0.3, 0.1 + 0.2)).toBe(0);
  });
});

describe("faults", () => {
  test("a shaft larger than its hole is refused and both are named", () => {
    expect(ask(clearance, 21.99, 22)).toEqual({
      code: "swapped",
      sentence: "CLEARANCE: shaft 22 is larger than hole 21.99: are they swapped? A press fit is one for HATCH.INTERFERENCE",
    });
  });

  test("a shaft in inches in a hole in millimetres is refused, either way round", () => {
    expect(ask(clearance, 50.8, 1.999)).toEqual({
      code: "units",
      sentence: "CLEARANCE: shaft 1.999 is about 1/25.4 of hole 50.8: is one in inches, the other in millimetres?",
    });
    expect(ask(clearance, 2, 50.775)).toEqual({
      code: "units",
      sentence: "CLEARANCE: shaft 50.775 is about 25.4 times hole 2: is one in inches, the other in millimetres?",
    });
  });

  test("of several fits only the swapped one shows the check text", () => {
    expect(ask(clearance, [[22.02], [21.99], [22.03]], 22)).toEqual([
      [0.02],
      ["check: shaft 22 is larger than hole 21.99: are they swapped? A press fit is one for HATCH.INTERFERENCE"],
      [0.03],
    ]);
  });
});

describe("blanks", () => {
  test("a blank hole or shaft leaves the clearance blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(clearance, blank, 22)).toBe("");
      expect(ask(clearance, 22, blank)).toBe("");
    }
  });
});
