import { propagated, type WorkedOut } from "../../src/math/propagation.ts";
import { SeededNormal } from "../helpers/normal.ts";

const one =
  (f: (values: readonly number[]) => number): WorkedOut =>
  (values) => [f(values)];
const range = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
const largest = (values: readonly number[]): number => Math.max(...values);

const DRAWS = 40_000;

/** Twice the scatter of a result whose readings scatter by the normal law with U ÷ 2: JCGM 101:2008 (Monte Carlo), with a seed. */
function simulated(values: readonly number[], uncertainties: readonly number[], f: (values: readonly number[]) => number): number {
  const random = new SeededNormal(5);
  let [sum, squares] = [0, 0];
  for (let draw = 0; draw < DRAWS; draw++) {
    const off = f(values.map((value, i) => value + random.normal(uncertainties[i]! / 2))) - f(values);
    sum += off;
    squares += off * off;
  }
  return 2 * Math.sqrt(squares / DRAWS - (sum / DRAWS) ** 2);
}

describe("results without kinks, against simulation", () => {
  const slider = ([angle, stroke, rod]: readonly number[]): number => {
    const radius = stroke! / 2;
    return radius * (1 - Math.cos(angle!)) + rod! - Math.sqrt(rod! ** 2 - (radius * Math.sin(angle!)) ** 2);
  };
  test.each<[string, number[], number[], (values: readonly number[]) => number]>([
    ["the difference of a hole and a shaft", [73.04, 73], [0.003, 0.002], ([hole, shaft]) => hole! - shaft!],
    ["four sizes in a stack", [205, 74, 129, 38.8], [0.02, 0.01, 0.02, 0.02], ([block, stroke, rod, piston]) => block! - stroke! / 2 - rod! - piston!],
    ["the volume of a cylinder", [73, 72], [0.01, 0.1], ([bore, stroke]) => (Math.PI / 4000) * bore! ** 2 * stroke!],
    ["a compression ratio", [249.2, 24.1, 3.1], [0.5, 0.4, 0.1], ([swept, chamber, gasket]) => (swept! + chamber! + gasket!) / (chamber! + gasket!)],
    ["the force of a spring", [250, 40, 30, 39.2], [4, 0.1, 0.8, 0.1], ([force, length, rate, height]) => force! + rate! * (length! - height!)],
    ["the travel of a piston", [0.6, 74, 129], [0.01, 0.05, 0.05], slider],
    ["leak-down in per cent", [6, 5.4], [0.05, 0.05], ([supply, held]) => 100 * (1 - held! / supply!)],
  ])("%s", (_, values, uncertainties, f) => {
    const found = propagated(values, uncertainties, one(f))![0]!;
    // 40,000 draws give their own scatter to 0.35 %: three of those.
    expect(Math.abs(found / simulated(values, uncertainties, f) - 1)).toBeLessThan(0.011);
  });
});

test("the law itself: the root of the sum of the squares, each U times what its reading counts", () => {
  expect(
    propagated(
      [1, 2, 3],
      [0.3, 0.4, 0],
      one(([a, b, c]) => 2 * a! - 3 * b! + 100 * c!),
    )![0],
  ).toBeCloseTo(Math.hypot(0.6, 1.2), 12);
  // A product: JCGM 100, 5.1.6, the relative uncertainties add in squares.
  expect(
    propagated(
      [4, 5],
      [0.04, 0.1],
      one(([a, b]) => a! * b!),
    )![0],
  ).toBeCloseTo(20 * Math.hypot(0.01, 0.02), 12);
});

describe("largest and smallest readings: those that decide", () => {
  const U = 0.002;
  const of = (values: readonly number[], f: (values: readonly number[]) => number): number =>
    propagated(
      values,
      values.map(() => U),
      one(f),
    )![0]!;

  test.each<[string, number[], (values: readonly number[]) => number, number]>([
    ["one larger than the others", [73.05, 73.02, 73.01], largest, 1],
    ["three equal", [73.02, 73.02, 73.02], largest, 1],
    ["largest less smallest", [73.05, 73.02, 73.01], range, 2],
    ["largest less smallest of six equal", [73.02, 73.02, 73.02, 73.02, 73.02, 73.02], range, 2],
    ["the larger of two equal differences", [73.03, 73.03, 73.01, 73.01], ([a, b, c, d]) => Math.max(a! - c!, b! - d!), 2],
  ])("%s: U times the root of how many decide", (_, values, f, deciding) => {
    expect(of(values, f)).toBeCloseTo(U * Math.sqrt(deciding), 8);
    // Rounded to nine places as every result is.
    expect(of(values, (moved) => Number(f(moved).toFixed(9)))).toBeCloseTo(U * Math.sqrt(deciding), 5);
  });

  test.each([0, 0.1, 0.25, 0.5, 0.75, 1, 2])("with another %p U below it a largest reading never scatters more than is said", (below) => {
    for (const f of [largest, range]) {
      const values = [73.02, 73.02 - below * U, 73.01];
      const said = of(values, f);
      const scatter = simulated(
        values,
        values.map(() => U),
        f,
      );
      expect(said / scatter).toBeGreaterThan(0.989);
      expect(said / scatter).toBeLessThan(1.35);
    }
  });
});

test("what is no number has no uncertainty, what a moved reading is refused in is not known, and exact readings are not moved", () => {
  expect(propagated([1, 2], [0.1, 0.1], () => [Number.NaN, 3])).toEqual([Number.NaN, 0]);
  expect(propagated([1], [0.1], ([a]) => (a! > 1 ? undefined : [a!]))).toBeUndefined();
  expect(propagated([1], [0.1], () => undefined)).toBeUndefined();
  expect(propagated([1, 2], [0, 0], ([a, b]) => (a === 1 && b === 2 ? [a + b] : undefined))).toEqual([0]);
});
