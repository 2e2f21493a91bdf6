import { cellName, columnLetters, type Rectangle } from "../workbook/address.ts";
import type { CellSpec, CellStyle, Rule, SheetSpec, TableSpec, Validation } from "../workbook/sheet-spec.ts";
import type { BuildSheetChoices } from "./choices.ts";

/** A row of a table while its cells are made: where its columns stand. */
export interface RowAt {
  index: number;
  /** `C5` */
  ref(heading: string): string;
  /** `B5:G5` */
  span(from: string, to: string): string;
  /** `$B$5:$B$7`: the whole column. */
  body(heading: string): string;
}

export interface SheetColumn {
  heading: string;
  look: "label" | "typed" | "result" | "plain";
  width?: number;
  format?: string;
  /** What stands in each row; nothing for a cell that people type into. */
  cell?: (row: RowAt) => number | string;
  rule?: { rule: Rule; sentence: string };
  isVerdict?: boolean;
  /** A result that says what the row is about, and stays where it is. */
  namesRow?: boolean;
  /** For a column whose rows differ: what is special about this one. */
  special?: (index: number) => Special;
}

interface Special {
  look?: CellStyle;
  format?: string;
  rule?: { rule: Rule; sentence: string };
}

/** Where a finished table stands, for formulas elsewhere. */
export class TableAt {
  constructor(
    readonly sheet: string,
    readonly table: TableSpec,
  ) {}

  /** `Bores!$C$5` */
  cell(heading: string, index: number): string {
    return `${prefix(this.sheet)}${absolute(this.#row(index), this.#column(heading))}`;
  }

  /** `Bores!C5`, for formulas that are alike from row to row. */
  relative(heading: string, index: number): string {
    return `${prefix(this.sheet)}${cellName({ row: this.#row(index), column: this.#column(heading) })}`;
  }

  /** `Bores!B5:G5` */
  span(from: string, to: string, index: number): string {
    return `${this.relative(from, index)}:${cellName({ row: this.#row(index), column: this.#column(to) })}`;
  }

  /** `Bores!$C$5:$C$7`, or up to another column. */
  body(from: string, to = from): string {
    return `${this.cell(from, 0)}:${absolute(this.#row(this.table.rows - 1), this.#column(to))}`;
  }

  #row(index: number): number {
    return this.table.row + 1 + index;
  }

  #column(heading: string): number {
    const at = this.table.headings.indexOf(heading);
    if (at < 0) throw new Error(`the table ${this.table.name} has no column ${heading}`);
    return this.table.column + at;
  }
}

const absolute = (row: number, column: number): string => `$${columnLetters(column)}$${row + 1}`;

/** `Bores!`, in quotes where the name needs them. */
const prefix = (sheet: string): string => `${/^[A-Za-z]+$/.test(sheet) ? sheet : `'${sheet}'`}!`;

/** What stands over a result: whoever types on past the last reading is told, and the formula stays. */
const CALCULATED: NonNullable<SheetColumn["rule"]> = {
  rule: { kind: "calculated" },
  sentence: "This cell is calculated. Readings go into the shaded cells. To change the formula, take the cell's rule off first: Data, Data validation.",
};

/** Of a column that nobody has set, in characters. */
const UNTOUCHED_WIDTH = 8;

/** Most that a line of a note is wide, in characters. */
const LINE = 100;

/** Least width of a column of numbers, in characters; a heading gets two lines, broken between its words, and its letters are bold. */
const USUAL_WIDTH = 11;
const LETTER_OF_HEADING = 1.36;
/** Beside a heading, in characters. */
const FILTER_BUTTON = 3;
/** Of a name of a row, in the widest letters that a screen is likely to show it in; where it does not fit, the next cell cuts it off. */
const LETTER = 1.07;
const widthOf = ({ heading, width = USUAL_WIDTH }: SheetColumn, names: readonly string[], hasFilter: boolean): number => {
  const words = heading.split(" ");
  const lines = words.map((_, i) => Math.max(lettersOf(words.slice(0, i + 1).join(" ")), lettersOf(words.slice(i + 1).join(" "))));
  const ofHeading = Math.ceil(Math.min(...lines) * LETTER_OF_HEADING) + 1 + (hasFilter ? FILTER_BUTTON : 0);
  const ofNames = Math.ceil(Math.max(0, ...names.map(lettersOf)) * LETTER) + 1;
  return Math.max(width, Math.ceil(heading.length / 2) + 4, ofHeading, ofNames);
};

/** The letters of a text; m and w are half as wide again. */
const lettersOf = (text: string): number => text.length + 0.5 * (text.match(/[mw]/gi)?.length ?? 0);

/** One sheet while it is being described. */
export class SheetBuilder {
  readonly #cells: CellSpec[] = [];
  readonly #tables: TableSpec[] = [];
  readonly #validations: Validation[] = [];
  readonly #verdicts: Rectangle[] = [];
  readonly #widths: number[] = [];
  readonly #notes: { row: number; text: string }[] = [];
  readonly #title: string;
  readonly #boxes: Rectangle[] = [];
  #frozen = { rows: 0, columns: 0 };

  constructor(
    readonly name: string,
    title: string,
    notes: readonly string[] = [],
  ) {
    this.#title = title;
    notes.forEach((note, i) => {
      this.note(1 + i, note);
    });
  }

