import { type FileHost, openWorkbook } from "../../src/hosts/file.ts";
import { buildSheetSpec } from "../../src/setup/build-sheet.ts";
import { readChoices } from "../../src/setup/choices.ts";
import type { BuildSheet } from "../../src/setup/model.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";

/** The build sheet for these choices. */
export function described(given: object): BuildSheet {
  const read = readChoices(given);
  if ("sentences" in read) throw new Error(read.sentences.join("; "));
  return buildSheetSpec(read.choices);
}

/** A new workbook, written, opened headless, and typed into by table, heading and row. */
export class Made {
  private constructor(
    readonly book: BuildSheet,
    readonly bytes: Uint8Array,
    readonly host: FileHost,
  ) {}

  static of(choices: object): Promise<Made> {
    return Made.ofBook(described(choices));
  }

  static async ofBook(book: BuildSheet): Promise<Made> {
    const bytes = writeXlsx(book);
    return new Made(book, bytes, await openWorkbook(bytes, "new.xlsx"));
  }

  /** Where a cell of a table stands. */
  at(table: string, heading: string, index = 0): { sheet: string; row: number; column: number } {
    const sheet = this.book.sheets.find(({ tables }) => tables.some(({ name }) => name === table))!;
    const found = sheet.tables.find(({ name }) => name === table)!;
    const column = found.headings.indexOf(heading);
    if (column < 0) throw new Error(`${table} has no column ${heading}`);
    return { sheet: sheet.name, row: found.row + 1 + index, column: found.column + column };
  }

  /** The row of a table whose first cell holds this text. */
  rowOf(table: string, first: string): number {
    const { sheet, row, column } = this.at(table, this.headings(table)[0]!);
    const cells = this.book.sheets.find(({ name }) => name === sheet)!.cells;
    return cells.find((cell) => cell.column === column && cell.row >= row && cell.content === first)!.row - row;
  }

  headings(table: string): string[] {
    return this.book.sheets.flatMap(({ tables }) => tables).find(({ name }) => name === table)!.headings;
  }

  async type(table: string, heading: string, index: number, content: number | string): Promise<void> {
    await this.host.write([{ ...this.at(table, heading, index), cells: [[content]] }]);
  }

  /** Types down a column from its first row on. */
  async fill(table: string, heading: string, contents: readonly number[]): Promise<void> {
    await this.host.write([{ ...this.at(table, heading), cells: contents.map((content) => [content]) }]);
  }

  async limit(characteristic: string, lower: number | null, upper: number | null): Promise<void> {
    await this.host.write([{ ...this.at("LimitList", "Lower", this.rowOf("LimitList", characteristic)), cells: [[lower, upper]] }]);
  }

  async item(name: string, entry: number): Promise<void> {
    await this.type("EngineData", "Entry", this.rowOf("EngineData", name), entry);
  }

  /** What the cells of a column hold now. */
  async column(table: string, heading: string): Promise<unknown[]> {
    const { sheet, row, column } = this.at(table, heading);
    const rows = this.book.sheets.flatMap(({ tables }) => tables).find(({ name }) => name === table)!.rows;
    const snapshot: WorkbookSnapshot = await this.host.read();
    const { values } = snapshot.sheets.find(({ name }) => name === sheet)!;
    return Array.from({ length: rows }, (_, i) => values[row + i]?.[column] ?? null);
  }
}
