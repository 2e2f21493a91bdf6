import { type Cell, isBlank, isCellError, isErrorCode } from "./cell.ts";
import { HALF_STEP, isAbove, isBelow } from "./decimal.ts";
import { Fault } from "./fault.ts";
import { CHECK_PREFIX } from "./sentences.ts";

/**
 * Inputs of a function, declared once: what it is, in which unit kind, its bounds and default. The
 * same declaration coerces cells, words the faults and writes the help.
 */
export type Quantity =
  | "length"
  | "volume"
  | "area"
  | "ratio"
  | "pressure"
  | "angle"
  | "temperature"
  | "force"
  | "mass"
  | "speed"
  | "number"
  | "count"
  | "text"
  | "choice"
  | "truth";

/**
 * How a param meets a range: `element` broadcasts cell by cell; `bore` is one bore's block of
 * readings (or one bore a row when `axes` is given); `list` and `grid` take the whole range as one
 * input, flattened or as it stands; `cells` does so too, but a bad cell is left for compute to show in
 * its own place; `axes` is the one setting that reshapes `bore`.
 */
export type BroadcastKind = "element" | "bore" | "list" | "grid" | "cells" | "axes";

/**
 * What an input is to those who look through a sheet.
 *
 * - `measured`: a reading, or what readings came to. It can wear and has the uncertainty of its gauge.
 *   What quantities are unless they say otherwise.
 * - `chosen`: a standard size, a limit, a wish or a setting of the test: typed by somebody, exact, and
 *   nothing that Compare compares.
 * - `option`: how to calculate. What words, counts, switches and axes are.
 * - `value`, `lower`, `upper`, `uncertainty`, `near`, `rule`: the parts of a judgement. Check judges what a
 *   function that judges is given so, and points out a lower or upper limit that is typed into a formula.
 */
export type ParamRole = "measured" | "chosen" | "option" | JudgedPart;
export type JudgedPart = "value" | "lower" | "upper" | "uncertainty" | "near" | "rule";

/** The readings of one bore: rows are heights from the top, columns are axes (thrust, then pin). */
export interface Bore {
  readonly heights: number;
  readonly axes: number;
  /** Row by row: `values[height * axes + axis]`. */
  readonly values: readonly number[];
}

/** A whole range as numbers, `null` where a cell is blank. */
export interface NumberGrid {
  readonly rows: number;
  readonly columns: number;
  readonly values: readonly (number | null)[];
}

/** A whole range of words, `null` where a cell is blank; a number stands as its text. */
export interface LabelGrid {
  readonly rows: number;
  readonly columns: number;
  readonly values: readonly (string | null)[];
}

/** A whole range: a number, `null` where a cell is blank, or the fault of that one cell. */
export interface Cells {
  readonly rows: number;
  readonly columns: number;
  readonly values: readonly (number | null | Fault)[];
}

export const BLANK = Symbol("blank");
export type Taken<T> = T | typeof BLANK | Fault;

interface Bounds {
  low?: number;
  lowOpen?: boolean;
  high?: number;
  highOpen?: boolean;
  choices?: readonly string[];
}

export class Param<T> {
  /** Carries the type for inference; never holds a value. */
  declare readonly type: T;
  /** Zero is impossible for this input, so a host's 0 stands for a blank cell. */
  readonly zeroIsBlank: boolean;
  readonly role: ParamRole;

  constructor(
    readonly quantity: Quantity,
    readonly help: string,
    readonly broadcastKind: BroadcastKind,
    readonly bounds: Bounds = {},
    readonly isOptional = false,
    readonly fallback: number | string | boolean | undefined = undefined,
    role: ParamRole | undefined = undefined,
  ) {
    const { low, lowOpen } = bounds;
    this.zeroIsBlank = low !== undefined && (low > 0 || (low === 0 && lowOpen === true));
    this.role = role ?? (this.takesAnyNumber ? "measured" : "option");
  }

