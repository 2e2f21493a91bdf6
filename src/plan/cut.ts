import { broadcast } from "../core/broadcast.ts";
import type { Block } from "../core/cell.ts";
import { decimal } from "../core/decimal.ts";
import type { Spec } from "../core/define.ts";
import { Fault } from "../core/fault.ts";
import type { NumberGrid } from "../core/param.ts";
import { CHECK_PREFIX, sentence } from "../core/sentences.ts";
import { WorkbookCells } from "../formula/workbook-cells.ts";
import { boreSummary } from "../functions/cylinder/bore-summary.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { noAllowance, written } from "./cut-edits.ts";
import { argumentOf, blockOf, inputLengths, type PlanInput } from "./inputs.ts";
import { NOTHING_WRITTEN, type PlannedContent, type PlanTarget, type WrittenPlan } from "./placement.ts";

/** A listed size with what its part is finished to. */
export interface ListedSize {
  size: number;
  finish: number;
}

/** Metal taken off worn parts until they clean up at a listed size: bores by oversizes, journals by undersizes. */
export interface Cut {
  spec: Spec;
  part: string;
  size: string;
  work: string;
  verb: string;
  /** What is done before the stock for the last work is left: a bore is bored short of its finish and honed to it. */
  before?: string;
  /** Bores wear larger and are cut larger; journals smaller. */
  grows: boolean;
  /** What stands in the cell where no listed size cleans up, and what is to be done then. */
  none: string;
  instead: string;
  /** The listed sizes, the smallest first; `fitting` are the inputs of the function after `common`. */
  choices(standard: number, sizes: NumberGrid, fitting: readonly (NumberGrid | undefined)[]): ListedSize[] | Fault;
  /** Whether a finish cleans up a part that needs this size. */
  cleansUp(finish: number, needed: number, allowance: number): boolean;
}

/** Where the parts stand: one a row, place by place, or a block of places and axes for each. */
type PartRanges = { rows: PlanInput; axes: number } | { blocks: readonly PlanInput[] };

/** Inputs as the function takes them. */
export interface CutInputs {
  parts: PartRanges;
  /** What the sheet calls the parts, in their order. */
  names?: readonly string[];
  standard: PlanInput;
  sizes: PlanInput;
  allowance?: PlanInput;
  centring?: PlanInput;
  common?: PlanInput;
}

/** One part at one listed size. */
interface SizedPart {
  name: string;
  cleansUp: boolean;
  /** What is cut beyond the needed size, or negative what is lacking. */
  spare: number;
  says: string;
}

interface SizeRow extends ListedSize {
  cleansUpAll: boolean;
  /** The parts for which it is chosen. */
  chosenFor: string[];
  parts: SizedPart[];
  says: string;
}

export interface PartRow {
  name: string;
  needed: number | null;
  /** `null` when no listed size cleans the part up, or it cannot be planned. */
  size: number | null;
  finish: number | null;
  /** To what it is taken before the last work, where stock is left for that. */
  first: number | null;
  leastStock: number | null;
  mostStock: number | null;
  says: string;
}

interface CutPlan extends WrittenPlan {
  parts: PartRow[];
  /** Every listed size, the smallest first, with each part and why it does or does not clean up. */
  sizes: SizeRow[];
  /** What is left to cut where it is least, and whether an allowance is typed. */
  remarks: string[];
  /** Why there is no plan. */
  fault: string | null;
  notes: readonly string[];
}

