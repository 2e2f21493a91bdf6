import { type CellPosition, MOST_COLUMNS } from "../../workbook/address.ts";
import type { BytesPatch } from "./edit.ts";
import { opened } from "./edit.ts";
import { startOfEnd, type Tag } from "./scan.ts";

/** A row in which cells may have to be put, as it has been found. */
interface Row {
  tag: Tag;
  /** Where its end tag begins. */
  end: number;
  style: number | undefined;
  /** Before what each cell that is missing goes; at the end where nothing is said. */
  before: Map<number, number>;
}

/** Writes a cell: its place as one number, the style that it has as part of its row and column, and what stands before names. */
export type Write = (key: number, style: number, prefix: string) => string;

/**
 * Cells that are to be there and may not be: notes while the sheet goes by where each would stand, and
 * puts those in, in the order of rows and columns, that have not come along.
 */
export class MissingCells {
  /** Columns by row, in order. */
  readonly #wanted = new Map<number, number[]>();
  readonly #rows: readonly number[];
  readonly #found = new Set<number>();
  readonly #at = new Map<number, Row>();
  /** Before what a row that is missing goes. */
  readonly #before = new Map<number, number>();
  readonly #columns: { from: number; to: number; style: number }[] = [];
  #data: { tag: Tag; end: number } | undefined;
  /** The first of the rows, and of the columns of this row, that nothing greater than them has come along yet. */
  #nextRow = 0;
  #nextColumn = 0;
  #current: number[] = [];
  #row: Row | undefined;

  constructor(
    readonly patch: BytesPatch,
    keys: ReadonlySet<number>,
  ) {
    for (const key of [...keys].sort((a, b) => a - b)) {
      const row = Math.floor(key / MOST_COLUMNS);
      const columns = this.#wanted.get(row);
      if (columns) columns.push(key % MOST_COLUMNS);
      else this.#wanted.set(row, [key % MOST_COLUMNS]);
    }
    this.#rows = [...this.#wanted.keys()];
  }

  column({ attributes: { min, max, style } }: Tag): void {
    if (style !== undefined) this.#columns.push({ from: Number(min) - 1, to: Number(max) - 1, style: Number(style) });
  }

  begin(tag: Tag): void {
    this.#data = { tag, end: tag.to };
  }

  row(row: number, tag: Tag): void {
    for (; this.#nextRow < this.#rows.length && this.#rows[this.#nextRow]! < row; this.#nextRow++) this.#before.set(this.#rows[this.#nextRow]!, tag.from);
    this.#current = this.#wanted.get(row) ?? [];
    this.#nextColumn = 0;
    this.#row = undefined;
    if (this.#current.length === 0) return;
    const { s, customFormat } = tag.attributes;
    const style = s !== undefined && (customFormat === "1" || customFormat === "true") ? Number(s) : undefined;
    this.#row = { tag, end: tag.to, style, before: new Map() };
    if (!this.#at.has(row)) this.#at.set(row, this.#row);
  }

  cell({ row, column }: CellPosition, tag: Tag): void {
    const columns = this.#current;
    for (; this.#nextColumn < columns.length && columns[this.#nextColumn]! <= column; this.#nextColumn++) {
      const wanted = columns[this.#nextColumn]!;
      if (wanted < column) this.#row!.before.set(wanted, tag.from);
    }
    if (columns.length > 0) this.#found.add(row * MOST_COLUMNS + column);
  }

  endRow(to: number): void {
    if (this.#row) this.#row.end = startOfEnd(this.patch.bytes, to);
  }

  end(to: number): void {
    if (this.#data) this.#data.end = startOfEnd(this.patch.bytes, to);
  }

  put(write: Write): void {
    if (!this.#data) return;
    const { tag, end } = this.#data;
    let last = "";
    for (const [row, columns] of this.#wanted) {
      const at = this.#at.get(row);
      const missing = columns.filter((column) => !this.#found.has(row * MOST_COLUMNS + column));
      if (missing.length === 0) continue;
      const cell = (column: number): string => write(row * MOST_COLUMNS + column, at?.style ?? this.#styleOf(column), tag.prefix);
      if (at) {
        this.#putInto(at, missing, cell);
        continue;
      }
      const made = `<${tag.prefix}row r="${row + 1}">${missing.map(cell).join("")}</${tag.prefix}row>`;
      const before = this.#before.get(row);
      if (before === undefined) last += made;
      else this.patch.insert(before, made);
    }
    this.#append(tag, end, last);
  }

  #putInto({ tag, end, before }: Row, missing: readonly number[], cell: (column: number) => string): void {
    let last = "";
    for (const column of missing) {
      const place = before.get(column);
      if (place === undefined) last += cell(column);
      else this.patch.insert(place, cell(column));
    }
    this.#append(tag, end, last);
  }

  /** Puts content behind that of an element. */
  #append(tag: Tag, end: number, content: string): void {
    if (content === "") return;
    if (!tag.isEmpty) this.patch.insert(end, content);
    else this.patch.replace(tag.from, tag.to, `${opened(this.patch.text(tag.from, tag.to))}${content}</${tag.prefix}${tag.name}>`);
  }

  #styleOf(column: number): number {
    return this.#columns.find(({ from, to }) => column >= from && column <= to)?.style ?? 0;
  }
}
