import { broadcast } from "../core/broadcast.ts";
import type { Block } from "../core/cell.ts";
import { decimal } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import type { NumberGrid } from "../core/param.ts";
import { CHECK_PREFIX, sentence } from "../core/sentences.ts";
import { WorkbookCells } from "../formula/workbook-cells.ts";
import { boreSummary } from "../functions/cylinder/bore-summary.ts";
import { type Choice, choicesOf, cleansUp, NO_OVERSIZE } from "../functions/cylinder/oversize.ts";
import { reborePlan } from "../functions/cylinder/rebore-plan.ts";
import type { CellArea } from "../workbook/address.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { argumentOf, blockOf, formulaOf, inputLengths, isArea, type PlanInput, reference, referencesTo } from "./inputs.ts";
import { NOTHING_WRITTEN, type PlanBlock, type PlannedContent, type PlanTarget, planEdits, valueParts, type WrittenPlan } from "./placement.ts";

/** One bore at one oversize. */
interface OversizeBore {
  name: string;
  cleansUp: boolean;
  /** Finish bore less the needed size: what is to spare, or negative what is lacking. */
  spare: number;
  says: string;
}

interface OversizeRow {
  oversize: number;
  /** The bore that it is finished to. */
  finish: number;
  cleansUpAll: boolean;
  /** The bores for which it is chosen. */
  chosenFor: string[];
  bores: OversizeBore[];
  says: string;
}

/** Every listed oversize against every bore that can be judged. */
function oversizeRows(book: WorkbookCells, inputs: ReboreInputs, lines: Block, planned: readonly BoreRow[]): OversizeRow[] {
  const standard = argumentOf(book, inputs.standard) as number;
  const pistonClearance = inputLengths(book, inputs.pistonClearance)[0] ?? undefined;
  const choices = choicesOf(standard, gridOf(book, inputs.oversizes)!, gridOf(book, inputs.pistons), pistonClearance);
  // The plan itself has been made from the same list, so there is no fault here.
  if (choices instanceof Fault) return [];
  const measured = planned.flatMap((bore, at) =>
    bore.needed === null ? [] : [{ name: bore.name, needed: bore.needed, need: needWords(book, inputs, lines[at]!) }],
  );
  return choices.map((choice) => {
    const bores = measured.map(({ name, needed, need }): OversizeBore => {
      const spare = decimal(choice.finish - needed);
      const does = cleansUp(choice.finish, needed, allowanceIn(book, inputs));
      return { name, cleansUp: does, spare, says: `${spareWords(choice.finish, needed, spare, does)} (${need})` };
    });
    const chosenFor = planned.filter(({ oversize }) => oversize === choice.oversize).map(({ name }) => name);
    const row = { ...choice, cleansUpAll: bores.every((bore) => bore.cleansUp), chosenFor, bores };
    return { ...row, says: rowWords(row, planned) };
  });
}

function spareWords(finish: number, needed: number, spare: number, does: boolean): string {
  if (!does)
    return `does not clean up: ${finish} is ${spare < 0 ? `${-spare} short of the ${needed} needed` : "exactly the size needed and leaves nothing to cut"}`;
  return `cleans up: ${finish} is ${spare > 0 ? `${spare} above the ${needed}` : "exactly what is"} needed`;
}

/** Cells of a range as REBOREPLAN reads them; `undefined` for none. */
function gridOf(book: WorkbookCells, given: PlanInput): NumberGrid | undefined {
  const values = inputLengths(book, given);
  const block = blockOf(book, given);
  return values.every((value) => value === null) ? undefined : { rows: block.length, columns: block[0]!.length, values };
}

/** 0 where none is typed. */
const allowanceIn = (book: WorkbookCells, { allowance }: Pick<ReboreInputs, "allowance">): number => inputLengths(book, allowance)[0] ?? 0;

/** Where the needed size comes from. */
function needWords(book: WorkbookCells, { standard, allowance, centring }: ReboreInputs, readings: Block[number]): string {
  const summary = broadcast(boreSummary, [[readings], 1]) as (number | string)[][];
  const [, largest] = summary[1] as [number, number];
  const base = argumentOf(book, standard) as number;
  const stock = allowanceIn(book, { allowance });
  const isTrue =
    String(argumentOf(book, centring) ?? "")
      .trim()
      .toLowerCase() === "true";
  const wear = decimal(largest - base);
  const sum = isTrue && wear > 0 ? `standard ${base} and twice the wear of ${wear}, which may all be on one side` : `largest reading ${largest}`;
  return `${sum}${stock > 0 ? `, ${stock} to leave for honing` : ""}`;
}

