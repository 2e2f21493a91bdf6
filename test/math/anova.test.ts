import fc from "fast-check";
import { anovaRow, crossedAnova, oneWayAnova, pValue } from "../../src/math/anova.ts";
import { columns, digits, grouped } from "../reference/columns.ts";
import { cellsOf, tenParts, thermalImpedance } from "../reference/gauge-studies.ts";

const strd = (name: string) => grouped(columns(`nist-strd/${name}.dat`, /^Data:/).map(([label, reading]) => [label!, reading!] as const));

// NIST Statistical Reference Datasets, one-way analysis of variance; certified values from the files' headers.
describe("cited values: NIST StRD", () => {
  test.each([
    ["SiRstv", 1.18046237440255, 5, 1e-11],
    ["SmLs01", 21, 9, 1e-9],
    ["SmLs04", 21, 9, 1e-7],
    // Readings of 10¹² and a spread of 0.1: the decimals typed are no longer the doubles kept.
    ["SmLs07", 21, 9, 2e-4],
  ])("%s: F within its tolerance", (name, certified, treatments, tolerance) => {
    const groups = strd(name);
    expect(groups).toHaveLength(treatments);
    expect(Math.abs(oneWayAnova(groups).f / certified - 1)).toBeLessThan(tolerance);
  });

  test("SiRstv: both sums of squares to 11 digits, and their degrees of freedom", () => {
    const { between, within } = oneWayAnova(strd("SiRstv"));
    expect(digits(between.sumOfSquares, 0.0511462616)).toBeGreaterThanOrEqual(11);
    expect(digits(within.sumOfSquares, 0.21663656)).toBeGreaterThanOrEqual(11);
    expect([between.degreesOfFreedom, within.degreesOfFreedom]).toEqual([4, 20]);
  });
});

// NIST/SEMATECH e-Handbook data GEAR; the printed values from memory, and they follow from the file.
test("gear diameters, ten batches: grand mean 0.99764, F 2.296912", () => {
  const rows = columns("nist-handbook/GEAR.DAT", /^-{5,}/).map(([diameter, batch]) => [batch!, diameter!] as const);
  const groups = grouped(rows);
  expect(groups.map((group) => group.length)).toEqual(new Array(10).fill(10));
  expect(rows.reduce((sum, [, diameter]) => sum + diameter, 0) / 100).toBeCloseTo(0.99764, 10);
  expect(oneWayAnova(groups).f).toBeCloseTo(2.296912, 6);
});

describe("cited values: crossed", () => {
  // Sums and mean squares as R's VCA package prints them for the data of Montgomery's example.
  test("thermal impedance: parts 3935.9556, inspectors 39.2667, both together 48.5111, error 30.6667", () => {
    const { parts, operators, interaction, repeats } = crossedAnova(cellsOf(thermalImpedance, 3));
    expect(parts.sumOfSquares).toBeCloseTo(3935.9556, 4);
    expect(operators.sumOfSquares).toBeCloseTo(39.2667, 4);
    expect(interaction.sumOfSquares).toBeCloseTo(48.5111, 4);
    expect(repeats.sumOfSquares).toBeCloseTo(30.6667, 4);
    expect([parts, operators, interaction, repeats].map(({ degreesOfFreedom }) => degreesOfFreedom)).toEqual([9, 2, 18, 60]);
    expect([parts, operators, interaction, repeats].map((line) => Number(line.meanSquare.toFixed(4)))).toEqual([437.3284, 19.6333, 2.6951, 0.5111]);
  });

  // Published solution of Montgomery's problem 13.1: SS 99.017, 0.417, 5.417, 60.000.
  test("ten parts, two operators: 99.017, 0.417, 5.417 and 60", () => {
    const { parts, operators, interaction, repeats } = crossedAnova(cellsOf(tenParts, 3));
    expect([parts, operators, interaction, repeats].map((line) => Number(line.sumOfSquares.toFixed(3)))).toEqual([99.017, 0.417, 5.417, 60]);
  });
});

describe("identities", () => {
  const cells = fc
    .tuple(fc.integer({ min: 2, max: 5 }), fc.integer({ min: 2, max: 4 }), fc.integer({ min: 2, max: 3 }))
    .chain(([parts, operators, repeats]) => {
      const cell = fc.array(fc.integer({ min: 0, max: 200 }), { minLength: repeats, maxLength: repeats });
      return fc.array(fc.array(cell, { minLength: operators, maxLength: operators }), { minLength: parts, maxLength: parts });
    });

  test("the sums of squares of a crossed study make up the whole", () => {
    fc.assert(
      fc.property(cells, (study) => {
        const { parts, operators, interaction, repeats } = crossedAnova(study);
        const all = study.flat(2);
        const centre = all.reduce((sum, x) => sum + x, 0) / all.length;
        const whole = all.reduce((sum, x) => sum + (x - centre) ** 2, 0);
        expect(parts.sumOfSquares + operators.sumOfSquares + interaction.sumOfSquares + repeats.sumOfSquares).toBeCloseTo(whole, 6);
        expect(parts.degreesOfFreedom + operators.degreesOfFreedom + interaction.degreesOfFreedom + repeats.degreesOfFreedom).toBe(all.length - 1);
      }),
    );
  });

  test("readings that have ten digits in common keep those that they do not share", () => {
    fc.assert(
      fc.property(cells, (study) => {
        const near = crossedAnova(study.map((row) => row.map((cell) => cell.map((reading) => reading / 64))));
        const far = crossedAnova(study.map((row) => row.map((cell) => cell.map((reading) => 1e10 + reading / 64))));
        for (const line of ["parts", "operators", "interaction", "repeats"] as const) expect(far[line].sumOfSquares).toBeCloseTo(near[line].sumOfSquares, 8);
      }),
    );
  });

  test("where nothing differs at all, chance alone makes as much every time", () => {
    expect(pValue(anovaRow(0, 4), anovaRow(0, 10))).toBe(1);
    expect(pValue(anovaRow(0, 4), anovaRow(3, 10))).toBe(1);
  });

  test("within a crossed study the repeats are what one-way analysis finds within", () => {
    fc.assert(
      fc.property(cells, (study) => {
        expect(crossedAnova(study).repeats.sumOfSquares).toBeCloseTo(oneWayAnova(study.flat()).within.sumOfSquares, 8);
      }),
    );
  });
});
