import { assignEvenly } from "../../math/assignment.ts";
import { type Line, show, time } from "./measure.ts";

/** 200 bores and 200 pistons paired exactly; sizes spread as a shop's stock is. */
const SIZE = 200;

export function assignments(): Line[] {
  // A fixed scatter: every run pairs the same parts.
  const scatter = (i: number, prime: number) => ((i * prime) % 199) - 99;
  const costs = Array.from({ length: SIZE }, (_, bore) =>
    Array.from({ length: SIZE }, (_, piston) => Math.abs(scatter(bore, 83) - scatter(piston, 57)) * 1000),
  );
  const took = time(() => assignEvenly(costs), 5);
  return [{ what: "piston matching, 200 × 200, exact", measured: show(took), yardstick: "–", value: took.median, unit: "ms", aim: 1000 }];
}
