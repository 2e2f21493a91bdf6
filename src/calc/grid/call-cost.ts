import { NAMESPACE } from "../../core/define.ts";

/** How the grid hands values over: one, none, or a block of them column by column. */
export type GridValue = { value?: unknown };
export type CallInput = GridValue | undefined | (GridValue | undefined)[][];

/** How a function of the grid declares one argument. */
export interface GridParam {
  type: string[];
  acceptMatrix?: boolean;
  repeating?: boolean;
}

/** What a function of the grid declares; one of ours also says what it costs. */
export interface GridDeclaration {
  args: GridParam[];
  category?: string;
  steps?(cells: readonly number[]): number;
}

/** What a call would take, told from its arguments before it begins. */
export interface CallCost {
  /** Of the block that it comes to. */
  cells: number;
  /** Cells that it looks at or fills. */
  work: number;
  /** Characters of its text, where that can be more than what goes in. */
  text: number;
}

/** Functions that declare blocks and go through all of them cell by cell. */
const THROUGH_ALL = new Set(["IF", "IFERROR", "IFNA", "IFS"]);

/** Whether a function is applied once for each cell of a block at this place. */
export function broadcastsOver(name: string, args: readonly GridParam[], index: number): boolean {
  if (THROUGH_ALL.has(name)) return true;
  const repeating = args.filter((arg) => arg.repeating).length;
  const past = index - args.length;
  const arg = past < 0 || repeating === 0 ? args[index] : args[args.length - repeating + (past % repeating)];
  // Ours take everything as it comes; a range as a whole only where they say so.
  return arg !== undefined && (name.startsWith(`${NAMESPACE}.`) ? !arg.type.includes("RANGE") : !arg.acceptMatrix);
}

/** Going through a block cell by cell costs more than what it takes to read a cell of the sheet, the unit of work. */
const CELL_BY_CELL = 2;

/** `looked` tells how much work it is to look through a range as a whole. */
export function callCost(
  name: string,
  args: readonly CallInput[],
  lifted: readonly boolean[],
  steps?: GridDeclaration["steps"],
  looked: (range: CallInput) => number = sizeOf,
): CallCost {
  let columns = 1;
  let rows = 1;
  let over = 0;
  let whole = 1;
  for (let i = 0; i < args.length; i++) {
    const arg = args[i];
    if (!Array.isArray(arg)) continue;
    if (lifted[i]) {
      columns = Math.max(columns, widthOf(arg));
      rows = Math.max(rows, heightOf(arg));
      over += sizeOf(arg);
    } else whole += looked(arg);
  }
  const times = columns * rows;
  const own = CELLS[name]?.(args) ?? 0;
  return {
    cells: Math.max(times, own),
    work: CELL_BY_CELL * over + (times > 1 ? CELL_BY_CELL : 1) * times * (own + whole + (steps?.(args.map(sizeOf)) ?? STEPS[name]?.(args) ?? 0)),
    text: TEXT[name]?.(args) ?? 0,
  };
}

const widthOf = (arg: CallInput): number => (Array.isArray(arg) ? arg.length : 1);
const heightOf = (arg: CallInput): number => (Array.isArray(arg) ? (arg[0]?.length ?? 0) : 1);
export const sizeOf = (arg: CallInput): number => widthOf(arg) * heightOf(arg);

/** The largest number that stands in an argument, and never less than nothing. */
function numberIn(arg: CallInput, otherwise = 1): number {
  if (arg === undefined) return otherwise;
  let most = 0;
  for (const value of valuesIn(arg)) {
    const number = typeof value === "boolean" ? Number(value) : typeof value === "string" ? Number.parseFloat(value) : value;
    if (typeof number === "number" && number > most) most = number;
  }
  return most;
}

/** The values of an argument, one or many. */
export function* valuesIn(arg: CallInput): Generator<unknown> {
  if (!Array.isArray(arg)) yield arg?.value;
  else for (const column of arg) for (const cell of column) yield cell?.value;
}

const textIn = (arg: CallInput): string => {
  const [first] = valuesIn(arg);
  return first === null || first === undefined ? "" : String(first);
};

