import { ERROR_TYPES } from "./added.ts";
import { commonCode } from "./grid-text.ts";
import { order } from "./line-search.ts";
import {
  type CallContext,
  declared,
  type Given,
  type GridCell,
  type GridParts,
  givenCells,
  gridBlock,
  isError,
  type OwnFunction,
  Reader,
  SheetFault,
} from "./own-function.ts";

type Lines = (GridCell | undefined)[][];

const turned = (lines: Lines): Lines => Array.from({ length: lines[0]?.length ?? 0 }, (_, i) => lines.map((line) => line[i]));

/** 0 for what is no error, and above it for every other. */
const errorNumber = (value: unknown): number => (isError(value) ? 2 + ERROR_TYPES.indexOf(commonCode(String(value))) : 0);

/** What is sorted among other values, and behind them errors by their number. */
const orderOrError = (a: unknown, b: unknown): number => errorNumber(a) - errorNumber(b) || (isError(a) ? 0 : order(a, b));

/** FILTER and SORT as office programs have them: to the grid their third inputs are more conditions, and another column to sort by. */
export function blockFunctions(grid: GridParts): Record<string, OwnFunction> {
  const reader = new Reader(grid.helpers);
  const { helpers } = grid;
  const numbersIn = (given: Given, around: CallContext): number[] =>
    given === undefined ? [1] : Array.from(givenCells(given), (cell) => Math.trunc(reader.number(cell, around, 1)));

  return {
    FILTER: declared(
      helpers,
      "The rows or columns of a range for which a condition holds",
      ["range (any, range)", "condition (any, range)", "if_empty (any, range, optional)"],
      function (given, condition, otherwise) {
        const [block, asked] = [gridBlock(given), gridBlock(condition)];
        const [width, height] = [block.length, block[0]?.length ?? 0];
        const isOfRows = asked.length === 1 && asked[0]!.length === height;
        if (!isOfRows && !(asked.length === width && asked[0]!.length === 1))
          return new SheetFault("#VALUE!", "The condition is one column as high as the range, or one row as wide.");
        const holds = asked.flat().map((cell) => reader.flag(cell ?? { value: null }, this, false));
        const kept = isOfRows ? block.map((column) => column.filter((_, row) => holds[row])) : block.filter((_, column) => holds[column]);
        if (holds.includes(true)) return kept as GridCell[][];
        return otherwise === undefined ? new SheetFault("#CALC!", "The condition holds nowhere.") : (gridBlock(otherwise) as GridCell[][]);
      },
    ),
    SORT: declared(
      helpers,
      "The rows or columns of a range in order",
      ["range (any, range)", "index (number, range<number>, default=1)", "order (number, range<number>, default=1)", "by_column (boolean, default=FALSE)"],
      function (given, index, ways, across) {
        const isByColumn = reader.flag(across, this, false);
        const block = gridBlock(given);
        const lines = isByColumn ? block : turned(block);
        const [keys, signs] = [numbersIn(index, this), numbersIn(ways, this)];
        if (keys.some((key) => key < 1 || key > lines[0]!.length)) return new SheetFault("#VALUE!", "There is no row or column of this number to sort by.");
        if (signs.some((sign) => Math.abs(sign) !== 1) || (signs.length !== 1 && signs.length !== keys.length))
          return new SheetFault("#VALUE!", "The order is 1 or -1, once or for each that is sorted by.");
        const sorted = lines.toSorted((p, q) => {
          for (const [i, key] of keys.entries()) {
            const [a, b] = [p[key - 1]?.value ?? null, q[key - 1]?.value ?? null];
            // Blanks stand last whichever way is sorted.
            const way = a === null || b === null ? Number(a === null) - Number(b === null) : orderOrError(a, b) * (signs[i] ?? signs[0]!);
            if (way !== 0) return way;
          }
          return 0;
        });
        return (isByColumn ? sorted : turned(sorted)) as GridCell[][];
      },
    ),
  };
}
