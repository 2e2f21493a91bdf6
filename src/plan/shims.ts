import { broadcast } from "../core/broadcast.ts";
import { Fault } from "../core/fault.ts";
import { CHECK_PREFIX, sentence } from "../core/sentences.ts";
import { cellsOf, WorkbookCells } from "../formula/workbook-cells.ts";
import { shimPlan } from "../functions/valves/shim-plan.ts";
import { type CellArea, placeName } from "../workbook/address.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { argumentOf, blockOf, formulaOf, inputLengths, isArea, type PlanInput } from "./inputs.ts";
import { limitsInSheet } from "./limits-in-sheet.ts";
import { NOTHING_WRITTEN, type PlannedContent, type PlanTarget, planEdits, valueParts, type WrittenPlan } from "./placement.ts";

/** Inputs as SHIMPLAN takes them. */
export interface ShimInputs {
  installed: PlanInput;
  clearance: PlanInput;
  least: PlanInput;
  most: PlanInput;
  spares?: PlanInput;
  step?: PlanInput;
  /** What the sheet calls the valves, along the rows of `installed`. */
  names?: readonly string[];
}

interface ValveRow {
  name: string;
  installed: number | null;
  measured: number | null;
  /** The shim to fit; `null` where none can be named. */
  shim: number | null;
  source: "its own" | "another valve" | "spare" | "buy" | null;
  /** The valve or spare that the shim comes from. */
  from: string | null;
  /** The clearance that it gives. */
  clearance: number | null;
  says: string;
}

interface ShimPlanned extends WrittenPlan {
  valves: ValveRow[];
  /** Shims to buy, each size once. */
  buy: { size: number; count: number }[];
  /** Shims that no valve takes: out of valves, and spares. */
  leftOver: { size: number; from: string }[];
  /** Spares that cannot be used, and why. */
  badSpares: string[];
  /** How many clearances the sheet judges by other limits than the plan is given. */
  judgedOtherwise: number;
  fault: string | null;
  notes: readonly string[];
}

/** Which shim goes where, what to buy, and how that is written into the sheet. */
export function planShims(snapshot: WorkbookSnapshot, inputs: ShimInputs, place?: PlanTarget): ShimPlanned {
  const book = new WorkbookCells(snapshot);
  const nothing: ShimPlanned = {
    ...NOTHING_WRITTEN,
    valves: [],
    buy: [],
    leftOver: [],
    badSpares: [],
    judgedOtherwise: 0,
    fault: null,
    notes: shimPlan.notes ?? [],
  };
  const { installed, clearance, least, most, spares, step } = inputs;
  const givens = [installed, clearance, least, most, spares, step];
  const made = broadcast(
    shimPlan,
    givens.map((given) => argumentOf(book, given)),
  );
  if (made instanceof Fault) return { ...nothing, fault: sentence(made) };
  if (!Array.isArray(made)) return nothing;
  const nameOf = (number: number) => inputs.names?.[number - 1] ?? `valve ${number}`;
  const [installedNow, measured] = [inputLengths(book, installed), inputLengths(book, clearance)];
  const rows = made.slice(1);
  const valves = rows
    .filter(([number]) => number !== "")
    .map((row) => valveRow(row, nameOf, installedNow[(row[0] as number) - 1] ?? null, measured[(row[0] as number) - 1] ?? null));
  const badSpares = rows.filter(([number]) => number === "").map(([, text, from]) => `${from}: ${String(text).slice(CHECK_PREFIX.length)}`);
  const plan = {
    ...nothing,
    valves,
    buy: bought(valves),
    leftOver: leftOver(rows, valves, inputLengths(book, spares)),
    badSpares,
    judgedOtherwise: judgedOtherwise(book, inputs),
  };
  if (!place) return plan;
  const sources = givens.filter((given): given is CellArea => isArea(given));
  if (place.as === "values" || !isArea(installed) || !isArea(clearance)) {
    const table = [made[0]!, ...valves.map((valve) => [valve.name, valve.shim ?? valve.says, valve.from ?? valve.source ?? "", valve.clearance ?? ""])];
    return { ...plan, ...planEdits(book, place, "values", valueParts(table, place.date), sources) };
  }
  const part = { row: 0, column: 0, cells: [[{ formula: formulaOf(shimPlan, givens, place.at.sheet) }]] };
  return { ...plan, ...planEdits(book, place, "formulas", [{ ...part, fills: { rows: mostRows(book, inputs), columns: made[0]!.length } }], sources) };
}