/** To what each part is cut, why, and how that is written into the sheet. */
export function planCut(snapshot: WorkbookSnapshot, cut: Cut, inputs: CutInputs, fitting: readonly PlanInput[], place?: PlanTarget): CutPlan {
  const book = new WorkbookCells(snapshot);
  const { spec } = cut;
  const nothing: CutPlan = { ...NOTHING_WRITTEN, parts: [], sizes: [], remarks: [], fault: null, notes: spec.notes ?? [] };
  const lines = partLines(book, cut, inputs.parts);
  if (typeof lines === "string") return { ...nothing, fault: lines };
  const others = [inputs.standard, inputs.sizes, inputs.allowance ?? null, inputs.centring ?? null, axesOf(inputs.parts, lines), inputs.common ?? null];
  const made = broadcast(spec, [lines, ...[...others, ...fitting].map((given) => argumentOf(book, given))]);
  if (made instanceof Fault) return { ...nothing, fault: sentence(made) };
  if (!Array.isArray(made)) return nothing;
  const stock = allowanceIn(book, inputs);
  const parts = made.slice(1).map((row, at) => partRow(cut, row, inputs.names?.[at] ?? `${cut.part} ${at + 1}`, stock));
  const sizes = sizeRows(book, cut, inputs, fitting, lines, parts, stock);
  const plan = { ...nothing, parts, sizes, remarks: remarksOn(cut, parts, stock) };
  return place ? { ...plan, ...written(book, cut, inputs, fitting, place, lines, parts, made[0]!, stock) } : plan;
}

const axesOf = (parts: PartRanges, lines: Block): number => ("rows" in parts ? parts.axes : (lines[0]?.length ?? 1));

/** The readings, one part a row; or why they cannot be put so. */
function partLines(book: WorkbookCells, { part }: Cut, parts: PartRanges): Block | string {
  if ("rows" in parts) return blockOf(book, parts.rows);
  const lines = parts.blocks.map((block) => blockOf(book, block).flat());
  const odd = lines.findIndex((line) => line.length !== lines[0]!.length);
  if (odd < 0) return lines;
  const set = part === "bore" ? "every bore of a block" : `every ${part} of a shaft`;
  return `${part} ${odd + 1} has ${lines[odd]!.length} readings and ${part} 1 has ${lines[0]!.length}: ${set} is measured alike`;
}

/** What a finish cuts beyond the needed size. */
const spareOf = ({ grows }: Cut, finish: number, needed: number): number => decimal(grows ? finish - needed : needed - finish);

/** Every listed size against every part that can be judged. */
function sizeRows(
  book: WorkbookCells,
  cut: Cut,
  inputs: CutInputs,
  fitting: readonly PlanInput[],
  lines: Block,
  planned: readonly PartRow[],
  stock: number,
): SizeRow[] {
  const choices = cut.choices(
    argumentOf(book, inputs.standard) as number,
    gridOf(book, inputs.sizes)!,
    fitting.map((given) => gridOf(book, given)),
  );
  // The plan itself has been made from the same list, so there is no fault here.
  if (choices instanceof Fault) return [];
  const measured = planned.flatMap((part, at) =>
    part.needed === null ? [] : [{ name: part.name, needed: part.needed, need: needWords(book, cut, inputs, lines[at]!, stock) }],
  );
  return choices.map((choice) => {
    const parts = measured.map(({ name, needed, need }): SizedPart => {
      const spare = spareOf(cut, choice.finish, needed);
      const does = cut.cleansUp(choice.finish, needed, stock);
      return { name, cleansUp: does, spare, says: `${spareWords(cut, choice.finish, needed, spare, does)} (${need})` };
    });
    const chosenFor = planned.filter(({ size }) => size === choice.size).map(({ name }) => name);
    const row = { ...choice, cleansUpAll: parts.every((part) => part.cleansUp), chosenFor, parts };
    return { ...row, says: rowWords(cut, row, planned) };
  });
}

function spareWords({ grows }: Cut, finish: number, needed: number, spare: number, does: boolean): string {
  const [lacking, beyond] = grows ? ["short of", "above"] : ["above", "below"];
  if (!does)
    return `does not clean up: ${finish} is ${spare < 0 ? `${-spare} ${lacking} the ${needed} needed` : "exactly the size needed and leaves nothing to cut"}`;
  return `cleans up: ${finish} is ${spare > 0 ? `${spare} ${beyond} the ${needed}` : "exactly what is"} needed`;
}

/** Cells of a range as the function reads them; `undefined` for none. */
function gridOf(book: WorkbookCells, given: PlanInput): NumberGrid | undefined {
  const values = inputLengths(book, given);
  const block = blockOf(book, given);
  return values.every((value) => value === null) ? undefined : { rows: block.length, columns: block[0]!.length, values };
}

/** 0 where none is typed. */
const allowanceIn = (book: WorkbookCells, { allowance = null }: CutInputs): number => inputLengths(book, allowance)[0] ?? 0;

