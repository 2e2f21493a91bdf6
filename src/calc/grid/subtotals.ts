import {
  type CallContext,
  calledIn,
  declared,
  type Given,
  type GridCell,
  type GridParts,
  gridBlock,
  isError,
  type OwnFunction,
  Reader,
  SheetFault,
} from "./own-function.ts";

interface Place {
  sheetId: string;
  row: number;
  col: number;
}

/** What the sheet tells beside its values. Where there is none, asking leaves the formula to the grid's model. */
interface Sheet extends CallContext {
  getters: {
    isRowFiltered(sheetId: string, row: number): boolean;
    isRowHiddenByUser(sheetId: string, row: number): boolean;
    getCorrespondingFormulaCell(place: Place): { isFormula?: boolean; compiledFormula?: { usesSymbol(name: string): boolean } } | undefined;
  };
}

/** Rows that a filter of the file hides, sheet by sheet; the grid's own filters are told by the grid. */
const filteredRows = new Map<string, ReadonlySet<number>>();
export function noteFilteredRows(sheetId: string, rows: readonly number[]): void {
  filteredRows.set(sheetId, new Set(rows));
}

interface LeftOut {
  /** Rows that are hidden; those that a filter hides count for SUBTOTAL never. */
  hidden: boolean;
  errors: boolean;
  /** Cells that are sums of this kind themselves. */
  nested: boolean;
}

/** The functions by their numbers, and how many more inputs they take. */
const BY_NUMBER = ["AVERAGE", "COUNT", "COUNTA", "MAX", "MIN", "PRODUCT", "STDEV.S", "STDEV.P", "SUM", "VAR.S", "VAR.P", "MEDIAN", "MODE.SNGL"];
const WITH_PLACE = ["LARGE", "SMALL", "PERCENTILE.INC", "QUARTILE.INC", "PERCENTILE.EXC", "QUARTILE.EXC"];
const NESTING = ["SUBTOTAL", "AGGREGATE"];

/** SUBTOTAL and AGGREGATE: a function over the cells that are shown. */
export function subtotalFunctions(grid: GridParts): Record<string, OwnFunction> {
  const reader = new Reader(grid.helpers);
  const mapping = calledIn(grid);

  function counted(this: Sheet, refs: readonly Given[], leftOut: LeftOut, isOfSums: boolean): GridCell[] {
    const found: GridCell[] = [];
    for (const ref of refs) {
      const block = gridBlock(ref);
      if (!Array.isArray(ref) && isError(ref?.value)) throw ref;
      const isPlain = !leftOut.hidden && !leftOut.nested && !isOfSums;
      const place = isPlain ? undefined : (block[0]?.[0] as { position?: Place } | undefined)?.position;
      if (!isPlain && !place) throw new SheetFault("#VALUE!", "A range of the sheet is wanted here.");
      for (let row = 0; row < (block[0]?.length ?? 0); row++) {
        if (place && (isOfSums || leftOut.hidden) && isOut(this, place.sheetId, place.row + row, leftOut.hidden)) continue;
        for (const [column, cells] of block.entries()) {
          const cell = cells[row];
          if (!cell || (leftOut.errors && isError(cell.value))) continue;
          if (place && leftOut.nested && isNested(this, { sheetId: place.sheetId, row: place.row + row, col: place.col + column })) continue;
          found.push(cell);
        }
      }
    }
    return found;
  }

  function isOut({ getters }: Sheet, sheetId: string, row: number, isHiddenOut: boolean): boolean {
    const isHidden = getters.isRowHiddenByUser(sheetId, row);
    return getters.isRowFiltered(sheetId, row) || (isHidden && (isHiddenOut || filteredRows.get(sheetId)?.has(row) === true));
  }
  function isNested({ getters }: Sheet, place: Place): boolean {
    const cell = getters.getCorrespondingFormulaCell(place);
    return cell?.isFormula === true && NESTING.some((name) => cell.compiledFormula?.usesSymbol(name));
  }

  return {
    SUBTOTAL: declared(
      grid.helpers,
      "A function over the rows that no filter hides",
      ["function (number)", "range (any, range, repeating)"],
      function (number, ...refs) {
        const code = Math.trunc(reader.number(number, this));
        const name = BY_NUMBER[(code > 100 ? code - 100 : code) - 1];
        if (!name || (code > 100 ? code - 100 : code) > 11) return new SheetFault("#VALUE!", "The function is 1 to 11 or 101 to 111.");
        const cells = counted.call(this as Sheet, refs, { hidden: code > 100, errors: false, nested: true }, true);
        return mapping[name]!.call(this, [cells]);
      },
    ),
    AGGREGATE: declared(
      grid.helpers,
      "A function over a range without hidden rows, errors or other sums of its kind",
      ["function (number)", "options (number)", "range (any, range, repeating)"],
      function (number, options, ...refs) {
        const code = Math.trunc(reader.number(number, this));
        const option = Math.trunc(reader.number(options, this));
        const name = BY_NUMBER[code - 1];
        const placed = WITH_PLACE[code - 14];
        if (!name && !placed) return new SheetFault("#VALUE!", "The function is 1 to 19.");
        if (option < 0 || option > 7) return new SheetFault("#VALUE!", "The options are 0 to 7.");
        const leftOut = { hidden: [1, 3, 5, 7].includes(option), errors: [2, 3, 6, 7].includes(option), nested: option < 4 };
        const [cells, k] = placed
          ? [counted.call(this as Sheet, refs.slice(0, 1), leftOut, false), refs[1]]
          : [counted.call(this as Sheet, refs, leftOut, false), undefined];
        if (placed && k === undefined) return new SheetFault("#VALUE!", `${placed} needs a number that says which.`);
        return placed ? mapping[placed]!.call(this, [cells], k) : mapping[name!]!.call(this, [cells]);
      },
    ),
  };
}