/** Rows that the formula can come to fill: its head, every valve and, at worst, every spare that is no good. */
const mostRows = (book: WorkbookCells, { installed, spares }: ShimInputs): number =>
  1 + blockOf(book, installed).flat().length + (spares ? blockOf(book, spares).flat().length : 0);

/** A plan by other limits than those of the sheet's own verdicts would contradict them. */
function judgedOtherwise(book: WorkbookCells, { clearance, least, most }: ShimInputs): number {
  if (!isArea(clearance)) return 0;
  const inSheet = limitsInSheet(book);
  const given = [least, most].map((limit) => inputLengths(book, limit));
  return [...cellsOf(clearance)].filter((cell, at) => {
    const own = inSheet.get(placeName(cell));
    if (!own) return false;
    return [own.least, own.most].some((limit, side) => {
      const [typed] = inputLengths(book, limit);
      const planned = given[side]!.length === 1 ? given[side]![0] : given[side]![at];
      return typed != null && planned != null && typed !== planned;
    });
  }).length;
}

type NameOf = (number: number) => string;

function valveRow([number, shim, from, gives]: readonly (number | string)[], nameOf: NameOf, installed: number | null, measured: number | null): ValveRow {
  const name = nameOf(number as number);
  const none = { name, installed, measured, shim: null, source: null, from: null, clearance: null };
  if (typeof shim !== "number") return { ...none, says: shim === "" ? notMeasured(installed) : String(shim).replace(CHECK_PREFIX, "") };
  const [kind, at] = String(from).split(" ");
  const clearance = gives as number;
  const result = `${clearance} instead of ${measured}`;
  if (from === "its own") return { ...none, shim, source: "its own", from: name, clearance, says: `keeps its ${shim}: ${clearance}` };
  if (from === "buy") return { ...none, shim, source: "buy", from: null, clearance, says: `buy ${shim} for it: ${result}` };
  if (kind === "spare") return { ...none, shim, source: "spare", from: String(from), clearance, says: `take ${from}, ${shim}: ${result}` };
  const other = nameOf(Number(at));
  return { ...none, shim, source: "another valve", from: other, clearance, says: `take the ${shim} out of ${other}: ${result}` };
}

const notMeasured = (installed: number | null): string =>
  installed === null ? "the shim is not measured yet" : "the clearance or a limit is still blank: it keeps its shim";

function bought(valves: readonly ValveRow[]): ShimPlanned["buy"] {
  const counts = new Map<number, number>();
  for (const { source, shim } of valves) if (source === "buy") counts.set(shim!, (counts.get(shim!) ?? 0) + 1);
  return [...counts].map(([size, count]) => ({ size, count })).sort((a, b) => a.size - b.size);
}

/** A valve that has no plan yet keeps its shim; every other shim that is not taken is left over. */
function leftOver(rows: readonly (readonly PlannedContent[])[], valves: readonly ValveRow[], spares: readonly (number | null)[]): ShimPlanned["leftOver"] {
  const taken = new Set(rows.map(([number, , from]) => (from === "its own" ? `valve ${number}` : from)));
  const out = valves.flatMap(({ name, installed, shim }, at) =>
    installed === null || shim === null || taken.has(`valve ${at + 1}`) ? [] : [{ size: installed, from: name }],
  );
  const unused = spares.flatMap((size, at) => (size === null || taken.has(`spare ${at + 1}`) ? [] : [{ size, from: `spare ${at + 1}` }]));
  return [...out, ...unused];
}
