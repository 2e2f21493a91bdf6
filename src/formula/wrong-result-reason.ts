import { type Block, type Cell, isCellError } from "../core/cell.ts";
import { type CellAddress, type CellArea, type CellPosition, keyOf } from "../workbook/address.ts";
import { CannotTell, evaluateNode, type FormulaContext, referencedArea } from "./evaluate.ts";
import { readFormula, references } from "./parse.ts";
import { isSameResult, type WrongResult } from "./shown-results.ts";
import { WorkbookCells } from "./workbook-cells.ts";

const contextOf = (at: CellAddress, book: WorkbookCells, formula: string): FormulaContext & ReturnType<typeof readFormula> => ({
  ...readFormula(book, formula),
  ...{ book, sheet: at.sheet, cell: at },
});

/** What the formula of a cell gives from the cells as a workbook has them. */
export function resultOf(at: CellAddress, book: WorkbookCells): Cell | Block | CannotTell {
  const { tree, ...context } = contextOf(at, book, book.formula(at)!);
  return tree ? evaluateNode(tree, context) : new CannotTell("the formula cannot be read");
}

/** The cells that the formula of a cell refers to. */
export function areasIn(at: CellAddress, book: WorkbookCells): CellArea[] {
  const { tree, ...context } = contextOf(at, book, book.formula(at)!);
  return references(tree).flatMap((node) => {
    const area = referencedArea(node, context);
    return area !== undefined && "rows" in area ? [area] : [];
  });
}

/** The first of some cells, by sheet, that an area has in it. */
export function firstIn({ sheet, row, column, rows, columns }: CellArea, cells: ReadonlyMap<string, ReadonlySet<number>>): CellPosition | undefined {
  const keys = cells.get(sheet);
  if (!keys) return undefined;
  if (rows * columns <= keys.size) {
    for (let r = row; r < row + rows; r++)
      for (let c = column; c < column + columns; c++) if (keys.has(keyOf({ row: r, column: c }))) return { row: r, column: c };
    return undefined;
  }
  for (const key of keys) {
    const place = positionOf(key);
    if (place.row >= row && place.row < row + rows && place.column >= column && place.column < column + columns) return place;
  }
  return undefined;
}

const positionOf = (key: number): CellPosition => {
  const columns = keyOf({ row: 1, column: 0 });
  return { row: Math.floor(key / columns), column: key % columns };
};

/** A workbook whose blank cells are handed over as 0: everywhere, or only where one cell alone is given. */
class BlanksAsZero extends WorkbookCells {
  constructor(
    book: WorkbookCells,
    readonly alsoInRanges: boolean,
  ) {
    super(book.snapshot);
  }

  override value(cell: CellAddress): Cell {
    return super.value(cell) ?? 0;
  }

  override block(area: CellArea): Block {
    const block = super.block(area);
    return this.alsoInRanges ? block.map((line) => line.map((cell) => cell ?? 0)) : block;
  }
}

/** Why the formula at one place shows this in one of its cells. `shown` is the workbook as it is shown, `others` what is wrong in it. */
export function reasonFor(
  at: CellAddress,
  cell: CellAddress,
  shownCell: Cell,
  shown: WorkbookCells,
  others: ReadonlyMap<string, ReadonlySet<number>>,
): Pick<WrongResult, "why" | "because"> {
  const areas = areasIn(at, shown);
  const find = (holds: (cell: Cell) => boolean) => {
    for (const area of areas) {
      const block = shown.block(area);
      for (const [r, line] of block.entries()) {
        const c = line.findIndex(holds);
        if (c >= 0) return { sheet: area.sheet, row: area.row + r, column: area.column + c };
      }
    }
    return undefined;
  };
  const gives = (book: WorkbookCells): boolean => {
    const result = resultOf(at, book);
    if (result instanceof CannotTell) return false;
    const one = Array.isArray(result) ? result[cell.row - at.row]?.[cell.column - at.column] : result;
    return one !== undefined && isSameResult(one, shownCell);
  };
  if (gives(shown)) {
    // It follows from what its cells show: one of those is wrong.
    for (const area of areas) {
      const other = firstIn(area, others);
      if (other) return { why: "another wrong result", because: { sheet: area.sheet, ...other } };
    }
    return { why: "not calculated since" };
  }
  const blank = find((one) => one === null || one === undefined);
  const isZeros = blank && [true, false].some((alsoInRanges) => gives(new BlanksAsZero(shown, alsoInRanges)));
  if (isZeros) return { why: "a blank taken for 0", because: blankBeside(areas, at, cell, shown) ?? blank };
  const error = isCellError(shownCell) ? find(isCellError) : undefined;
  return error ? { why: "an error among its cells", because: error } : { why: "not calculated since" };
}

/** In a batch the blank of the cell's own row, or of its column, rather than the first of all. */
function blankBeside(areas: readonly CellArea[], at: CellAddress, cell: CellAddress, shown: WorkbookCells): CellAddress | undefined {
  for (const { sheet, row, column, rows, columns } of areas) {
    const own = { sheet, row: row + (rows > 1 ? cell.row - at.row : 0), column: column + (columns > 1 ? cell.column - at.column : 0) };
    const isInside = own.row < row + rows && own.column < column + columns;
    if (isInside && (shown.value(own) ?? null) === null) return own;
  }
  return undefined;
}