function rowWords({ bores, chosenFor, cleansUpAll }: Omit<OversizeRow, "says"> & Choice, planned: readonly BoreRow[]): string {
  if (bores.length === 0) return "no bore is measured yet";
  const short = bores.filter((bore) => !bore.cleansUp).map(({ name, spare }) => `${name} (${spare < 0 ? `${-spare} short` : "nothing to cut"})`);
  const chosen = chosenFor.length === 0 ? "" : chosenFor.length === planned.length ? ", chosen" : `, chosen for ${chosenFor.join(", ")}`;
  if (cleansUpAll) return `cleans up every bore measured${chosen}`;
  return short.length === bores.length ? `cleans up no bore: ${short.join(", ")}` : `does not clean up ${short.join(", ")}${chosen}`;
}

/** Where the bores stand: one bore a row, height by height, or a block of rows and axes for each. */
type BoreRanges = { rows: PlanInput; axes: number } | { blocks: readonly PlanInput[] };

/** Inputs as REBOREPLAN takes them. */
export interface ReboreInputs {
  bores: BoreRanges;
  /** What the sheet calls the bores, in their order. */
  names?: readonly string[];
  standard: PlanInput;
  oversizes: PlanInput;
  allowance?: PlanInput;
  centring?: PlanInput;
  common?: PlanInput;
  pistons?: PlanInput;
  pistonClearance?: PlanInput;
}

interface BoreRow {
  name: string;
  needed: number | null;
  /** `null` when no listed oversize cleans the bore up, or the bore cannot be planned. */
  oversize: number | null;
  finish: number | null;
  leastStock: number | null;
  mostStock: number | null;
  says: string;
}

interface ReborePlan extends WrittenPlan {
  bores: BoreRow[];
  /** Every listed oversize, the smallest first, with each bore and why it does or does not clean up. */
  oversizes: OversizeRow[];
  /** What is left to cut where it is least, and whether an allowance is typed. */
  remarks: string[];
  /** Why there is no plan. */
  fault: string | null;
  notes: readonly string[];
}

/** To what each bore of a block is taken, why, and how that is written into the sheet. */
export function planRebore(snapshot: WorkbookSnapshot, inputs: ReboreInputs, place?: PlanTarget): ReborePlan {
  const book = new WorkbookCells(snapshot);
  const nothing: ReborePlan = { ...NOTHING_WRITTEN, bores: [], oversizes: [], remarks: [], fault: null, notes: reborePlan.notes ?? [] };
  const lines = boreLines(book, inputs.bores);
  if (typeof lines === "string") return { ...nothing, fault: lines };
  const others = [inputs.standard, inputs.oversizes, inputs.allowance, inputs.centring, axesOf(inputs.bores, lines), inputs.common] as const;
  const more = [inputs.pistons, inputs.pistonClearance] as const;
  const made = broadcast(reborePlan, [lines, ...[...others, ...more].map((given) => argumentOf(book, given))]);
  if (made instanceof Fault) return { ...nothing, fault: sentence(made) };
  if (!Array.isArray(made)) return nothing;
  const bores = made.slice(1).map((row, at) => boreRow(row, inputs.names?.[at] ?? `bore ${at + 1}`));
  const plan = { ...nothing, bores, oversizes: oversizeRows(book, inputs, lines, bores), remarks: remarksOn(bores, allowanceIn(book, inputs)) };
  return place ? { ...plan, ...written(book, inputs, place, lines, bores) } : plan;
}

const axesOf = (bores: BoreRanges, lines: Block): number => ("rows" in bores ? bores.axes : (lines[0]?.length ?? 1));

/** The readings, one bore a row; or why they cannot be put so. */
function boreLines(book: WorkbookCells, bores: BoreRanges): Block | string {
  if ("rows" in bores) return blockOf(book, bores.rows);
  const lines = bores.blocks.map((block) => blockOf(book, block).flat());
  const odd = lines.findIndex((line) => line.length !== lines[0]!.length);
  return odd < 0 ? lines : `bore ${odd + 1} has ${lines[odd]!.length} readings and bore 1 has ${lines[0]!.length}: every bore of a block is measured alike`;
}

const numberOr = (cell: PlannedContent | undefined): number | null => (typeof cell === "number" ? cell : null);

function boreRow([, needed, oversize, finish, least, most]: readonly (number | string)[], name: string): BoreRow {
  const row = {
    name,
    needed: numberOr(needed),
    oversize: numberOr(oversize),
    finish: numberOr(finish),
    leastStock: numberOr(least),
    mostStock: numberOr(most),
  };
  return { ...row, says: says(row, String(needed), oversize === NO_OVERSIZE) };
}

