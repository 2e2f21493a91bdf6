import fc from "fast-check";
import { discVolume } from "../../../src/functions/volumes/disc-volume.ts";
import { headSkim } from "../../../src/functions/volumes/head-skim.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const cubic = fc.integer({ min: 150, max: 900 }).map((tenths) => tenths / 10);

describe("cited values", () => {
  // Geometry, computed by hand: 1 cm³ over 20 cm² is 0.05 cm, which is 0.5 mm; 0.05 in³ over 5 in² is .010 in.
  test("1 cm³ over 20 cm² is 0.5 mm, 0.05 in³ over 5 in² is .010 in", () => {
    expect(ask(headSkim, 26, 25, 20)).toBe(0.5);
    expect(ask(headSkim, 1.7, 1.65, 5, "in")).toBe(0.01);
  });
});

describe("identities", () => {
  test("what comes off a round chamber is the disc of that thickness", () => {
    fc.assert(
      fc.property(cubic, fc.integer({ min: 62, max: 120 }), fc.integer({ min: 1, max: 20 }), (chamber, mouth, tenths) => {
        const off = number(discVolume, mouth, tenths / 10);
        fc.pre(chamber - off > 1);
        const area = ((Math.PI / 4) * mouth * mouth) / 100;
        expect(number(headSkim, chamber, chamber - off, area)).toBeCloseTo(tenths / 10, 6);
      }),
    );
  });

  test("in inches it is the same depth", () => {
    fc.assert(
      fc.property(cubic, fc.integer({ min: 30, max: 90 }), (chamber, area) => {
        const metric = number(headSkim, chamber, chamber - 1.5, area);
        const imperial = number(headSkim, chamber / 16.387064, (chamber - 1.5) / 16.387064, area / 6.4516, "in");
        expect(imperial * 25.4).toBeCloseTo(metric, 6);
      }),
    );
  });

  test("half the area wants twice the depth", () => {
    expect(number(headSkim, 27.4, 25.5, 19)).toBeCloseTo(2 * number(headSkim, 27.4, 25.5, 38), 9);
  });
});

describe("at the limits", () => {
  test("a chamber that is right needs nothing off, and never -0", () => {
    expect(ask(headSkim, 0.1 + 0.2, 0.3, 38)).toBe(0);
    expect(Object.is(ask(headSkim, 0.3, 0.1 + 0.2, 38), -0)).toBe(false);
  });

  test("each chamber of a head is reckoned for itself", () => {
    expect(ask(headSkim, [[27.4], [27.0], [25.5]], 25.5, 38)).toEqual([[0.5], [0.394736842], [0]]);
  });
});

describe("faults", () => {
  test("a chamber that is too small already is taken for a swap", () => {
    expect(ask(headSkim, 25.5, 27.4, 38)).toEqual({ code: "swapped", sentence: "HEADSKIM: wanted 27.4 is larger than chamber 25.5: are they swapped?" });
  });

  test("an area in mm² for cm², or in² beside cm³, is refused", () => {
    expect(ask(headSkim, 27.4, 25.5, 3800)).toEqual({
      code: "unfit",
      sentence: "HEADSKIM: faceArea 3800: a chamber of 27.4 over it would be 0.072 mm deep, is the area in cm² and the volumes in cm³?",
    });
    expect(ask(headSkim, 27.4, 25.5, 5.9)).toEqual({
      code: "unfit",
      sentence: "HEADSKIM: faceArea 5.9: a chamber of 27.4 over it would be 46 mm deep, is the area in cm² and the volumes in cm³?",
    });
    expect(ask(headSkim, 27.4, 25.5, 5.9, "in")).toEqual({
      code: "unfit",
      sentence: "HEADSKIM: faceArea 5.9: a chamber of 27.4 over it would be 4.6 in deep, is the area in in² and the volumes in in³?",
    });
    // A dome as high as half its mouth is the deepest chamber there is, over two thirds of that height on average.
    expect(number(headSkim, 134, 133, (Math.PI / 4) * 64)).toBeCloseTo(0.198944, 6);
  });

  test("a negative area and an unknown unit are refused", () => {
    expect(ask(headSkim, 27.4, 25.5, -38)).toEqual({ code: "too-small", sentence: "HEADSKIM: faceArea -38 is too small: it must be an area above 0" });
    expect(ask(headSkim, 27.4, 25.5, 38, "cm")).toEqual({ code: "not-a-choice", sentence: 'HEADSKIM: unit "cm" is not known: it must be one of mm, in' });
  });
});

describe("blanks", () => {
  test("a blank volume or area leaves it blank, a blank unit is mm", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(headSkim, blank, 25.5, 38)).toBe("");
      expect(ask(headSkim, 27.4, blank, 38)).toBe("");
      expect(ask(headSkim, 27.4, 25.5, blank)).toBe("");
      expect(ask(headSkim, 27.4, 25.5, 38, blank)).toBe(0.5);
    }
  });
});
