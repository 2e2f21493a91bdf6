import type { Result } from "../../core/cell.ts";
import { fromSteps, isAbove, toSteps } from "../../core/decimal.ts";
import { define, table } from "../../core/define.ts";
import { Fault, swapped } from "../../core/fault.ts";
import { cells } from "../../core/inputs.ts";
import type { Cells } from "../../core/param.ts";
import { checkText } from "../../core/sentences.ts";
import { assign } from "../../math/assignment.ts";
import { nearestStep, noStep, type ShimSizes, sizeParams, sizesOf } from "./shim-step.ts";

const HEADER = ["valve", "shim", "from", "clearance"];

interface Valve {
  number: number;
  installed: number;
  clearance: number;
  least: number;
  most: number;
}

/** A shim at hand, or for one valve alone the shim that would be bought, or none where no step lands in the limits. */
interface Shim {
  size: number;
  from: string;
  /** The only valve that it may be bought for. */
  valve?: Valve;
  kind: "valve" | "spare" | "buy" | "none";
}

/** Where each valve's shim comes from. Exact, not greedy. Source: linear assignment in two orders (Burkard and others). */
export const shimPlan = define({
  name: "SHIMPLAN",
  group: "valves",
  role: "decides",
  summary: "Which shim goes to which valve: its own, another valve's, a spare or a bought one, with the fewest bought",
  definition:
    "a valve inside its limits keeps its shim; of all ways to bring the others into theirs the fewest bought, then the least sum of |clearance − (least + most) ÷ 2|",
  source: "service practice: new shim = installed + (measured − wanted); assignment: Burkard, Dell'Amico, Martello, Assignment Problems, SIAM",
  params: {
    installed: cells("length", "shim now in each valve, measured"),
    clearance: cells("length", "clearance measured at each valve, 0 for none, in the shape of installed").atLeast(0),
    least: cells("length", "least clearance: one cell, or one for each valve").chosen(),
    most: cells("length", "largest clearance: one cell, or one for each valve").chosen(),
    spares: cells("length", "shims at hand, measured").optional(),
    ...sizeParams,
  },
  returns: table("a row for each valve: the shim, where it comes from and the clearance that it gives"),
  examples: [
    {
      formula: "=HATCH.SHIMPLAN({2.5;2.6}, {0.1;0.3}, 0.15, 0.25)",
      gives: [HEADER, [1, 2.4, "buy", 0.2], [2, 2.7, "buy", 0.2]],
    },
    {
      formula: "=HATCH.SHIMPLAN({2.5;2.4;2.45}, {0.1;0.3;0.22}, 0.15, 0.25, {2.75;2.55})",
      gives: [HEADER, [1, 2.4, "valve 2", 0.2], [2, 2.5, "valve 1", 0.2], [3, 2.45, "its own", 0.22]],
    },
  ],
  notes: [
    "Valves are numbered along the rows of the range, as it is read. Give inlet and exhaust valves their own limits as ranges.",
    "A valve inside its limits, or on one of them, keeps its shim, however near the limit it is: watch it at the next check.",
    "A valve without clearance, 0, may be held open by any amount: its shim here is the thickest that can be right. Fit it and measure again.",
    "A valve not measured yet keeps its shim and stays blank; some sheets hand its empty cell over as 0.",
    "Measure every shim: a printed size says what it was when new. Measure the clearances again once all are in.",
  ],
  compute: ({ installed, clearance, least, most, spares, step, smallest, largest }) => {
    const ill = misfit(clearance, "clearance", installed, false) ?? misfit(least, "least", installed, true) ?? misfit(most, "most", installed, true);
    if (ill) return ill;
    const all = installed.values.map((_, at) => valveAt(at, [installed, clearance, least, most]));
    const valves = all.filter((valve): valve is Valve => valve !== null && !(valve instanceof Fault));
    const made = sizesOf(
      { step, smallest, largest },
      installed.values.filter((size) => typeof size === "number"),
    );
    if (made instanceof Fault) return made;
    const planned = plan(valves, spares?.values ?? [], made);
    const last = all.findLastIndex((_, at) => installed.values[at] !== null || clearance.values[at] !== null);
    const rows = all.slice(0, last + 1).map((valve, at): Result[] => {
      if (valve instanceof Fault) return [at + 1, checkText(valve), "", ""];
      return valve ? planned.get(valve)! : [at + 1, "", "", ""];
    });
    const badSpares = (spares?.values ?? []).flatMap((spare, at): Result[][] =>
      spare instanceof Fault ? [["", checkText(spare), `spare ${at + 1}`, ""]] : [],
    );
    return [HEADER, ...rows, ...badSpares];
  },
});

