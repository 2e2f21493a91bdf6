import { type Area, Book } from "../buildsheet/formula/book.ts";
import type { Block } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { call } from "../core/lift.ts";
import { CHECK_PREFIX, sentence } from "../core/sentences.ts";
import { NO_OVERSIZE } from "../functions/cylinder/oversize.ts";
import { reborePlan } from "../functions/cylinder/rebore-plan.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { argumentOf, blockOf, formulaOf, type Given, isArea, referencesTo } from "./inputs.ts";
import { type Content, lay, NOT_WRITTEN, type Part, type Place, valueParts, type Written } from "./placement.ts";
import { type OversizeRow, oversizeRows } from "./rebore-why.ts";

/** Where the bores stand: one bore a row, height by height, or a block of rows and axes for each. */
export type BoreRanges = { rows: Given; axes: number } | { blocks: readonly Given[] };

/** Inputs as REBOREPLAN takes them. */
export interface ReboreInputs {
  bores: BoreRanges;
  /** What the sheet calls the bores, in their order. */
  names?: readonly string[];
  standard: Given;
  oversizes: Given;
  allowance?: Given;
  centring?: Given;
  common?: Given;
  pistons?: Given;
  pistonClearance?: Given;
}

export interface BoreRow {
  name: string;
  needed: number | null;
  /** `null` when no listed oversize cleans the bore up, or the bore cannot be planned. */
  oversize: number | null;
  finish: number | null;
  leastStock: number | null;
  mostStock: number | null;
  says: string;
}

export interface ReborePlan extends Written {
  bores: BoreRow[];
  /** Every listed oversize, the smallest first, with each bore and why it does or does not clean up. */
  oversizes: OversizeRow[];
  /** Why there is no plan. */
  fault: string | null;
  notes: readonly string[];
}

/** To what each bore of a block is taken, why, and how that is written into the sheet. */
export function planRebore(snapshot: WorkbookSnapshot, inputs: ReboreInputs, place?: Place): ReborePlan {
  const book = new Book(snapshot);
  const nothing: ReborePlan = { ...NOT_WRITTEN, bores: [], oversizes: [], fault: null, notes: reborePlan.notes ?? [] };
  const lines = boreLines(book, inputs.bores);
  if (typeof lines === "string") return { ...nothing, fault: lines };
  const others = [inputs.standard, inputs.oversizes, inputs.allowance, inputs.centring, axesOf(inputs.bores, lines), inputs.common] as const;
  const more = [inputs.pistons, inputs.pistonClearance] as const;
  const made = call(reborePlan, [lines, ...[...others, ...more].map((given) => argumentOf(book, given))]);
  if (made instanceof Fault) return { ...nothing, fault: sentence(made) };
  if (!Array.isArray(made)) return nothing;
  const bores = made.slice(1).map((row, at) => boreRow(row, inputs.names?.[at] ?? `bore ${at + 1}`));
  const plan = { ...nothing, bores, oversizes: oversizeRows(book, inputs, lines, bores) };
  return place ? { ...plan, ...written(book, inputs, place, lines, bores) } : plan;
}

const axesOf = (bores: BoreRanges, lines: Block): number => ("rows" in bores ? bores.axes : (lines[0]?.length ?? 1));

/** The readings, one bore a row; or why they cannot be put so. */
function boreLines(book: Book, bores: BoreRanges): Block | string {
  if ("rows" in bores) return blockOf(book, bores.rows);
  const lines = bores.blocks.map((block) => blockOf(book, block).flat());
  const odd = lines.findIndex((line) => line.length !== lines[0]!.length);
  return odd < 0 ? lines : `bore ${odd + 1} has ${lines[odd]!.length} readings and bore 1 has ${lines[0]!.length}: every bore of a block is measured alike`;
}

const numberOr = (cell: Content | undefined): number | null => (typeof cell === "number" ? cell : null);

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

const HEADER = ["bore", "needed", "oversize", "finish bore", "least stock", "most stock"];

const valuesOf = ({ name, needed, oversize, finish, leastStock, mostStock, says }: BoreRow): Content[] => [
  name,
  needed ?? "",
  oversize ?? says,
  finish ?? "",
  leastStock ?? "",
  mostStock ?? "",
];

function written(book: Book, inputs: ReboreInputs, place: Place, lines: Block, rows: readonly BoreRow[]): Written {
  const { bores, standard, oversizes, allowance, centring, common, pistons, pistonClearance } = inputs;
  const given = "rows" in bores ? [bores.rows] : [...bores.blocks];
  const sources = [...given, standard, oversizes, allowance, centring, common, pistons, pistonClearance].filter((one): one is Area => isArea(one));
  if (place.as === "values" || !given.every(isArea)) return lay(book, place, "values", valueParts([HEADER, ...rows.map(valuesOf)], place.date), sources);
  const { sheet } = place.at;
  const bored = (readings: Area, axes: number | undefined): Part => ({
    row: 0,
    column: 0,
    cells: [[{ formula: formulaOf(reborePlan, [readings, standard, oversizes, allowance, centring, axes, common, pistons, pistonClearance], sheet) }]],
    // A bore that is still blank gets its row once it is measured.
    fills: { rows: lines.length + 1, columns: HEADER.length },
  });
  if ("rows" in bores || given.length === 1) return lay(book, place, "formulas", [bored(given[0]!, "rows" in bores ? bores.axes : undefined)], sources);
  const beside = linesBeside(given, sheet);
  const readings = { sheet, row: place.at.row + 1, column: place.at.column + beside.column, rows: lines.length, columns: lines[0]!.length };
  return lay(book, place, "formulas", [bored(readings, readings.columns), beside], sources);
}

/** REBOREPLAN takes one bore a row, so blocks are brought into rows first, right of the plan and cell by cell. */
const linesBeside = (blocks: readonly Area[], sheet: string): Part => ({
  row: 0,
  column: HEADER.length + 1,
  cells: [["readings, one bore a row"], ...blocks.map((block) => referencesTo(block, sheet))],
});