  /** A sentence over as many columns as make lines of a readable length, and as many lines as it takes. */
  note(row: number, text: string): void {
    this.#notes.push({ row, text });
  }

  put(row: number, column: number, content: number | string, style: CellStyle, format?: string): void {
    this.#cells.push({ row, column, content, style, ...(format ? { format } : {}) });
  }

  /** Cells to type in that are one. */
  box(area: Rectangle): void {
    for (let row = area.row; row < area.row + area.rows; row++)
      for (let column = area.column; column < area.column + area.columns; column++) this.put(row, column, "", "typed");
    this.#boxes.push(area);
  }

  /** The first rows and columns, which stay in view. */
  freeze(rows: number, columns: number): void {
    this.#frozen = { rows, columns };
  }

  /**
   * What is typed comes before what is calculated from it, whatever the order of the columns given, so that Tab walks in
   * the order of measuring; remarks stay last.
   * `hasFilter` for a list of which people look at a part; elsewhere buttons would only cover the headings.
   */
  table(name: string, row: number, given: readonly SheetColumn[], rows: number, hasFilter = false): TableAt {
    const columns = typedFirst(given);
    const described: TableSpec = { name, row, column: 0, rows, headings: columns.map(({ heading }) => heading), ...(hasFilter ? { hasFilter } : {}) };
    this.#tables.push(described);
    columns.forEach((column, c) => {
      this.put(row, c, column.heading, "head");
      const area = { row: row + 1, column: c, rows, columns: 1 };
      const rule = column.rule ?? (column.look === "result" ? CALCULATED : undefined);
      if (rule) this.#validations.push({ area, ...rule });
      if (column.isVerdict) this.#verdicts.push(area);
      const names: string[] = [];
      for (let index = 0; index < rows; index++) {
        const special = column.special?.(index);
        const content = column.cell?.(rowAt(described, index)) ?? "";
        const look = special?.look ?? column.look;
        if (typeof content === "string" && look !== "result" && !content.startsWith("=")) names.push(content);
        this.put(row + 1 + index, c, content, look, special?.format ?? column.format);
        if (special?.rule) this.#validations.push({ area: { row: row + 1 + index, column: c, rows: 1, columns: 1 }, ...special.rule });
      }
      this.#widths[c] = Math.max(this.#widths[c] ?? 0, widthOf(column, names, hasFilter));
    });
    return new TableAt(this.name, described);
  }

  /** What may be typed into one cell. */
  allow(row: number, column: number, rule: Rule, sentence: string): void {
    this.#validations.push({ area: { row, column, rows: 1, columns: 1 }, rule, sentence });
  }

  described({ unit }: Pick<BuildSheetChoices, "unit">): SheetSpec {
    const notes = this.#notes.map(({ row, text }) => ({ text, area: this.#lineOf(row) }));
    return {
      name: this.name,
      widths: this.#widths,
      frozen: this.#frozen,
      cells: [
        { row: 0, column: this.#frozen.columns, content: this.#title, style: "title" },
        ...this.#cells,
        ...notes.map(({ text, area: { row, column } }): CellSpec => ({ row, column, content: text, style: "note" })),
      ],
      tables: this.#tables,
      validations: merged(this.#validations),
      verdicts: this.#verdicts,
      merges: [...notes.map(({ area }) => area), ...this.#boxes],
      print: { paper: unit === "mm" ? "A4" : "letter", isLandscape: true },
    };
  }

  /** Beside the columns that stay in view, which would cut it off. */
  #lineOf(row: number): Rectangle {
    const { columns: column } = this.#frozen;
    const widthAt = (i: number): number => this.#widths[column + i] ?? UNTOUCHED_WIDTH;
    let columns = 1;
    for (let wide = widthAt(0); wide + widthAt(columns) <= LINE; columns++) wide += widthAt(columns);
    return { row, column, rows: 1, columns };
  }
}

function typedFirst(columns: readonly SheetColumn[]): SheetColumn[] {
  const isResult = ({ look, namesRow }: SheetColumn) => look === "result" && !namesRow;
  const isRemark = ({ look, heading }: SheetColumn) => look === "typed" && heading === "Remarks";
  return [...columns.filter((column) => !isResult(column) && !isRemark(column)), ...columns.filter(isResult), ...columns.filter(isRemark)];
}

function rowAt({ row, column, rows, headings }: TableSpec, index: number): RowAt {
  const columnOf = (heading: string): number => {
    const at = headings.indexOf(heading);
    if (at < 0) throw new Error(`there is no column ${heading}`);
    return column + at;
  };
  const ref = (heading: string): string => cellName({ row: row + 1 + index, column: columnOf(heading) });
  return {
    index,
    ref,
    span: (from, to) => `${ref(from)}:${ref(to)}`,
    body: (heading) => `${absolute(row + 1, columnOf(heading))}:${absolute(row + rows, columnOf(heading))}`,
  };
}

/** Columns side by side that follow one rule are one area. */
function merged(validations: readonly Validation[]): Validation[] {
  const out: Validation[] = [];
  for (const one of validations) {
    const last = out.at(-1);
    const isBeside = last?.area.row === one.area.row && last.area.rows === one.area.rows && last.area.column + last.area.columns === one.area.column;
    if (last && isBeside && last.sentence === one.sentence) last.area = { ...last.area, columns: last.area.columns + one.area.columns };
    else out.push({ ...one });
  }
  return out;
}
