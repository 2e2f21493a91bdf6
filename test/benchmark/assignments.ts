import { assignEvenly } from "../../src/math/assignment.ts";
import type { BenchmarkGroup } from "./benchmark-group.ts";
import { show, together } from "./measure.ts";
import { profiled } from "./profile.ts";

/** 200 bores and 200 pistons paired exactly; sizes spread as a shop's stock is. */
const SIZE = 200;
const WHAT = "piston matching, 200 × 200, exact";

export async function assignments(): Promise<BenchmarkGroup> {
  // A fixed scatter: every run pairs the same parts.
  const scatter = (i: number, prime: number) => ((i * prime) % 199) - 99;
  const costs = Array.from({ length: SIZE }, (_, bore) =>
    Array.from({ length: SIZE }, (_, piston) => Math.abs(scatter(bore, 83) - scatter(piston, 57)) * 1000),
  );
  const work = () => assignEvenly(costs);
  const [took] = await together([work]);
  return {
    lines: [{ what: WHAT, measured: show(took!), yardstick: "–", value: took!.median, unit: "ms", aim: 1000, profile: WHAT }],
    profiles: [await profiled(WHAT, work)],
  };
}
