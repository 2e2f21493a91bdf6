/** A cell of a workbook. Rows and columns count from 0. */
export interface CellAddress {
  sheet: string;
  row: number;
  column: number;
}

/** A rectangle of cells on one sheet. */
export interface CellArea extends CellAddress {
  rows: number;
  columns: number;
}

/** Rows and columns that a sheet can have at most (ECMA-376 part 1, 18.3.1.73 and 18.3.1.13). */
export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;

/** A cell of one sheet. */
export interface Place {
  row: number;
  column: number;
}

/** One number for a cell's place on its sheet. */
export const keyOf = ({ row, column }: Place): number => row * MOST_COLUMNS + column;

export interface Box {
  top: number;
  left: number;
  bottom: number;
  right: number;
}

/** The smallest box that has both in it. */
export const around = (a: Box, b: Box): Box => ({
  top: Math.min(a.top, b.top),
  left: Math.min(a.left, b.left),
  bottom: Math.max(a.bottom, b.bottom),
  right: Math.max(a.right, b.right),
});

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
export const cellName = ({ row, column }: Pick<CellAddress, "row" | "column">): string => `${columnLetters(column)}${row + 1}`;

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
export const boxName = (box: Omit<CellArea, "sheet">): string => cellName(box) + toLast(box);

function toLast({ row, column, rows, columns }: Omit<CellArea, "sheet">): string {
  return rows === 1 && columns === 1 ? "" : `:${cellName({ row: row + rows - 1, column: column + columns - 1 })}`;
}