function says({ oversize, finish, leastStock, mostStock, needed }: Omit<BoreRow, "says">, shown: string, isNone: boolean): string {
  if (isNone) return `needs ${needed}, which no listed oversize reaches: sleeve`;
  if (oversize === null) return shown.startsWith(CHECK_PREFIX) ? shown.slice(CHECK_PREFIX.length) : "a reading is still blank";
  const stock = leastStock === mostStock ? `${leastStock}` : `${leastStock} to ${mostStock}`;
  return `finish to ${finish}, oversize ${oversize}: takes ${stock} off the diameter`;
}

const NO_ALLOWANCE = "no stock for honing is typed: any cut at all, however small, counts as cleaning up";

/** Kept on the original centre line the worn side has less to lose than the diameter says. */
function remarksOn(bores: readonly BoreRow[], allowance: number): string[] {
  const left = bores.flatMap(({ name, needed, finish }) => (needed === null || finish === null ? [] : [{ name, stock: decimal(finish - needed + allowance) }]));
  if (left.length === 0) return [];
  const { name, stock } = left.reduce((least, one) => (one.stock < least.stock ? one : least));
  const of = allowance > 0 ? `, ${allowance} of it for honing` : "";
  return [`Least left to cut where a bore is worn most: ${stock} on the diameter, ${name}${of}.`, ...(allowance > 0 ? [] : [`Careful: ${NO_ALLOWANCE}.`])];
}

const HEADER = ["bore", "needed", "oversize", "finish bore", "least stock", "most stock"];

const valuesOf = ({ name, needed, oversize, finish, leastStock, mostStock, says }: BoreRow): PlannedContent[] => [
  name,
  needed ?? "",
  oversize ?? says,
  finish ?? "",
  leastStock ?? "",
  mostStock ?? "",
];

function written(book: WorkbookCells, inputs: ReboreInputs, place: PlanTarget, lines: Block, rows: readonly BoreRow[]): WrittenPlan {
  const { bores, standard, oversizes, allowance, centring, common, pistons, pistonClearance } = inputs;
  const given = "rows" in bores ? [bores.rows] : [...bores.blocks];
  const sources = [...given, standard, oversizes, allowance, centring, common, pistons, pistonClearance].filter((one): one is CellArea => isArea(one));
  if (place.as === "values" || !given.every(isArea)) {
    const noted = allowanceIn(book, inputs) > 0 ? [] : [[NO_ALLOWANCE]];
    return planEdits(book, place, "values", valueParts([HEADER, ...rows.map(valuesOf), ...noted], place.date), sources);
  }
  const { sheet } = place.at;
  const bored = (readings: CellArea, axes: number | undefined): PlanBlock => ({
    row: 0,
    column: 0,
    cells: [[{ formula: formulaOf(reborePlan, [readings, standard, oversizes, allowance, centring, axes, common, pistons, pistonClearance], sheet) }]],
    // A bore that is still blank gets its row once it is measured.
    fills: { rows: lines.length + 1, columns: HEADER.length },
  });
  const note = noteUnder(book, allowance, lines.length + 1, sheet);
  if ("rows" in bores || given.length === 1)
    return planEdits(book, place, "formulas", [bored(given[0]!, "rows" in bores ? bores.axes : undefined), ...note], sources);
  const beside = linesBeside(given, sheet);
  const readings = { sheet, row: place.at.row + 1, column: place.at.column + beside.column, rows: lines.length, columns: lines[0]!.length };
  return planEdits(book, place, "formulas", [bored(readings, readings.columns), beside, ...note], sources);
}

/** Says under the plan that no allowance is typed; where it has a cell, as long as that is blank. */
function noteUnder(book: WorkbookCells, allowance: PlanInput, row: number, sheet: string): PlanBlock[] {
  if (isArea(allowance)) return [{ row, column: 0, cells: [[{ formula: `=IF(${reference(allowance, sheet)}>0,"","${NO_ALLOWANCE}")` }]] }];
  return allowanceIn(book, { allowance }) > 0 ? [] : [{ row, column: 0, cells: [[NO_ALLOWANCE]] }];
}

/** REBOREPLAN takes one bore a row, so blocks are brought into rows first, right of the plan and cell by cell. */
const linesBeside = (blocks: readonly CellArea[], sheet: string): PlanBlock => ({
  row: 0,
  column: HEADER.length + 1,
  cells: [["readings, one bore a row"], ...blocks.map((block) => referencesTo(block, sheet))],
});
