import { decimal } from "../core/decimal.ts";
import { knownUnit } from "./units.ts";

/** Limits that somebody typed into one cell. */
export interface LimitText {
  lower?: number;
  upper?: number;
  /** Where one is typed behind them. */
  unit?: string;
}

const NUMBER = String.raw`[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)`;
const RANGE = new RegExp(String.raw`^(${NUMBER})\s*(?:-|to|\.{2,3}|…)\s*(${NUMBER})$`);
const AROUND = new RegExp(String.raw`^(${NUMBER})\s*±\s*(${NUMBER})$`);
const ONE = new RegExp(`^${NUMBER}$`);
/** Words before or behind a number that say which side it limits. `<` is none: what lies on it would be outside. */
const LEAST = String.raw`min(?:\.|imum)?|at least|not less than|or more|≥|>=`;
const MOST = String.raw`max(?:\.|imum)?|at most|not more than|not over|or less|up to|≤|<=`;
const WITH_WORD = [LEAST, MOST].map((words) => new RegExp(String.raw`^(?:(?:${words})\s*(.+)|(.+?)\s*(?:${words}))$`));
const WITH_UNIT = /^(.*\d)\s*([^\d\s.,][^\d]*)$/;

/** Whole numbers up to here name cylinders or places: `1-3` is no limit by itself. */
const LARGEST_ORDINAL = 32;

/**
 * The limits in a text such as `0.0012-0.0028`, `.014 to .024`, `165 min`, `.002 max` or `73.00 ±0.02 mm`; `undefined`
 * for anything else, also where the first of two is the larger, and for a comma that may mark thousands.
 */
export function limitsInText(text: string): LimitText | undefined {
  const plain = text.replace(/[−–—]/g, "-").replace(/\s+/g, " ").trim().toLowerCase();
  const bare = bounds(plain);
  if (bare) return bare;
  const [, rest = "", word = ""] = WITH_UNIT.exec(plain) ?? [];
  const unit = knownUnit(word);
  const found = unit === undefined ? undefined : bounds(rest.trim());
  if (found) return { ...found, unit: unit! };
  // `165 psi min`
  return unitBeforeWord(plain);
}

function bounds(text: string): LimitText | undefined {
  const [, first, second] = RANGE.exec(text) ?? [];
  if (first !== undefined) return ordered(numberIn(first), numberIn(second!));
  const [, middle, half] = AROUND.exec(text) ?? [];
  if (middle !== undefined) {
    const [at, by] = [numberIn(middle), numberIn(half!)];
    return at === undefined || by === undefined ? undefined : ordered(decimal(at - by), decimal(at + by));
  }
  for (const [i, pattern] of WITH_WORD.entries()) {
    const [, behind, before] = pattern.exec(text) ?? [];
    const number = numberIn((behind ?? before ?? "").trim());
    if (number !== undefined) return i === 0 ? { lower: number } : { upper: number };
  }
  return undefined;
}

function unitBeforeWord(text: string): LimitText | undefined {
  const [, number, word, side] = new RegExp(String.raw`^(${NUMBER})\s*(\D+?)\s+(${LEAST}|${MOST})$`).exec(text) ?? [];
  const unit = word === undefined ? undefined : knownUnit(word);
  const found = unit === undefined ? undefined : bounds(`${number} ${side}`);
  return found && { ...found, unit: unit! };
}

const ordered = (lower: number | undefined, upper: number | undefined): LimitText | undefined =>
  lower === undefined || upper === undefined || lower > upper ? undefined : { lower, upper };

/** A comma is a decimal sign unless three figures behind it could be thousands: `1,250` is not read, `0,025` is. */
function numberIn(text: string): number | undefined {
  if (!ONE.test(text) || /^[+-]?[1-9]\d{0,2},\d{3}$/.test(text)) return undefined;
  return Number(text.replace(",", "."));
}

/** A text that is a limit whatever heads it; `1-3` may be cylinders. */
export function isLimitText(cell: unknown): cell is string {
  if (typeof cell !== "string" || !/\d/.test(cell)) return false;
  const found = limitsInText(cell);
  if (found === undefined) return false;
  const { lower, upper, unit } = found;
  return (
    unit !== undefined ||
    lower === undefined ||
    upper === undefined ||
    ![lower, upper].every((one) => Number.isInteger(one) && one >= 0 && one <= LARGEST_ORDINAL)
  );
}
