import { broadcast as applyTo } from "../core/broadcast.ts";
import { type Block, type Cell, isBlank } from "../core/cell.ts";
import { indexOfRole } from "../core/define.ts";
import { Fault } from "../core/fault.ts";
import { faultBody } from "../core/sentences.ts";
import { CannotTell, evaluateNode } from "../formula/evaluate.ts";
import { type OwnCall, wordsOf } from "../formula/own-calls.ts";
import { argumentArea, type SpillSources } from "../formula/precedents.ts";
import { type CellAddress, type CellArea, placeName } from "../workbook/address.ts";
import { NO_INPUTS, readVerdict, type VerdictInputs } from "./judge.ts";

/** One thing to judge, before it is known whether another formula judges the same. */
export interface Candidate {
  /** The same for the same reading and limits, whichever function or table they come from. */
  key: string;
  /** Where the reading stands, or its verdict where it is worked out inside the formula. */
  cell: CellAddress;
  given: VerdictInputs;
  /** The reading was typed into the cell, not worked out. */
  isTyped: boolean;
  /** Where limits, uncertainty and near stand, as far as they stand in cells. */
  beside: Partial<Record<keyof VerdictInputs, CellAddress>>;
  /** Readings judged by the same limit cells, or of one characteristic, are alike. */
  group?: string | undefined;
  /** Where a table says so: the unit, and what the reading is of. */
  unit?: string | undefined;
  label?: string;
  /** What is read, where a table or a layout says so. */
  characteristic?: string | undefined;
  /** A formula of the sheet judges it, and shows its own verdict. */
  hasVerdict?: boolean;
  /** The gauge that it was read with, as a table names it. */
  gauge?: string;
  /** The readings that it is worked out from, where no formula of the sheet does so. */
  from?: readonly CellAddress[];
  /** The formula as a whole is at fault, or cannot be looked into. */
  whole?: { fault: string } | { unknown: string; said: CellAddress };
}

export const judges = (call: OwnCall): boolean => call.spec.role === "judges";

interface Operand {
  block: Block;
  area: CellArea | undefined;
}

/** Everything that one judging call judges, element by element. */
export function candidatesOf(call: OwnCall, origins: SpillSources): Candidate[] {
  const { context, args, spec, at } = call;
  const operands: Operand[] = [];
  for (const [i] of spec.inputs.entries()) {
    const node = args[i];
    const value = node ? evaluateNode(node, context) : undefined;
    if (value instanceof CannotTell) return untold(call, value.why);
    operands.push({ block: Array.isArray(value) ? value : [[value]], area: argumentArea(node, context) });
  }
  const fault = wholeFault(call, operands);
  if (fault) return [{ key: placeName(at), cell: at, given: NO_INPUTS, isTyped: false, beside: {}, whole: { fault } }];
  const rows = Math.max(...operands.map(({ block }) => block.length));
  const columns = Math.max(...operands.map(({ block }) => block[0]!.length));
  const found: Candidate[] = [];
  for (let r = 0; r < rows; r++) for (let c = 0; c < columns; c++) found.push(elementOf(call, operands, origins, r, c));
  return found;
}

/** Shapes that do not fit and arguments too few or too many are faults of the whole call. */
function wholeFault({ spec, args, context }: OwnCall, operands: readonly Operand[]): string | undefined {
  if (args.length === spec.inputs.length && operands.every(({ block }) => block.length === 1 && block[0]!.length === 1)) return undefined;
  const outcome = applyTo(
    spec,
    args.map((node, i) => (operands[i] ? operands[i].block : node ? (evaluateNode(node, context) as Cell) : null)),
  );
  const isWhole = outcome instanceof Fault && WHOLE.has(outcome.code);
  return isWhole ? faultBody(outcome) : undefined;
}

const WHOLE = new Set<Fault["code"]>(["missing", "surplus", "empty", "shape"]);

function elementOf(call: OwnCall, operands: readonly Operand[], origins: SpillSources, row: number, column: number): Candidate {
  const { at, spec, isWhole } = call;
  const given = { ...NO_INPUTS };
  const beside: Candidate["beside"] = {};
  for (const [i, { param }] of spec.inputs.entries()) {
    const part = param.role as keyof VerdictInputs;
    const { block, area } = operands[i]!;
    given[part] = pick(block, row, column);
    if (area) beside[part] = cellIn(area, row, column);
  }
  const reading = beside.value;
  const limits = [beside.lower, beside.upper].map((cell) => (cell ? placeName(cell) : ""));
  const verdict = isWhole ? { ...at, row: at.row + row, column: at.column + column } : at;
  return {
    key: `${reading ? placeName(reading) : workedOut(call, row, column)}|${limitKey(given)}`,
    cell: reading ?? verdict,
    given,
    isTyped: reading !== undefined && !origins.isResult(reading),
    beside,
    group: reading && limits.some(Boolean) ? limits.join("|") : undefined,
    hasVerdict: true,
  };
}

/** Readings are one when they stand in one cell, or are worked out in the same words from the same cells. */
function workedOut(call: OwnCall, row: number, column: number): string {
  const { at, refers, context, spec } = call;
  const value = indexOfRole(spec, "value");
  // The same numbers typed into two formulas are two parts that happen to measure the same.
  const place = refers[value] ? context.sheet : placeName(at);
  return `${place}|${wordsOf(call, value)}|${row},${column}`;
}

export const limitKey = ({ lower, upper }: VerdictInputs): string => `${plainKey(lower)}|${plainKey(upper)}`;

const plainKey = (cell: Cell): string => (isBlank(cell) ? "" : typeof cell === "object" ? JSON.stringify(cell) : String(cell));

/** A call that cannot be looked into judges at least its own cell, and those below it that its words have spilled into. */
function untold(call: OwnCall, why: string): Candidate[] {
  const { at, args, context, isWhole, spec } = call;
  const [value, lower, upper] = (["value", "lower", "upper"] as const).map((part) => indexOfRole(spec, part)) as [number, number, number];
  const area = argumentArea(args[value], context);
  const said = (row: number): CellAddress => ({ ...at, row: at.row + row });
  let rows = 1;
  while (isWhole && context.book.formula(said(rows)) === null && saysVerdict(context.book.value(said(rows)))) rows++;
  return Array.from({ length: rows }, (_, row) => {
    const reading = area && area.columns === 1 && area.rows === rows ? cellIn(area, row, 0) : undefined;
    return {
      key: `${reading ? placeName(reading) : workedOut(call, row, 0)}|untold|${wordsOf(call, lower)}|${wordsOf(call, upper)}`,
      cell: reading ?? said(row),
      given: { ...NO_INPUTS, value: reading ? context.book.value(reading) : null },
      isTyped: false,
      beside: {},
      whole: { unknown: why, said: said(row) },
    };
  });
}

const saysVerdict = (cell: Cell): boolean => typeof cell === "string" && typeof readVerdict(cell) === "object";

function pick(block: Block, row: number, column: number): Cell {
  const line = block.length === 1 ? block[0]! : block[row]!;
  return line.length === 1 ? line[0] : line[column];
}

const cellIn = (area: CellArea, row: number, column: number): CellAddress => ({
  sheet: area.sheet,
  row: area.row + (area.rows === 1 ? 0 : row),
  column: area.column + (area.columns === 1 ? 0 : column),
});
