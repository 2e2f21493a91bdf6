import type { Cell, CellError } from "../../core/cell.ts";
import { type CellPosition, keyOf, MOST_COLUMNS, MOST_ROWS } from "../../workbook/address.ts";
import type { FileLimits } from "../file-limits.ts";
import { UnreadableFile } from "../file-limits.ts";
import type { CellFile, SheetFile } from "../model.ts";
import { apartFromFilled, positionIn } from "../model.ts";
import { type Handlers, readXml, unescapeText, type XmlAttributes } from "../xml.ts";
import { BesideCells } from "./beside-cells.ts";
import { CellFormulas, type StoredFormula } from "./cell-formulas.ts";
import { TextRuns } from "./parts.ts";

/** Numbers that a sheet can hold: nothing goes beyond the one, and what is nearer to nothing than the other is 0 to it. */
const LARGEST = 1e308;
const SMALLEST = 1e-307;

export interface Surroundings {
  strings: readonly string[];
  limits: FileLimits;
  /** Takes note of one more cell, and refuses the file when there are too many. */
  count(): void;
}

/** A cell while its element is being read. */
interface Draft extends CellPosition {
  type: string;
  grows: boolean;
  value: string | null;
  formula: StoredFormula | null;
}

/** The cells of one sheet's part (ECMA-376 part 1, 18.3.1.99). */
export function readWorksheet(
  bytes: Uint8Array,
  part: string,
  surroundings: Surroundings,
): Pick<SheetFile, "cells" | "hiddenRows" | "filteredRows" | "typing" | "print"> {
  const reader = new WorksheetReader(part, surroundings);
  readXml(bytes, part, surroundings.limits.depth, reader);
  return reader.result();
}

class WorksheetReader implements Handlers {
  readonly #part: string;
  readonly #around: Surroundings;
  readonly #cells: CellFile[] = [];
  /** Where the cell before stood, and where all have stood once one was out of order. */
  #last = -1;
  #taken: Set<number> | undefined;
  readonly #hiddenRows: number[] = [];
  /** A filter of the sheet is on. */
  #isFiltered = false;
  readonly #beside = new BesideCells();
  readonly #formulas: CellFormulas;
  readonly #inline = new TextRuns();
  #row = -1;
  #column = -1;
  #draft: Draft | null = null;
  #text: string | null = null;

  constructor(part: string, around: Surroundings) {
    this.#part = part;
    this.#around = around;
    this.#formulas = new CellFormulas(part, around.limits.cells);
  }