/** Where the needed size comes from. */
function needWords(book: WorkbookCells, { spec, grows, work }: Cut, { standard, centring = null }: CutInputs, readings: Block[number], stock: number): string {
  const summary = broadcast(boreSummary, [[readings], 1]) as (number | string)[][];
  const [smallest, largest] = [summary[1]![0] as number, summary[1]![1] as number];
  const base = argumentOf(book, standard) as number;
  const given = String(argumentOf(book, centring) ?? "").trim() || String(spec.params.centring!.fallback);
  const isTrue = given.toLowerCase() === "true";
  const wear = decimal(grows ? largest - base : base - smallest);
  const worn = grows ? `largest reading ${largest}` : `smallest reading ${smallest}`;
  const oneSided = grows
    ? `standard ${base} and twice the wear of ${wear}, which may all be on one side`
    : `standard ${base} less twice the wear of ${wear}, which may all be on one side`;
  return `${isTrue && wear > 0 ? oneSided : worn}${stock > 0 ? `, ${stock} to leave for ${work}` : ""}`;
}

function rowWords({ part: kind }: Cut, { parts, chosenFor, cleansUpAll }: Omit<SizeRow, "says">, planned: readonly PartRow[]): string {
  if (parts.length === 0) return `no ${kind} is measured yet`;
  const short = parts.filter((part) => !part.cleansUp).map(({ name, spare }) => `${name} (${spare < 0 ? `${-spare} short` : "nothing to cut"})`);
  const chosen = chosenFor.length === 0 ? "" : chosenFor.length === planned.length ? ", chosen" : `, chosen for ${chosenFor.join(", ")}`;
  if (cleansUpAll) return `cleans up every ${kind} measured${chosen}`;
  return short.length === parts.length ? `cleans up no ${kind}: ${short.join(", ")}` : `does not clean up ${short.join(", ")}${chosen}`;
}

const numberOr = (cell: PlannedContent | undefined): number | null => (typeof cell === "number" ? cell : null);

function partRow(cut: Cut, [, needed, size, finish, least, most]: readonly (number | string)[], name: string, stock: number): PartRow {
  const row = {
    name,
    needed: numberOr(needed),
    size: numberOr(size),
    finish: numberOr(finish),
    first: cut.before !== undefined && stock > 0 && typeof finish === "number" ? decimal(finish - stock) : null,
    leastStock: numberOr(least),
    mostStock: numberOr(most),
  };
  const fault = [size, needed].map(String).find((shown) => shown.startsWith(CHECK_PREFIX));
  return { ...row, says: says(cut, row, fault?.slice(CHECK_PREFIX.length), size === cut.none) };
}

function says(cut: Cut, { size, finish, first, leastStock, mostStock, needed }: Omit<PartRow, "says">, fault: string | undefined, isNone: boolean): string {
  if (isNone) return `needs ${needed}, which no listed ${cut.size} reaches: ${cut.instead}`;
  if (size === null) return fault ?? "a reading is still blank";
  const stock = leastStock === mostStock ? `${leastStock}` : `${leastStock} to ${mostStock}`;
  return `${first === null ? "" : `${cut.before} to ${first}, `}${cut.verb} to ${finish}, ${cut.size} ${size}: takes ${stock} off the diameter`;
}

/** Kept on the original centre line the worn side has less to lose than the diameter says. */
function remarksOn(cut: Cut, parts: readonly PartRow[], allowance: number): string[] {
  const left = parts.flatMap(({ name, needed, finish }) =>
    needed === null || finish === null ? [] : [{ name, stock: decimal(spareOf(cut, finish, needed) + allowance) }],
  );
  if (left.length === 0) return [];
  const { name, stock } = left.reduce((least, one) => (one.stock < least.stock ? one : least));
  const of = allowance > 0 ? `, ${allowance} of it for ${cut.work}` : "";
  const least = `Least left to cut where a ${cut.part} is worn most: ${stock} on the diameter, ${name}${of}.`;
  return [least, ...(allowance > 0 ? [] : [`Careful: ${noAllowance(cut)}.`])];
}
