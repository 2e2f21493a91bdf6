import { isErrorCode } from "../../core/cell.ts";
import { textValue } from "../../core/number-text.ts";
import type { GridParam } from "./call-cost.ts";

/** One value as the grid hands it over. */
export type GridCell = { value?: unknown; format?: string };
/** One argument: a value, nothing, or a block of values column by column. */
export type Given = GridCell | undefined | (GridCell | undefined)[][];
/** What a function comes to. */
export type Outcome = GridCell | number | string | boolean | GridCell[][];

/** What a function finds around it while it runs. */
export interface CallContext {
  locale: unknown;
}

interface NamedParam extends GridParam {
  name: string;
  acceptErrors?: boolean;
}

export interface OwnFunction {
  description: string;
  args: NamedParam[];
  isExported?: boolean;
  compute: (this: CallContext, ...args: Given[]) => unknown;
}

/** The functions that the grid knows. */
export interface FunctionRegistry {
  content: Record<string, OwnFunction>;
  replace(name: string, own: OwnFunction): void;
}

/** Puts something round a function of the grid, where it has one of that name: `of` gets the inputs and the grid's own answer to them, or to others. */
export function wrapFunction(
  registry: FunctionRegistry,
  name: string,
  of: (args: Given[], grid: (others?: Given[]) => unknown, around: CallContext) => unknown,
): void {
  const own = registry.content[name];
  if (!own) return;
  registry.replace(name, {
    ...own,
    compute(...args) {
      return of(args, (others = args) => own.compute.apply(this, others), this);
    },
  });
}

/** The parts of the grid that its functions need; its whole module or browser global fits. */
export interface GridParts {
  EvaluationError: new (message?: string, value?: string) => object;
  registries: { functionRegistry: object };
  helpers: {
    /** A parameter as the grid writes them: `value (number, range, repeating)`. */
    arg(definition: string, description?: string): unknown;
    isNumber(text: string, locale: never): boolean;
    isDateTime(text: string, locale: never): boolean;
    toNumber(given: never, locale: never): number;
    formatValue(value: never, how: never): string;
  };
}

/** The functions of the grid as they are called, those of ours among them. */
export const calledIn = (grid: GridParts): Record<string, (this: unknown, ...args: unknown[]) => GridCell> =>
  (grid.registries.functionRegistry as { mapping: ReturnType<typeof calledIn> } & object).mapping;

/** A fault that a function gives back or throws; the sentence stands beside the code. */
export class SheetFault {
  constructor(
    readonly value: string,
    readonly message: string,
  ) {}
}

const ofOurs = new Set<string>();
/** Notes that an error with this sentence is one of this calculation, not of the workbook: what a file keeps for such a cell may be right. */
export function notHere(sentence: string): string {
  ofOurs.add(sentence);
  return sentence;
}
export const isNotHere = (sentence: string): boolean => ofOurs.has(sentence);

export const isError = (value: unknown): boolean => typeof value === "string" && isErrorCode(value);

/** Steps that functions of ours have counted themselves since they were last read, because they look at less than they are given. */
let counted = 0;
export function countSteps(steps: number): void {
  counted += steps;
}
export function countedSteps(): number {
  const steps = counted;
  counted = 0;
  return steps;
}

/** Functions that count their own steps; the cells that they are given do not count. */
export const COUNTING = new Set<string>();

const askedOnce = new WeakSet<object>();
/**
 * Whether a range has been searched before, and is worth an index. Ranges that grow from row to row are searched once each:
 * their indexes would take more time and room than all searches.
 */
export function isAskedAgain(range: object): boolean {
  if (askedOnce.has(range)) return true;
  askedOnce.add(range);
  return false;
}

export const gridBlock = (given: Given): (GridCell | undefined)[][] => (Array.isArray(given) ? given : [[given]]);
/** The cells of a range. An error in its place, as where what a formula referred to is gone, is the result; a cell that holds one is a range like others. */
export function rangeOf(given: Given): (GridCell | undefined)[][] {
  if (!Array.isArray(given) && isError(given?.value)) throw given;
  return gridBlock(given);
}
export const singleOf = (given: Given): unknown => (Array.isArray(given) ? given[0]?.[0]?.value : given?.value);