  open(name: string, attributes: XmlAttributes): void {
    if (name === "row") this.#openRow(attributes);
    else if (name === "c") this.#openCell(attributes);
    else if (name === "filterColumn") this.#isFiltered = true;
    else if (!this.#draft) this.#beside.open(name, attributes);
    else if (name === "v") this.#text = "";
    else if (name === "f") {
      this.#text = "";
      this.#draft.formula = { text: "", kind: attributes.t ?? "normal", ref: attributes.ref, group: attributes.si };
    } else this.#inline.open(name);
  }

  text(piece: string): void {
    if (this.#text !== null) this.#text += piece;
    else if (this.#draft) this.#inline.add(piece);
    else this.#beside.text(piece);
  }

  close(name: string): void {
    if (!this.#draft) this.#beside.close(name);
    else if (name === "v") {
      this.#draft.value = this.#text;
      this.#text = null;
    } else if (name === "f") {
      this.#draft.formula!.text = unescapeText(this.#text ?? "");
      this.#text = null;
    } else if (name === "c") this.#closeCell(this.#draft);
    else this.#inline.close(name);
  }

  /** Without the values in the reach of an array formula: they would stand in the way of its result. */
  result(): Pick<SheetFile, "cells" | "hiddenRows" | "filteredRows" | "filled" | "typing" | "print"> {
    const { cells, filled } = apartFromFilled(this.#cells, this.#formulas.filled());
    if (this.#taken) cells.sort((a, b) => a.row - b.row || a.column - b.column);
    return {
      cells,
      hiddenRows: this.#hiddenRows,
      ...filled,
      ...(this.#isFiltered ? { filteredRows: this.#hiddenRows } : {}),
      ...this.#beside.result(),
    };
  }

  #openRow({ r, hidden }: XmlAttributes): void {
    this.#row = r === undefined ? this.#row + 1 : Number(r) - 1;
    this.#column = -1;
    if (!(Number.isInteger(this.#row) && this.#row >= 0 && this.#row < MOST_ROWS)) throw this.#damaged(`the row ${r ?? "after the last"}`);
    if (isTrue(hidden)) this.#hiddenRows.push(this.#row);
  }

  #openCell({ r, t, cm }: XmlAttributes): void {
    const { row, column } = r === undefined ? { row: this.#row, column: this.#column + 1 } : positionIn(r, this.#part);
    if (column >= MOST_COLUMNS || row < 0) throw this.#damaged(`cell ${r ?? "after the last column"}`);
    this.#row = row;
    this.#column = column;
    this.#draft = { row, column, type: t ?? "n", grows: cm !== undefined && cm !== "0", value: null, formula: null };
  }

  #closeCell(draft: Draft): void {
    this.#draft = null;
    const inline = this.#inline.take();
    const value = this.#valueOf(draft, inline);
    const formula = draft.formula && this.#formulas.of(draft.formula, draft, draft.grows);
    if (!formula && (value === null || value === "")) return;
    this.#take(keyOf(draft));
    this.#around.count();
    const { row, column } = draft;
    // Written out for all usual cells: objects that are put together take many times as long.
    if (!formula) this.#cells.push({ row, column, value });
    else if (formula.array || formula.beyond !== undefined) this.#cells.push({ row, column, value, ...formula });
    else this.#cells.push({ row, column, value, formula: formula.formula! });
  }

  /** Nearly every file has its cells in order, and then none can be there already. */
  #take(key: number): void {
    if (key > this.#last && !this.#taken) {
      this.#last = key;
      return;
    }
    this.#taken ??= new Set(this.#cells.map(keyOf));
    if (this.#taken.has(key)) throw this.#damaged("a cell that stands there twice");
    this.#taken.add(key);
  }

  #valueOf({ type, value }: Draft, inline: string): Cell {
    if (type === "inlineStr") return inline;
    if (value === null) return null;
    switch (type) {
      case "s":
        return this.#shared(value);
      case "str":
        return unescapeText(value);
      case "b":
        return isTrue(value.trim());
      case "e":
        return { error: value.trim() };
      case "d":
        return dateIn(value);
      default:
        return this.#number(value);
    }
  }

  #shared(index: string): Cell {
    return this.#around.strings[Number(index)] ?? unreadable(`the shared text ${index}, which is missing`);
  }

  #number(text: string): Cell {
    if (text.trim() === "") return null;
    const number = Number(text);
    if (!(Math.abs(number) < LARGEST)) return unreadable(`${JSON.stringify(text.slice(0, 20))}, which is no number of a sheet`);
    return Math.abs(number) < SMALLEST ? 0 : number;
  }

  #damaged(what: string): UnreadableFile {
    return new UnreadableFile(`is damaged: its part ${this.#part} holds ${what}`);
  }
}

/** One odd cell does not spoil a workbook: it says itself what is wrong with it. */
const unreadable = (what: string): CellError => ({ error: "#VALUE!", message: `the file holds ${what}` });

/** A date, a time or both written out (ISO 8601) as a serial number: days since 30 December 1899. */
function dateIn(text: string): Cell {
  const written = text.trim();
  const isTime = /^T?\d\d:\d\d/.test(written);
  const whole = isTime ? `1899-12-30T${written.replace("T", "")}` : /T/.test(written) ? written : `${written}T00:00:00`;
  const at = Date.parse(/(?:Z|[+-]\d\d:\d\d)$/.test(whole) ? whole : `${whole}Z`);
  if (Number.isNaN(at)) return unreadable(`${JSON.stringify(text.slice(0, 30))}, which is no date`);
  return (at - Date.UTC(1899, 11, 30)) / 86_400_000;
}

const isTrue = (text: string | undefined): boolean => text === "1" || text === "true";