const sum = (args: readonly CallInput[], of: (arg: CallInput) => number): number => args.reduce((total: number, arg) => total + of(arg), 0);
const most = (args: readonly CallInput[], of: (arg: CallInput) => number): number => args.reduce((highest: number, arg) => Math.max(highest, of(arg)), 0);
/** Characters in all texts, at least: numbers count as one. */
const lengthsIn = (arg: CallInput): number => {
  let signs = 0;
  for (const value of valuesIn(arg)) signs += typeof value === "string" ? value.length : 1;
  return signs;
};

/** Characters of the longest text. */
const longestIn = (arg: CallInput): number => {
  let longest = 0;
  for (const value of valuesIn(arg)) longest = Math.max(longest, typeof value === "string" ? value.length : 1);
  return longest;
};

type Measure = (args: readonly CallInput[]) => number;

const wrapped: Measure = ([range, count]) => {
  const line = numberIn(count);
  return Math.ceil(sizeOf(range) / Math.max(1, line)) * line;
};
const rectangle: Measure = ([rows, columns]) => numberIn(rows) * numberIn(columns);

/** Blocks that are larger than what goes in. */
const CELLS: Readonly<Record<string, Measure>> = {
  SEQUENCE: rectangle,
  RANDARRAY: rectangle,
  MUNIT: ([size]) => numberIn(size) ** 2,
  EXPAND: ([array, rows, columns]) => numberIn(rows, heightOf(array)) * numberIn(columns, widthOf(array)),
  WRAPROWS: wrapped,
  WRAPCOLS: wrapped,
  HSTACK: (args) => most(args, heightOf) * sum(args, widthOf),
  VSTACK: (args) => most(args, widthOf) * sum(args, heightOf),
  CHOOSECOLS: ([array, ...columns]) => heightOf(array) * sum(columns, sizeOf),
  CHOOSEROWS: ([array, ...rows]) => widthOf(array) * sum(rows, sizeOf),
  MMULT: ([left, right]) => heightOf(left) * widthOf(right),
  TEXTSPLIT: ([text, across, down]) => pieces(text, across) * pieces(text, down),
  "POLYFIT.COEFFS": ([y, , order]) => sizeOf(y) * (1 + numberIn(order)),
  "POLYFIT.FORECAST": ([x, y, , order]) => sizeOf(x) + sizeOf(y) * (1 + numberIn(order)),
  "SHEET.FILL": ([, rows, columns]) => numberIn(rows) * numberIn(columns),
};

function pieces(text: CallInput, delimiters: CallInput): number {
  let found = 1;
  for (const delimiter of valuesIn(delimiters)) if (delimiter !== undefined && delimiter !== "") found += textIn(text).split(String(delimiter)).length - 1;
  return found;
}

const daysBetween: Measure = ([from, to, third, fourth]) => Math.abs(numberIn(from) - numberIn(to)) + 10 * (sizeOf(third) + sizeOf(fourth));
const daysFrom: Measure = ([, days, third, fourth]) => Math.max(numberIn(days), numberIn(negated(days))) + 10 * (sizeOf(third) + sizeOf(fourth));

const negated = (arg: CallInput): CallInput => ({ value: -Number((Array.isArray(arg) ? arg[0]?.[0] : arg)?.value ?? 0) });

/** Steps of one call that are more than the cells that it looks at. */
const STEPS: Readonly<Record<string, Measure>> = {
  MMULT: ([left, right]) => sizeOf(left) * widthOf(right),
  NETWORKDAYS: daysBetween,
  "NETWORKDAYS.INTL": daysBetween,
  WORKDAY: daysFrom,
  "WORKDAY.INTL": daysFrom,
};

/** Texts that are longer than what goes in; others are looked at when they are there. */
const TEXT: Readonly<Record<string, Measure>> = {
  JOIN: ([delimiter, ...texts]) => sum(texts, lengthsIn) + sum(texts, sizeOf) * textIn(delimiter).length,
  TEXTJOIN: ([delimiter, , ...texts]) => sum(texts, lengthsIn) + sum(texts, sizeOf) * textIn(delimiter).length,
  CONCATENATE: (args) => sum(args, longestIn),
  ARRAYTOTEXT: (args) => sum(args, lengthsIn),
  SUBSTITUTE: ([text, old, fresh]) => {
    const [whole, part, put] = [textIn(text), textIn(old), textIn(fresh)];
    return part === "" ? whole.length : whole.length + (whole.split(part).length - 1) * Math.max(0, put.length - part.length);
  },
};
