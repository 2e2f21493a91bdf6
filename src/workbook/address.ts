/** A cell of a workbook. Rows and columns count from 0. */
export interface CellAddress {
  sheet: string;
  row: number;
  column: number;
}

/** Cells of one sheet by their first row and column, and how many there are. */
export interface Rectangle {
  row: number;
  column: number;
  rows: number;
  columns: number;
}

/** A rectangle of cells on a sheet. */
export interface CellArea extends CellAddress, Rectangle {}

/** Rows and columns that a sheet can have at most (ECMA-376 part 1, 18.3.1.73 and 18.3.1.13). */
export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;

/** A cell of one sheet. */
export interface CellPosition {
  row: number;
  column: number;
}

/** One number for a cell's place on its sheet. */
export const keyOf = ({ row, column }: CellPosition): number => row * MOST_COLUMNS + column;

/** The smallest rectangle that has both in it. */
export function around(a: Rectangle, b: Rectangle): Rectangle {
  const row = Math.min(a.row, b.row);
  const column = Math.min(a.column, b.column);
  return {
    row,
    column,
    rows: Math.max(a.row + a.rows, b.row + b.rows) - row,
    columns: Math.max(a.column + a.columns, b.column + b.columns) - column,
  };
}

/** Whether two rectangles of one sheet share cells. */
export const rectanglesMeet = (a: Rectangle, b: Rectangle): boolean =>
  a.row < b.row + b.rows && b.row < a.row + a.rows && a.column < b.column + b.columns && b.column < a.column + a.columns;

/** Whether a cell of the same sheet lies in the rectangle. */
export const isIn = ({ row, column }: CellPosition, area: Rectangle): boolean =>
  row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns;

/** A cell as an area of its own. */
export const areaOf = (place: CellAddress | CellArea): CellArea => ({ rows: 1, columns: 1, ...place });

/** `A` for 0, `AA` for 26. */
export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1) letters = String.fromCharCode(65 + (rest % 26)) + letters;
  return letters;
}

/** 0 for `A`, 26 for `AA`; capital or small. */
export function columnOf(letters: string): number {
  let column = 0;
  for (let i = 0; i < letters.length; i++) column = column * 26 + (letters.charCodeAt(i) & 31);
  return column - 1;
}

/** `C7`, without the sheet. */
export const cellName = ({ row, column }: CellPosition): string => `${columnLetters(column)}${row + 1}`;

const PLAIN_SHEET = /^[A-Za-z_][A-Za-z0-9_]*$/;
const LIKE_A_CELL = /^(?:[A-Za-z]{1,3}\d+|r\d*c\d*)$/i;

/** The sheet that was named last, and how: most names are of the sheet of the one before. */
let last = { sheet: "", name: "''" };

/** `Bores!C7`, with the sheet in quotes where a formula would need them. */
export function placeName(cell: CellAddress): string {
  const { sheet } = cell;
  if (sheet !== last.sheet) {
    const plain = PLAIN_SHEET.test(sheet) && !LIKE_A_CELL.test(sheet);
    last = { sheet, name: plain ? sheet : `'${sheet.replaceAll("'", "''")}'` };
  }
  return `${last.name}!${cellName(cell)}`;
}

/** `Bores!C4:D6`, or `Bores!C4` for one cell. */
export const areaText = (area: CellArea): string => placeName(area) + toLast(area);

/** `C4:D6`, or `C4` for one cell, without the sheet. */
export const boxName = (box: Rectangle): string => cellName(box) + toLast(box);

function toLast({ row, column, rows, columns }: Rectangle): string {
  return rows === 1 && columns === 1 ? "" : `:${cellName({ row: row + rows - 1, column: column + columns - 1 })}`;
}

/** The cells in few rectangles, each cell in one of them: runs down a column, joined with equal ones beside them. Only cells of one kind go together. */
export function areasOf<Cell extends CellPosition>(cells: readonly Cell[], kindOf: (cell: Cell) => string = () => ""): (Rectangle & { first: Cell })[] {
  const runs: (Rectangle & { first: Cell; kind: string })[] = [];
  for (const first of [...cells].sort((a, b) => a.column - b.column || a.row - b.row)) {
    const { row, column } = first;
    const kind = kindOf(first);
    const last = runs.at(-1);
    if (last && last.column === column && last.row + last.rows === row && last.kind === kind) last.rows++;
    else runs.push({ row, column, rows: 1, columns: 1, first, kind });
  }
  const joined = new Map<string, (Rectangle & { first: Cell })[]>();
  for (const { kind, ...run } of runs) {
    const key = `${run.row},${run.rows},${kind}`;
    const beside = joined.get(key) ?? [];
    const last = beside.at(-1);
    if (last && last.column + last.columns === run.column) last.columns++;
    else beside.push(run);
    joined.set(key, beside);
  }
  return [...joined.values()].flat();
}
