import fc from "fast-check";
import { ratioUncertainty } from "../../../src/functions/measurement/ratio-uncertainty.ts";
import { compressionRatio } from "../../../src/functions/volumes/compression-ratio.ts";
import { fromScipy } from "../../reference/scipy-values.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // NumPy: two million drawn ratios agree within 0.2 %, the derivatives of 1 + swept ÷ clearance volume within 0.01 %.
  test("five volumes, each with its U", () => {
    const found = number(ratioUncertainty, ...fromScipy("ratio"));
    expect(Math.abs(found / fromScipy("ratio-simulated")[0]! - 1)).toBeLessThan(0.002);
    expect(Math.abs(found / fromScipy("ratio-derived")[0]! - 1)).toBeLessThan(0.0001);
  });
});

const volumes = fc.record({
  v: fc.tuple(
    fc.integer({ min: 1500, max: 7000 }),
    fc.integer({ min: 200, max: 700 }),
    fc.integer({ min: 5, max: 80 }),
    fc.integer({ min: -20, max: 60 }),
    fc.integer({ min: -60, max: 60 }),
  ),
  u: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 5, maxLength: 5 }),
});

describe("against JCGM 100 over COMPRESSIONRATIO itself", () => {
  test("each volume moved by half its U both ways, the halves of the differences added in squares", () => {
    fc.assert(
      fc.property(volumes, ({ v, u }) => {
        const at = (moved: number[]) => number(compressionRatio, ...moved);
        const [sizes, halves] = [v.map((size) => size / 10), u.map((size) => size / 20)];
        const shifts = sizes.map(
          (_, i) => at(sizes.map((size, j) => (i === j ? size + halves[i]! : size))) - at(sizes.map((size, j) => (i === j ? size - halves[i]! : size))),
        );
        expect(number(ratioUncertainty, ...sizes, ...u.map((size) => size / 10))).toBeCloseTo(Math.hypot(...shifts), 7);
        const inch = [...sizes, ...u.map((size) => size / 10)].map((size) => size / 16.387064);
        expect(number(ratioUncertainty, ...inch)).toBeCloseTo(Math.hypot(...shifts), 7);
      }),
      { numRuns: 500 },
    );
  });

  test("a volume that is exact adds nothing, one less certain never narrows it", () => {
    fc.assert(
      fc.property(volumes, ({ v, u }) => {
        const sizes = v.map((size) => size / 10);
        const of = (all: number[]) => number(ratioUncertainty, ...sizes, ...all.map((size) => size / 10));
        expect(of([0, 0, 0, 0, 0])).toBe(0);
        expect(of([u[0]! + 1, ...u.slice(1)])).toBeGreaterThan(of(u));
        expect(number(ratioUncertainty, sizes[0]!, 60, "", "", "", 0.1, 0.1)).toBe(number(ratioUncertainty, sizes[0]!, 60, 0, 0, 0, 0.1, 0.1, 0, 0, 0));
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  // 249.2 ÷ (24.1 ± 20) + 1, half their difference and that of 249.2 ± 0.15 over 24.1, twice the root of their squares.
  test("a U may be nearly twice its volume, as half of it goes each way", () => {
    const shifts = [249.2 / 4.1 - 249.2 / 44.1, 0.3 / 24.1];
    expect(number(ratioUncertainty, 249.2, 24.1, "", "", "", 0.3, 40)).toBeCloseTo(Math.hypot(...shifts), 7);
  });
});

describe("faults", () => {
  test.each<[string, unknown[], string]>([
    ["no U of the swept volume", [249.2, 24.1], "RATIOUNCERTAINTY: uSwept is not given: it must be U of the swept volume, 0 where it is exact"],
    [
      "a gasket without its U",
      [249.2, 24.1, 3.1, "", "", 0.3, 0.2],
      "RATIOUNCERTAINTY: uGasket is not given: it must be U of the gasket volume, 0 where it is exact",
    ],
    [
      "no clearance volume left",
      [249.2, 24.1, 0, 0, -25, 0.3, 0.2, 0, 0, 0],
      "RATIOUNCERTAINTY: chamber 24.1: with gasket, deck and piston it leaves no clearance volume above 0",
    ],
    [
      "a U as large as the chamber",
      [249.2, 24.1, "", "", "", 0.3, 50],
      "RATIOUNCERTAINTY: uChamber 50: it is as large as what it belongs to, and no ratio is left",
    ],
    [
      "a clearance volume of just 0",
      [249.2, 24.1, 0, 0, -24.1, 0.3, 0.2, 0, 0, 0],
      "RATIOUNCERTAINTY: chamber 24.1: with gasket, deck and piston it leaves no clearance volume above 0",
    ],
    [
      "a U that leaves nothing swept",
      [249.2, 24.1, "", "", "", 498.4, 0.2],
      "RATIOUNCERTAINTY: uSwept 498.4: it is as large as what it belongs to, and no ratio is left",
    ],
    ["a negative U", [249.2, 24.1, "", "", "", -0.3, 0.2], "RATIOUNCERTAINTY: uSwept -0.3 is too small: it must be a volume of at least 0"],
  ])("%s", (_, args, sentence) => {
    expect(ask(ratioUncertainty, ...(args as never[]))).toMatchObject({ sentence });
  });
});

describe("blanks", () => {
  test("no swept volume or chamber leaves it blank; a blank gasket, deck or piston is none and wants no U", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(ratioUncertainty, blank, 24.1, "", "", "", 0.3, 0.2)).toBe("");
      expect(ask(ratioUncertainty, 249.2, blank, "", "", "", 0.3, 0.2)).toBe("");
    }
    for (const blank of BLANKS) expect(typeof ask(ratioUncertainty, 249.2, 24.1, blank, blank, blank, 0.3, 0.2, blank, blank, blank)).toBe("number");
  });
});
