import type { Argument, Block, Cell } from "../core/cell.ts";

/**
 * What Excel hands to a function, made into what ours take. Every param is declared as a range of
 * `any`, so an argument is a block of rows, or `null` where it was left out. In a block Excel gives
 * a blank cell as 0 on the desktop and as `null` on the web (OfficeDev/office-js threads 1951 and
 * 4702), and an error as an object, because functions.json asks for it (`allowErrorForDataTypeAny`).
 */
export function argumentsFrom(given: readonly unknown[]): Argument[] {
  const args = withoutInvocation(given).map(argumentFrom);
  // Left out at the end is "not given"; left out in between, as in F(5,,6), is a blank.
  while (args.length > 0 && args[args.length - 1] === undefined) args.pop();
  return args;
}

/** Excel adds an object about the call itself behind the arguments. */
function withoutInvocation(given: readonly unknown[]): readonly unknown[] {
  const last = given[given.length - 1];
  return isObject(last) && !Array.isArray(last) && !isCellObject(last) ? given.slice(0, -1) : given;
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