  #with(bounds: Bounds): Param<T> {
    return this.#bounded({ ...this.bounds, ...bounds });
  }

  #bounded(bounds: Bounds): Param<T> {
    return new Param<T>(this.quantity, this.help, this.broadcastKind, bounds, this.isOptional, this.fallback, this.role);
  }

  /** Strictly above `low`. Above 0 also says that 0 means "not filled in yet". */
  above(low: number): Param<T> {
    return this.#with({ low, lowOpen: true });
  }

  atLeast(low: number): Param<T> {
    return this.#with({ low, lowOpen: false });
  }

  below(high: number): Param<T> {
    return this.#with({ high, highOpen: true });
  }

  atMost(high: number): Param<T> {
    return this.#with({ high, highOpen: false });
  }

  /** Any number, zero and negatives included. */
  unbounded(): Param<T> {
    return this.#bounded({});
  }

  default(value: number | string | boolean): Param<T> {
    return new Param<T>(this.quantity, this.help, this.broadcastKind, this.bounds, true, value, this.role);
  }

  optional(): Param<T | undefined> {
    return new Param<T | undefined>(this.quantity, this.help, this.broadcastKind, this.bounds, true, undefined, this.role);
  }

  /** Typed by somebody and not measured: see `ParamRole`. */
  chosen(): Param<T> {
    return this.as("chosen");
  }

  as(role: ParamRole): Param<T> {
    return new Param<T>(this.quantity, this.help, this.broadcastKind, this.bounds, this.isOptional, this.fallback, role);
  }

  /** Any number inside the bounds will do: nothing to round, look up or read as text. */
  get takesAnyNumber(): boolean {
    return !["count", "text", "choice", "truth"].includes(this.quantity);
  }

  /** A 0 that a host makes of a blank cell is taken here for what somebody typed, and something else comes out. */
  get zeroPasses(): boolean {
    if (this.quantity === "truth") return this.fallback !== false;
    if (this.quantity === "text" || this.quantity === "choice" || this.zeroIsBlank || this.fallback === 0) return false;
    const { low = 0, high = 0, highOpen } = this.bounds;
    return low <= 0 && (highOpen ? high > 0 : high >= 0);
  }

  /** What is wanted, as faults and help say it: `a length above 0`. */
  get want(): string {
    if (this.bounds.choices) return `one of ${this.bounds.choices.join(", ")}`;
    const noun = NOUNS[this.quantity];
    const { low, lowOpen, high, highOpen } = this.bounds;
    if (low !== undefined && high !== undefined && !lowOpen && !highOpen) return `${noun} from ${low} to ${high}`;
    const above = low === undefined ? "" : lowOpen ? ` above ${low}` : ` of at least ${low}`;
    const below = high === undefined ? "" : highOpen ? ` below ${high}` : `${above ? "" : " of"} at most ${high}`;
    return `${noun}${above}${above && below && " and"}${below}`;
  }

  /** One cell of this kind: the value, `BLANK`, or a fault that names `name`. */
  take(cell: Cell, name: string): Taken<number | string | boolean> {
    if (typeof cell === "number") return this.#number(cell, name);
    if (isBlank(cell)) return BLANK;
    if (isCellError(cell)) return new Fault("cell-error", name, cell);
    if (typeof cell === "boolean") return this.#truth(cell, name);
    const text = String(cell);
    if (isErrorCode(text)) return new Fault("cell-error", name, { error: text });
    if (text.startsWith(CHECK_PREFIX)) return new Fault("upstream", name, text.slice(CHECK_PREFIX.length));
    if (this.quantity === "text") return text;
    if (this.quantity === "choice") return this.#choice(text, name);
    return textFault(text, name, this.want);
  }

  #number(value: number, name: string): Taken<number | string | boolean> {
    if (!Number.isFinite(value)) return new Fault("not-finite", name, value, this.want);
    if (this.quantity === "text") return value === 0 ? BLANK : String(value);
    if (this.quantity === "truth") return value === 0 || value === 1 ? value === 1 : new Fault("not-a-choice", name, value, this.want);
    // A host that hands a blank cell over as 0 must not make an optional choice a fault.
    if (this.quantity === "choice") return value === 0 ? BLANK : this.#choice(String(value), name);
    // 0.1 + 0.2 − 0.3 is no length either: what is nothing as a decimal is nothing here.
    if (this.zeroIsBlank && value < HALF_STEP && value > -HALF_STEP) return BLANK;
    const { low, lowOpen, high, highOpen } = this.bounds;
    if (low !== undefined && value <= low && (lowOpen || isBelow(value, low))) return new Fault("too-small", name, value, this.want);
    // Above 0 is settled by the lines before this one, which keeps the usual length cheap.
    if (lowOpen && low && !isAbove(value, low)) return new Fault("too-small", name, value, this.want);
    if (high !== undefined && (highOpen ? !isBelow(value, high) : isAbove(value, high))) return new Fault("too-large", name, value, this.want);
    if (this.quantity === "count" && !Number.isInteger(value)) return new Fault("not-whole", name, value, this.want);
    return value;
  }

  /** A sheet turns the typed word true into TRUE, also where it is one of the choices. */
  #truth(cell: boolean, name: string): Taken<string | boolean> {
    if (this.quantity === "truth") return cell;
    return this.bounds.choices?.find((choice) => choice.toLowerCase() === String(cell)) ?? new Fault("truth", name, cell, this.want);
  }

  #choice(text: string, name: string): Taken<string> {
    const wanted = text.trim().toLowerCase();
    return this.bounds.choices?.find((choice) => choice.toLowerCase() === wanted) ?? new Fault("not-a-choice", name, text, this.want);
  }
}

const NOUNS: Record<Quantity, string> = {
  length: "a length",
  volume: "a volume",
  area: "an area",
  ratio: "a ratio",
  pressure: "a pressure",
  angle: "an angle in degrees",
  temperature: "a temperature",
  force: "a force",
  mass: "a mass",
  speed: "a speed",
  number: "a number",
  count: "a whole number",
  text: "text",
  choice: "a choice",
  truth: "TRUE or FALSE",
};

const LOOKS_NUMERIC = /^[\s'’]*[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?\s*$/i;
const LOOKS_COMMA = /^\s*[+-]?\d*,\d+\s*$/;

/** Text where a number belongs: says which of the three usual slips it is; guesses nothing. */
export function textFault(text: string, name: string, want: string): Fault {
  if (LOOKS_NUMERIC.test(text)) return new Fault("number-as-text", name, text, want);
  if (LOOKS_COMMA.test(text)) return new Fault("decimal-comma", name, text, want);
  return new Fault("text", name, text, want);
}
