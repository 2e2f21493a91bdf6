import type { Argument, Block, Cell } from "../core/cell.ts";

/**
 * What Excel hands to a function, made into what ours take. Every param is declared as a range of
 * `any`, so an argument is a block of rows, or `null` where it was left out. In a block Excel gives
 * a blank cell as 0 on the desktop and as `null` on the web (OfficeDev/office-js threads 1951 and
 * 4702), and an error as an object, because functions.json asks for it (`allowErrorForDataTypeAny`).
 */
export function argumentsFrom(given: readonly unknown[]): Argument[] {
  const args = usedParts(withoutInvocation(given)).map(argumentFrom);
  // Left out at the end is "not given"; left out in between, as in F(5,,6), is a blank.
  while (args.length > 0 && args[args.length - 1] === undefined) args.pop();
  return args;
}

/** Excel adds an object about the call itself behind the arguments. */
function withoutInvocation(given: readonly unknown[]): readonly unknown[] {
  const last = given[given.length - 1];
  return isObject(last) && !Array.isArray(last) && !isCellObject(last) ? given.slice(0, -1) : given;
}

/** From here on a range is a whole column, or as good as one. */
const WHOLE_COLUMN = 1_000_000;
const WHOLE_ROW = 16_000;

/**
 * Whole columns and rows without what is blank behind the last cell that is filled, so that A:A costs no
 * more than what stands in it. One blank row or column is left, because the range does go on: as one bore
 * it is unfinished. Those of one length are cut alike, and keep fitting one another.
 */
function usedParts(given: readonly unknown[]): readonly unknown[] {
  const blocks = given.filter((one): one is unknown[][] => Array.isArray(one) && Array.isArray(one[0]));
  const high = blocks.filter((block) => block.length >= WHOLE_COLUMN);
  const wide = blocks.filter((block) => block[0]!.length >= WHOLE_ROW);
  if (high.length === 0 && wide.length === 0) return given;
  const rows = 1 + Math.max(0, ...high.map(usedRows));
  const columns = 1 + Math.max(0, ...wide.map(usedColumns));
  return given.map((one) => {
    const block = one as unknown[][];
    if (high.includes(block)) return block.slice(0, rows);
    return wide.includes(block) ? block.map((line) => line.slice(0, columns)) : one;
  });
}

const isNothing = (cell: unknown): boolean => cell === null || cell === undefined || cell === "";

/** A host that gives 0 for a blank ends the column of a whole sheet with zeros, and one that does not with blanks. */
function usedRows(block: readonly unknown[][]): number {
  const isEnd = block.at(-1)!.every((cell) => cell === 0) ? (cell: unknown) => cell === 0 || isNothing(cell) : isNothing;
  let rows = block.length;
  while (rows > 0 && block[rows - 1]!.every(isEnd)) rows--;
  return rows;
}

function usedColumns(block: readonly unknown[][]): number {
  const isEnd = block.every((line) => line.at(-1) === 0) ? (cell: unknown) => cell === 0 || isNothing(cell) : isNothing;
  let columns = block[0]!.length;
  while (columns > 0 && block.every((line) => isEnd(line[columns - 1]))) columns--;
  return columns;
}

function argumentFrom(given: unknown): Argument {
  if (!Array.isArray(given)) return cellFrom(given) ?? undefined;
  const block: Block = given.map((row: unknown) => (Array.isArray(row) ? row : [row]).map(cellFrom));
  const [first] = block;
  // One cell is handed over as a block of one, and an argument of one cell is not a range. A blank
  // one stays a block, so that it is not taken for an argument left out.
  return block.length === 1 && first?.length === 1 && first[0] !== null ? first[0] : block;
}

function cellFrom(given: unknown): Cell {
  if (given === null || given === undefined) return null;
  if (typeof given === "number" || typeof given === "string" || typeof given === "boolean") return given;
  return isObject(given) ? fromObject(given) : String(given);
}

interface CellObject {
  type?: unknown;
  basicType?: unknown;
  basicValue?: unknown;
  code?: unknown;
  message?: unknown;
}

const isObject = (given: unknown): given is CellObject => typeof given === "object" && given !== null;

/** An error has a code; a formatted number, an entity and other rich cells have the value they stand for. */
const isCellObject = (given: CellObject): boolean => "basicValue" in given || typeof given.type === "string" || typeof given.code === "string";

function fromObject(given: CellObject): Cell {
  if (typeof given.code === "string") return { error: given.code, ...(typeof given.message === "string" ? { message: given.message } : {}) };
  const { basicValue } = given;
  if (given.type === "Error" || given.basicType === "Error") return { error: typeof basicValue === "string" ? basicValue : "#VALUE!" };
  if (given.type === "Empty" || given.basicType === "Empty") return null;
  if (typeof basicValue === "number" || typeof basicValue === "string" || typeof basicValue === "boolean") return basicValue;
  return { error: "#VALUE!" };
}
