import fc from "fast-check";
import { compressionRatio } from "../../../src/functions/volumes/compression-ratio.ts";
import { pistonTravel } from "../../../src/functions/volumes/piston-travel.ts";
import { sweptVolume } from "../../../src/functions/volumes/swept-volume.ts";
import { trappedRatio } from "../../../src/functions/volumes/trapped-ratio.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const ratio = fc.integer({ min: 40, max: 220 }).map((tenths) => tenths / 10);
const stroke = fc.integer({ min: 400, max: 2000 }).map((tenths) => tenths / 10);
const closing = fc.integer({ min: 1, max: 110 });

describe("cited values", () => {
  // A published article on valve timing: with the valve closing 70° after bottom dead centre the piston
  // has risen 0.9053 in; stroke 3.48 and rod 5.7 in (from memory). So 2.5747 of 3.48 in are left.
  test("closing at 70° of a 3.48 in stroke leaves 2.5747 in of it", () => {
    expect(number(trappedRatio, 10, 3.48, 5.7, 70)).toBeCloseTo(1 + (9 * 2.5747) / 3.48, 3);
  });

  // Kinematics of the slider-crank, throw 25 and rod 100 mm, computed outside: 120° before top dead
  // centre the piston is 39.871879 down.
  test("throw 25, rod 100, closing at 60°: 39.871879 of 50 are left", () => {
    expect(number(trappedRatio, 9, 50, 100, 60)).toBeCloseTo(1 + (8 * 39.871879) / 50, 6);
  });
});

describe("identities", () => {
  test("it is the ratio of the volumes above the piston, built up from bore, travel and chamber", () => {
    fc.assert(
      fc.property(ratio, stroke, closing, (full, s, degrees) => {
        const rod = s * 1.7;
        const chamber = number(sweptVolume, 80, s) / (full - 1);
        const left = number(pistonTravel, 180 + degrees, s, rod);
        expect(number(trappedRatio, full, s, rod, degrees)).toBeCloseTo(number(compressionRatio, number(sweptVolume, 80, left), chamber), 5);
      }),
    );
  });

  test("the later the valve closes, the less is trapped", () => {
    fc.assert(
      fc.property(ratio, stroke, closing, (full, s, degrees) =>
        expect(number(trappedRatio, full, s, s * 1.7, degrees + 5)).toBeLessThan(number(trappedRatio, full, s, s * 1.7, degrees)),
      ),
    );
  });

  test("stroke and rod may be in any one unit", () => {
    fc.assert(
      fc.property(ratio, stroke, closing, (full, s, degrees) =>
        expect(number(trappedRatio, full, s / 25.4, (s * 1.7) / 25.4, degrees)).toBeCloseTo(number(trappedRatio, full, s, s * 1.7, degrees), 7),
      ),
    );
  });
});

describe("at the limits", () => {
  test("closing just after bottom dead centre traps the whole ratio, to four digits", () => {
    fc.assert(fc.property(ratio, stroke, (full, s) => expect(number(trappedRatio, full, s, s * 1.7, 0.1)).toBeCloseTo(full, 4)));
  });

  test("closing just before top dead centre traps next to nothing", () => {
    expect(number(trappedRatio, 9, 50, 100, 179.9)).toBeCloseTo(1, 4);
  });
});

describe("faults", () => {
  test("a rod no longer than half the stroke is refused", () => {
    expect(ask(trappedRatio, 9, 50, 25, 60)).toEqual({ code: "unfit", sentence: "TRAPPEDRATIO: rod 25: it must be longer than half the stroke, 25" });
  });

  test("half a turn or more after bottom dead centre is refused", () => {
    expect(ask(trappedRatio, 9, 50, 100, 180)).toEqual({
      code: "too-large",
      sentence: "TRAPPEDRATIO: intakeCloses 180 is too large: it must be an angle in degrees above 0 and below 180",
    });
  });

  test("a ratio of 1 or less is refused, in its own cell where there are more", () => {
    expect(ask(trappedRatio, [[9], [0.9]], 50, 100, 60)).toEqual([[7.379500648], ["check: ratio 0.9 is too small: it must be a ratio above 1"]]);
  });
});

describe("blanks", () => {
  test("a blank input leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(trappedRatio, blank, 50, 100, 60)).toBe("");
      expect(ask(trappedRatio, 9, blank, 100, 60)).toBe("");
      expect(ask(trappedRatio, 9, 50, blank, 60)).toBe("");
      expect(ask(trappedRatio, 9, 50, 100, blank)).toBe("");
    }
  });
});