function misfit(range: Cells, name: string, like: Cells, mayBeOne: boolean): Fault | undefined {
  if ((mayBeOne && range.values.length === 1) || (range.rows === like.rows && range.columns === like.columns)) return undefined;
  return new Fault("shape", name, `${range.rows}×${range.columns}`, `installed of ${like.rows}×${like.columns}`);
}

/** One valve; `null` while something of it is not filled in. */
function valveAt(at: number, ranges: readonly Cells[]): Valve | null | Fault {
  const read = ranges.map(({ values }) => values[values.length === 1 ? 0 : at] as Cells["values"][number]);
  const bad = read.find((cell) => cell instanceof Fault);
  if (bad) return bad;
  if (read.includes(null)) return null;
  const [installed, clearance, least, most] = read as [number, number, number, number];
  return isAbove(least, most) ? swapped("least", least, "most", most) : { number: at + 1, installed, clearance, least, most };
}

function plan(all: readonly Valve[], spares: Cells["values"], made: ShimSizes): Map<Valve, Result[]> {
  const kept = all.filter((valve) => isWithin(valve, valve.installed));
  const rows = new Map(kept.map((valve) => [valve, [valve.number, valve.installed, "its own", fromSteps(left(valve, valve.installed))]]));
  const valves = all.filter((valve) => !rows.has(valve));
  if (valves.length === 0) return rows;
  const shims: Shim[] = [
    ...valves.map((valve): Shim => ({ size: valve.installed, from: `valve ${valve.number}`, kind: "valve" })),
    ...spares.flatMap((size, at): Shim[] => (typeof size === "number" ? [{ size, from: `spare ${at + 1}`, kind: "spare" }] : [])),
    ...valves.map((valve): Shim => {
      const bought = nearestStep(valve.installed, valve.clearance, valve.least, valve.most, made);
      return bought ? { size: bought.size, from: "buy", valve, kind: "buy" } : { size: 0, from: "", valve, kind: "none" };
    }),
  ];
  const tableOf = (cost: (valve: Valve, shim: Shim) => number) => valves.map((valve) => shims.map((shim) => cost(valve, shim)));
  // Leaving a valve unset counts as worse than buying for all the others.
  const bought = tableOf((valve, shim) => (fits(valve, shim) ? { valve: 0, spare: 0, buy: 1, none: valves.length + 1 }[shim.kind] : Number.POSITIVE_INFINITY));
  const off = tableOf((valve, shim) => (shim.kind === "none" ? 0 : Math.abs(2 * left(valve, shim.size) - toSteps(valve.least) - toSteps(valve.most))));
  // Each valve may buy for itself or stay unset, so there is always a pairing. None of them could keep its own shim: in all pairings as many are moved.
  const chosen = assign([bought, off])!;
  for (const [row, valve] of valves.entries()) rows.set(valve, rowFor(valve, shims[chosen[row]!]!, made));
  return rows;
}

const left = (valve: Valve, size: number): number => toSteps(valve.installed) + toSteps(valve.clearance) - toSteps(size);

function isWithin(valve: Valve, size: number): boolean {
  const clearance = left(valve, size);
  return clearance >= toSteps(valve.least) && clearance <= toSteps(valve.most);
}

const fits = (valve: Valve, { kind, size, valve: only }: Shim): boolean => (kind === "buy" || kind === "none" ? only === valve : isWithin(valve, size));

const rowFor = (valve: Valve, { kind, size, from }: Shim, made: ShimSizes): Result[] =>
  kind === "none" ? [valve.number, noStep(made), "", ""] : [valve.number, size, from, fromSteps(left(valve, size))];