/** Every value of an argument, row by row. */
export function* givenCells(given: Given): Generator<GridCell | undefined> {
  if (!Array.isArray(given)) yield given;
  else for (let row = 0; row < (given[0]?.length ?? 0); row++) for (const column of given) yield column[row];
}

/** 1 March 1900: from here on the grid's days are those of office programs. */
export const MARCH_1900 = 61;
/** A date, maybe with a time; not a time alone. */
const DATE = /\d\s*[-/.]\s*\d|[a-z]{3}/i;
/** A date whose first number is no month, or that names its month. */
const OTHER_DATE = /^(?:1[3-9]|2\d|3[01])[-/.]\d{1,2}(?:[-/.]\d{2,4})?\b|^(?=.*\d).*\b(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)/i;

/** Reads values as the grid does where a number or a text is wanted. */
export class Reader {
  constructor(private readonly helpers: GridParts["helpers"]) {}

  /** A number, a text that reads as one, a truth value or a blank; anything else is a fault. */
  number(given: Given, { locale }: CallContext, otherwise = 0): number {
    const value = singleOf(given);
    if (typeof value === "number") return value;
    if (value === null || value === undefined) return given === undefined ? otherwise : 0;
    if (isError(value)) throw given;
    if (typeof value === "boolean") return Number(value);
    const text = String(value);
    const read = this.inText(text, locale);
    if (read === undefined) throw new SheetFault("#VALUE!", this.unread(text, locale));
    return read;
  }

  /** The number, date or time that a text reads as; no date with blanks around it. */
  inText(text: string, locale: unknown): number | undefined {
    const { isNumber, isDateTime, toNumber } = this.helpers;
    if (text.trim() === "") return undefined;
    if (isNumber(text, locale as never)) return toNumber(text as never, locale as never);
    if (text !== text.trim() || !isDateTime(text, locale as never)) return undefined;
    const day = toNumber(text as never, locale as never);
    // To the grid the days before 1 March 1900 are one further on than to office programs.
    return DATE.test(text) && day < MARCH_1900 ? day - 1 : day;
  }

  /** Why a text counts as no number: for dates that other programs or countries read, that it is not read here. */
  unread(text: string, locale: unknown): string {
    if (text.trim() === "") return "A number is wanted where there is empty text.";
    const said = `A number is wanted where there is the text ${JSON.stringify(text)}`;
    const date = text.trim();
    if (date === text ? !OTHER_DATE.test(date) : !this.helpers.isDateTime(date, locale as never)) return `${said}.`;
    return notHere(`${said}: a date in text is read as month, day and year in numbers, with no blanks around it.`);
  }

  text(given: Given): string {
    const value = singleOf(given);
    if (isError(value)) throw given;
    if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
    return value === null || value === undefined ? "" : String(typeof value === "number" ? textValue(value) : value);
  }

  flag(given: Given, around: CallContext, otherwise: boolean): boolean {
    const value = singleOf(given);
    if (given === undefined) return otherwise;
    if (typeof value === "string" && !isError(value)) {
      if (/^(?:true|false)$/i.test(value)) return /^t/i.test(value);
      throw new SheetFault("#VALUE!", `A truth value is wanted where there is the text ${JSON.stringify(value)}.`);
    }
    return this.number(given, around) !== 0;
  }

  /** The numbers of ranges, with text, blanks and truth values passed over; an error among them is the result. Single values are read. */
  numbers(args: readonly Given[], around: CallContext): number[] {
    const found: number[] = [];
    for (const given of args) {
      if (!Array.isArray(given)) found.push(this.number(given, around));
      else
        for (const cell of givenCells(given)) {
          if (typeof cell?.value === "number") found.push(cell.value);
          else if (isError(cell?.value)) throw cell;
        }
    }
    return found;
  }
}

/** Declares a function to the grid. */
export const declared = (
  { arg }: GridParts["helpers"],
  description: string,
  args: readonly string[],
  compute: (this: CallContext, ...args: Given[]) => Outcome,
): OwnFunction => ({ description, args: args.map((one) => arg(one, one.replace(/ \(.*$/, "").replaceAll("_", " ")) as NamedParam), isExported: true, compute });
