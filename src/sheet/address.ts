/** A cell of a workbook. Rows and columns count from 0. */
export interface CellAddress {
  sheet: string;
  row: number;
  column: number;
}
