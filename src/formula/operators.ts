import { type Block, type Cell, type CellError, isCellError, LONGEST_TEXT } from "../core/cell.ts";
import { compareAsSheets, compareTexts } from "../core/decimal.ts";
import { textValue } from "../core/number-text.ts";

/**
 * A sheet's operators over cells and blocks: blank counts as 0 or as empty text, text that reads as
 * a number counts as one, an error spreads, and blocks combine cell by cell (one row or one column
 * is repeated to fit).
 */
export type Binary = "+" | "-" | "*" | "/" | "^" | "&" | "=" | "<>" | "<" | ">" | "<=" | ">=";
export type Unary = "+" | "-" | "%";

const VALUE: CellError = { error: "#VALUE!" };
const DIVISION: CellError = { error: "#DIV/0!" };
const NUMBER: CellError = { error: "#NUM!" };
const NOT_AVAILABLE: CellError = { error: "#N/A" };

const NUMERIC = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?\s*$/i;

export function unary(operator: Unary, operand: Cell | Block): Cell | Block {
  if (operator === "+") return operand;
  return map(operand, (cell) => {
    const number = numberOf(cell);
    if (typeof number !== "number") return number;
    return operator === "-" ? 0 - number : number / 100;
  });
}

export function binary(operator: Binary, left: Cell | Block, right: Cell | Block): Cell | Block {
  const combine = combiner(operator);
  if (!Array.isArray(left) && !Array.isArray(right)) return combine(left, right);
  const a = Array.isArray(left) ? left : [[left]];
  const b = Array.isArray(right) ? right : [[right]];
  const rows = Math.max(a.length, b.length);
  const columns = Math.max(a[0]?.length ?? 0, b[0]?.length ?? 0);
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (__, c) => {
      const x = pick(a, r, c);
      const y = pick(b, r, c);
      return x === OUTSIDE || y === OUTSIDE ? NOT_AVAILABLE : combine(x, y);
    }),
  );
}

const OUTSIDE = Symbol("outside");

function pick(block: Block, row: number, column: number): Cell | typeof OUTSIDE {
  const line = block.length === 1 ? block[0]! : block[row];
  if (!line) return OUTSIDE;
  return line.length === 1 ? line[0] : column < line.length ? line[column] : OUTSIDE;
}

const map = (operand: Cell | Block, change: (cell: Cell) => Cell): Cell | Block =>
  Array.isArray(operand) ? operand.map((line) => line.map(change)) : change(operand);

function combiner(operator: Binary): (left: Cell, right: Cell) => Cell {
  if (operator === "&") return join;
  const arithmetic = ARITHMETIC[operator];
  if (arithmetic) return (left, right) => calculate(arithmetic, left, right);
  const holds = COMPARISON[operator]!;
  return (left, right) => {
    if (isCellError(left)) return left;
    if (isCellError(right)) return right;
    return holds(order(left, right));
  };
}

const ARITHMETIC: Partial<Record<Binary, (a: number, b: number) => number | CellError>> = {
  "+": (a, b) => a + b,
  "-": (a, b) => a - b,
  "*": (a, b) => a * b,
  "/": (a, b) => (b === 0 ? DIVISION : a / b),
  "^": (a, b) => a ** b,
};

const COMPARISON: Partial<Record<Binary, (order: number) => boolean>> = {
  "=": (order) => order === 0,
  "<>": (order) => order !== 0,
  "<": (order) => order < 0,
  ">": (order) => order > 0,
  "<=": (order) => order <= 0,
  ">=": (order) => order >= 0,
};

function calculate(arithmetic: (a: number, b: number) => number | CellError, left: Cell, right: Cell): Cell {
  const a = numberOf(left);
  if (typeof a !== "number") return a;
  const b = numberOf(right);
  if (typeof b !== "number") return b;
  const result = arithmetic(a, b);
  return typeof result === "number" && !Number.isFinite(result) ? NUMBER : result;
}

function numberOf(cell: Cell): number | CellError {
  if (typeof cell === "number") return cell;
  if (cell === null || cell === undefined) return 0;
  if (typeof cell === "boolean") return cell ? 1 : 0;
  if (isCellError(cell)) return cell;
  return NUMERIC.test(cell) ? numberIn(cell) : VALUE;
}

/** Sheets hold no larger number, and none nearer to nothing. */
const LARGEST = 1e308;
const NEAREST = 1e-307;

function numberIn(text: string): number | CellError {
  const number = Number(text);
  if (Math.abs(number) >= LARGEST) return VALUE;
  return Math.abs(number) < NEAREST ? 0 : number;
}

function join(left: Cell, right: Cell): Cell {
  if (isCellError(left)) return left;
  if (isCellError(right)) return right;
  const text = `${operandText(left)}${operandText(right)}`;
  // No cell holds more, and joined in a circle it would only grow.
  return text.length > LONGEST_TEXT ? VALUE : text;
}

function operandText(cell: Exclude<Cell, CellError>): string {
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  if (typeof cell === "number") return String(textValue(cell));
  return cell ?? "";
}

type Plain = number | string | boolean;

/** Below, at or above, as sheets sort: numbers, then text without regard to case, then truth values. */
function order(left: Exclude<Cell, CellError>, right: Exclude<Cell, CellError>): number {
  const a = left ?? blankLike(right);
  const b = right ?? blankLike(left);
  const rank = RANK[typeof a]! - RANK[typeof b]!;
  if (rank !== 0) return rank;
  if (typeof a === "number") return compareAsSheets(a, b as number);
  if (typeof a === "string") return compareTexts(a, b as string);
  return Number(a) - Number(b);
}

const RANK: Record<string, number> = { number: 0, string: 1, boolean: 2 };

/** What a blank stands for beside another cell: 0, empty text or FALSE. */
function blankLike(other: Exclude<Cell, CellError>): Plain {
  return typeof other === "string" ? "" : typeof other === "boolean" ? false : 0;
}
