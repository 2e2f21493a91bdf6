import type { Result } from "../../core/cell.ts";
import { fromSteps, isAbove, toSteps } from "../../core/decimal.ts";
import { define, table } from "../../core/define.ts";
import { Fault, refuse, swapped, unlike } from "../../core/fault.ts";
import { cells, length } from "../../core/inputs.ts";
import type { Cells } from "../../core/param.ts";
import { checkText } from "../../core/sentences.ts";
import { assignEvenly } from "../../math/assignment.ts";

type Size = Cells["values"][number];
const HEADER = ["bore", "bore size", "piston", "piston size", "clearance", "off target"];

/**
 * Selective assembly: which piston goes in which bore. Exact, not greedy. Source: the bottleneck
 * assignment problem, then the linear one (Burkard, Dell'Amico, Martello, Assignment Problems).
 */
export const pistonMatch = define({
  name: "PISTONMATCH",
  group: "cylinder",
  role: "decides",
  summary: "Which piston goes in which bore so that the worst clearance is as near the target as can be",
  definition: "of all pairings the one with the least largest |bore − piston − target|; of these the one with the least sum of them",
  source: "selective assembly: common practice; bottleneck and linear assignment: Burkard, Dell'Amico, Martello, Assignment Problems, SIAM",
  params: {
    bores: cells("length", "one size for each bore, in the order of the cylinders"),
    pistons: cells("length", "one skirt size for each piston, in any order"),
    target: length("piston-to-wall clearance wanted, on the diameter").chosen(),
  },
  returns: table("a row for each bore: its piston, the clearance and how far that is off the target; then the pistons left over"),
  // Pairs of places in two lists, weighed against one another again and again.
  steps: ({ bores, pistons }) => 10 * Math.max(bores, pistons) ** 3,
  examples: [
    {
      formula: "=HATCH.PISTONMATCH({73.02;73.01;73.03}, {72.98;72.97;72.99}, 0.04)",
      gives: [HEADER, [1, 73.02, 1, 72.98, 0.04, 0], [2, 73.01, 2, 72.97, 0.04, 0], [3, 73.03, 3, 72.99, 0.04, 0]],
    },
    {
      formula: "=HATCH.PISTONMATCH({73.02,73.01}, {72.99,72.96,72.98}, 0.04)",
      gives: [HEADER, [1, 73.02, 3, 72.98, 0.04, 0], [2, 73.01, 2, 72.96, 0.05, 0.01], ["left over", "", 1, 72.99, "", ""]],
    },
  ],
  notes: [
    "A bore's size is what the clearance is reckoned from: usually its smallest reading.",
    "Pairings that are equal in all this are settled by the order of the lists: the first bore gets the earliest piston.",
    "Weigh the pistons too: this knows sizes only. Mark each piston with its bore.",
  ],
  compute: ({ bores, pistons, target }) => {
    const sizes = numbers([...bores.values, ...pistons.values]).sort((a, b) => a - b);
    // Where there is no size there is none to be held against it either.
    const middle = sizes[sizes.length >> 1]!;
    const holes = measured("bores", bores, middle);
    const skirts = measured("pistons", pistons, middle);
    const fault = allLarger(numbers(skirts), numbers(holes));
    return fault ?? [HEADER, ...rowsFor(holes, skirts, pair(holes, skirts, target), target)];
  },
});

const numbers = (cells: readonly Size[]): number[] => cells.filter((cell) => typeof cell === "number");

/** The cells without the blank ones at the end; a size that is in another unit than the rest becomes a fault. */
function measured(name: string, { values }: Cells, middle: number): Size[] {
  const last = values.findLastIndex((cell) => cell !== null);
  return values.slice(0, last + 1).map((cell) => (typeof cell === "number" ? (unlike(name, cell, "the middle of all sizes", middle) ?? cell) : cell));
}

function allLarger(skirts: number[], holes: number[]): Fault | undefined {
  if (skirts.length === 0 || holes.length === 0) return undefined;
  const least = skirts.reduce((a, b) => Math.min(a, b));
  const most = holes.reduce((a, b) => Math.max(a, b));
  return isAbove(least, most) ? swapped("pistons", least, "bores", most) : undefined;
}

/** In steps: farther than any size, and still a number that can be reckoned with. */
const FAR = 1e200;

/** For each place in `holes` the place of its piston, where it has one. */
function pair(holes: readonly Size[], skirts: readonly Size[], target: number): Map<number, number | undefined> {
  const places = (cells: readonly Size[]) => [...cells.keys()].filter((at) => typeof cells[at] === "number");
  const [rows, columns] = [places(holes), places(skirts)];
  if (rows.length === 0) return new Map();
  const steps = (cell: Size) => Math.max(-FAR, Math.min(FAR, toSteps(cell as number)));
  const costs = rows.map((row) => columns.map((column) => Math.abs(steps(holes[row]!) - steps(skirts[column]!) - steps(target))));
  // No pair is forbidden, so there is always a pairing; at −1, that of a bore left over, there is no piston.
  return new Map(assignEvenly(costs)!.map((column, i) => [rows[i]!, columns[column]]));
}

function rowsFor(holes: readonly Size[], skirts: readonly Size[], pairs: ReadonlyMap<number, number | undefined>, target: number): Result[][] {
  const used = new Set(pairs.values());
  const rows = holes.map((hole, at): Result[] => {
    const mate = pairs.get(at);
    if (mate === undefined) return [at + 1, shown(hole), "", "", "", ""];
    const [bore, piston] = [hole as number, skirts[mate] as number];
    const gap = toSteps(bore) - toSteps(piston);
    const clearance = gap < 0 ? checkText(refuse("piston", piston, `it is larger than bore ${bore}`)) : fromSteps(gap);
    return [at + 1, bore, mate + 1, piston, clearance, fromSteps(gap - toSteps(target))];
  });
  const over = skirts.flatMap((skirt, at): Result[][] => (skirt === null || used.has(at) ? [] : [["left over", "", at + 1, shown(skirt), "", ""]]));
  return [...rows, ...over];
}

const shown = (cell: Size): Result => (cell instanceof Fault ? checkText(cell) : (cell ?? ""));
