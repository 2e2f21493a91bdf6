/** How a value is known: read in its source, from memory, worked out apart from this project, or a rule of the trade that has no single source. */
export type Seen = "read" | "from memory" | "computed" | "common practice";

/** A value from outside the project: what a formula must give, how closely, and who says so. */
export interface Check {
  /** Name of the function without the namespace; the formula calls it. */
  function: string;
  /** As typed into a cell. */
  formula: string;
  /** Row and column of the element meant, counted from 1, where the formula gives a block. */
  at?: readonly [row: number, column: number];
  expect: number | string;
  /** Largest difference, or how many leading digits must agree, as the source prints or rounds; without it nothing may differ. */
  within?: number | { digits: number };
  /** Significant digits in the source, where the number as written here has lost zeros at its end. */
  prints?: number;
  source: string;
  seen: Seen;
}

type Terms = Pick<Check, "at" | "within" | "prints">;

/** Several checks of one function that rest on one source. */
export const checksOf = (
  name: string,
  source: string,
  seen: Seen,
  rows: readonly (readonly [formula: string, expect: Check["expect"], terms?: Terms])[],
): Check[] => rows.map(([formula, expect, terms = {}]) => ({ function: name, formula, expect, ...terms, source, seen }));

/** Numbers as an array in a formula: `list([1, 2])` stands across, `stack` down, `block` row by row. */
export const list = (numbers: readonly number[]): string => `{${numbers.join(",")}}`;
export const stack = (numbers: readonly number[]): string => `{${numbers.join(";")}}`;
export const block = (rows: readonly (readonly number[])[]): string => `{${rows.map((row) => row.join(",")).join(";")}}`;

/** The difference that a check allows between a result and the expected number; 0 for text. */
export function allowed({ expect, within = 0 }: Check): number {
  if (typeof expect === "string") return 0;
  return typeof within === "number" ? within : Math.abs(expect) * 10 ** -within.digits;
}

/** Room for the last binary place of a number beside the half of a printed digit. */
const PLAY = 1 + 1e-9;

export function agrees(check: Check, result: unknown): boolean {
  if (typeof check.expect === "string" || typeof result !== "number") return result === check.expect;
  return Math.abs(result - check.expect) <= allowed(check) * PLAY;
}

/** The element that a check means of what its formula gives. */
export const elementOf = (check: Check, result: unknown): unknown =>
  check.at && Array.isArray(result) ? (result as unknown[][])[check.at[0] - 1]?.[check.at[1] - 1] : result;

const magnitude = (number: number): number => Math.floor(Math.log10(Math.abs(number)) + 1e-12);

/** Significant digits of the expected number, as its source prints it; at most as many as the check demands. */
export function printedDigits({ expect, within, prints }: Check): number {
  const written = String(Math.abs(expect as number))
    .replace(/e.*$/, "")
    .replace(".", "")
    .replace(/^0+/, "").length;
  const printed = prints ?? written;
  return typeof within === "object" ? Math.min(printed, within.digits) : printed;
}

/** How many leading digits of the expected number the result bears out, never more than the source prints. */
export function digitsReached(check: Check, result: number): number {
  const expect = check.expect as number;
  const unit = (digits: number): number => 10 ** (magnitude(expect) - digits + 1);
  let digits = printedDigits(check);
  while (digits > 0 && Math.abs(result - expect) > (unit(digits) / 2) * PLAY) digits--;
  return digits;
}

/** A check as the name of a test. */
export const short = ({ formula, at, expect }: Check): string => `${formula.slice(0, 90)}${at ? ` [${at}]` : ""} is ${expect}`;
