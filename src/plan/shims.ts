import { broadcast } from "../core/broadcast.ts";
import { Fault } from "../core/fault.ts";
import { CHECK_PREFIX, sentence } from "../core/sentences.ts";
import { cellsOf, WorkbookCells } from "../formula/workbook-cells.ts";
import { shimPlan } from "../functions/valves/shim-plan.ts";
import { type CellArea, placeName } from "../workbook/address.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { argumentOf, blockOf, formulaOf, inputLengths, isArea, type PlanInput, reference } from "./inputs.ts";
import { type LimitsInSheet, limitsInSheet } from "./limits-in-sheet.ts";
import { NOTHING_WRITTEN, type PlanBlock, type PlannedContent, type PlanTarget, planEdits, valueParts, type WrittenPlan } from "./placement.ts";

/** Inputs as SHIMPLAN takes them. */
export interface ShimInputs {
  installed: PlanInput;
  clearance: PlanInput;
  /** One for all valves, or a range with one for each. */
  least: PlanInput;
  most: PlanInput;
  /** The limits of each valve, along the rows of `installed`, in place of those two: inlet and exhaust apart, or as the sheet judges them. */
  limits?: readonly LimitsInSheet[];
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
  const { installed, clearance, spares, step } = inputs;
  const { least, most } = limitBlocks(book, inputs);
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
    judgedOtherwise: judgedOtherwise(book, { clearance, least, most }),
  };
  if (!place) return plan;
  const sources = [...givens, ...(inputs.limits ?? []).flatMap((one) => [one.least, one.most])].filter((given): given is CellArea => isArea(given));
  if (place.as === "values" || !isArea(installed) || !isArea(clearance)) {
    const table = [made[0]!, ...valves.map((valve) => [valve.name, valve.shim ?? valve.says, valve.from ?? valve.source ?? "", valve.clearance ?? ""])];
    return { ...plan, ...planEdits(book, place, "values", valueParts(table, place.date), sources) };
  }
  const named = inputs.names ? [{ row: 0, column: made[0]!.length, cells: [["name"], ...valves.map(({ name }) => [name])] }] : [];
  const beside = limitsBeside(inputs, place, made[0]!.length + named.length + 1);
  const formula = formulaOf(shimPlan, [installed, clearance, beside?.least ?? least, beside?.most ?? most, spares, step], place.at.sheet);
  const part = { row: 0, column: 0, cells: [[{ formula }]], fills: { rows: mostRows(book, inputs), columns: made[0]!.length } };
  return { ...plan, ...planEdits(book, place, "formulas", [part, ...named, ...(beside?.parts ?? [])], sources) };
}

/** The limits as the function takes them: those of each valve in the shape of the shims. */
function limitBlocks(book: WorkbookCells, { installed, least, most, limits }: ShimInputs): Pick<ShimInputs, "least" | "most"> {
  if (!limits) return { least, most };
  const { length: columns } = blockOf(book, installed)[0]!;
  const shaped = (side: keyof LimitsInSheet) =>
    Array.from({ length: limits.length / columns }, (_, r) =>
      limits.slice(r * columns, (r + 1) * columns).map((one) => inputLengths(book, one[side])[0] ?? null),
    );
  return { least: shaped("least"), most: shaped("most") };
}

/** The limits of each valve as cells right of the plan, so that it follows them: a formula has no list of cells from here and there. */
function limitsBeside(
  { installed, limits }: ShimInputs,
  { at }: PlanTarget,
  column: number,
): { least: CellArea; most: CellArea; parts: PlanBlock[] } | undefined {
  if (!limits || !isArea(installed)) return undefined;
  const { rows, columns } = installed;
  const block = (side: keyof LimitsInSheet, left: number): PlanBlock => {
    const cells = limits.map((one): PlannedContent => {
      const limit = one[side];
      // A blank handed over as 0 is no limit.
      return isArea(limit) ? { formula: `=IF(${reference(limit, at.sheet)}="","",${reference(limit, at.sheet)})` } : typeof limit === "number" ? limit : "";
    });
    return { row: 0, column: left, cells: [[side], ...Array.from({ length: rows }, (_, r) => cells.slice(r * columns, (r + 1) * columns))] };
  };
  const parts = [block("least", column), block("most", column + columns)];
  const area = (left: number): CellArea => ({ sheet: at.sheet, row: at.row + 1, column: at.column + left, rows, columns });
  return { least: area(column), most: area(column + columns), parts };
}

/** Rows that the formula can come to fill: its head, every valve and, at worst, every spare that is no good. */
const mostRows = (book: WorkbookCells, { installed, spares }: ShimInputs): number =>
  1 + blockOf(book, installed).flat().length + (spares ? blockOf(book, spares).flat().length : 0);

/** A plan by other limits than those of the sheet's own verdicts would contradict them. */
function judgedOtherwise(book: WorkbookCells, { clearance, least, most }: Pick<ShimInputs, "clearance" | "least" | "most">): number {
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
