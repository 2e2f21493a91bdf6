import { type Cell, isBlank, isErrorCode } from "../core/cell.ts";
import { CHECK_PREFIX } from "../core/sentences.ts";
import { VERDICTS } from "../core/verdict.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import type { ReadingField } from "../vocabulary/heading-words.ts";
import { fieldOf, isJudging } from "../vocabulary/headings.ts";
import { isOfEntry } from "../vocabulary/identity.ts";
import { knownCharacteristic } from "../vocabulary/subjects.ts";
import { unitIn, withoutUnits } from "../vocabulary/units.ts";
import type { CellAddress } from "../workbook/address.ts";

/** Text cells at the head of a row that name it. */
const MOST_NAMES = 3;
/** Text as short as this says little without its heading. */
const LONGEST_BARE = 2;

/** A bare number or letter takes its heading along. */
const nameOf = ({ text, heading }: NameParts["row"][number]): string => (heading && text.length <= LONGEST_BARE ? `${heading} ${text}` : text);

const VERDICT_WORDS = new Set<string>(VERDICTS);

/** `73,02` and `0.3 mm` are readings that somebody typed as text: they name nothing beside or below them. */
const isReadingAsText = (text: string): boolean => /^[+-]?[\d.,]/.test(text) && /^[+-]?\d*[.,]\d+$/.test(withoutUnits(text).trim());

/** What names a cell: text at the head of its row, each with the heading that it stands under, and the cell's own heading. */
export interface NameParts {
  row: { cell: CellAddress; text: string; heading: string | undefined }[];
  heading: string | undefined;
}

/** Names cells in the sheet's own words. */
export class SheetLabels {
  /** By column: for each row the row of the heading above it, or −1. */
  readonly #headings = new Map<string, Int32Array>();
  /** By column: the cells without a blank between them that were looked at last, for the next of them. */
  readonly #runs = new Map<string, { top: number; end: number; hasReading: boolean }>();

  constructor(readonly book: WorkbookCells) {}

  /** What a cell is: `Cylinder 1, top, Thrust`. */
  of(cell: CellAddress): string {
    const { row, heading } = this.partsOf(cell);
    return [...row.map(nameOf), ...(heading ? [heading] : [])].join(", ");
  }

  /** What the row of a cell is: `Cylinder 1, Inlet 2`. */
  rowOf(cell: CellAddress): string {
    return this.partsOf(cell).row.map(nameOf).join(", ");
  }

  /** The text above a cell that is nearest to it. */
  headingOf(cell: CellAddress): string | undefined {
    const head = this.#headingRow(cell);
    return head < 0 ? undefined : this.#nameAt({ sheet: cell.sheet, row: head, column: cell.column });
  }

  partsOf(cell: CellAddress): NameParts {
    const { sheet, column } = cell;
    const head = this.#headingRow(cell);
    const heading = this.headingOf(cell);
    const first = this.#leftEdge(head < 0 ? cell : { sheet, row: head, column });
    return { row: this.#namesOf(cell, first, head), heading: heading && !isJudging(heading) && !isOfEntry(heading) ? heading : undefined };
  }

  /** Text that a person typed to name something: no formula, no verdict that spilled there. */
  #nameAt(cell: CellAddress): string | undefined {
    const value = this.book.value(cell);
    if (typeof value !== "string" || this.book.formula(cell) !== null) return undefined;
    const text = value.trim();
    const isNone =
      text === "" ||
      VERDICT_WORDS.has(text) ||
      text.startsWith(CHECK_PREFIX) ||
      isErrorCode(text) ||
      isReadingAsText(text) ||
      this.#isAmongReadings(text, cell);
    return isNone ? undefined : text;
  }

  /** `73.02 worn` in a column of readings is one of them; `0.25 over` above a column, or in one of such names, is none. */
  #isAmongReadings(text: string, { sheet, row, column }: CellAddress): boolean {
    const at = (r: number): Cell => (r < 0 ? null : this.book.value({ sheet, row: r, column }));
    if (!/^[+-]?\d*[.,]\d/.test(text) || isBlank(at(row - 1))) return false;
    const place = `${column},${sheet}`;
    const known = this.#runs.get(place);
    if (known && known.top <= row && row < known.end) return known.hasReading;
    const run = { top: row, end: row + 1, hasReading: false };
    const look = (value: Cell): void => {
      if (typeof value === "number" && !Number.isInteger(value)) run.hasReading = true;
    };
    for (; !isBlank(at(run.top - 1)); run.top--) look(at(run.top - 1));
    for (; !isBlank(at(run.end)); run.end++) look(at(run.end));
    this.#runs.set(place, run);
    return run.hasReading;
  }

  #headingRow({ sheet, row, column }: CellAddress): number {
    const place = `${column},${sheet}`;
    let rows = this.#headings.get(place);
    if (!rows) {
      const page = this.book.sheet(sheet);
      rows = new Int32Array(page ? page.row + page.values.length + 1 : 0);
      let last = -1;
      let areEntries = false;
      for (let r = 0; r < rows.length; r++) {
        rows[r] = last;
        // What is typed beside the names of entries heads nothing below it.
        areEntries &&= column > 0 && !isBlank(this.book.value({ sheet, row: r, column: column - 1 }));
        const text = areEntries ? undefined : this.#nameAt({ sheet, row: r, column });
        if (text === undefined) continue;
        last = r;
        areEntries = isOfEntry(text);
      }
      this.#headings.set(place, rows);
    }
    return rows[row] ?? -1;
  }

  /** Where the table that the cell stands in begins: the first cell of the unbroken run to its left. */
  #leftEdge({ sheet, row, column }: CellAddress): number {
    let edge = column;
    while (edge > 0 && !isBlank(this.book.value({ sheet, row, column: edge - 1 }))) edge--;
    return edge;
  }

  /** The cells at the head of the row that say whose it is. */
  #namesOf({ sheet, row, column }: CellAddress, first: number, head: number): NameParts["row"] {
    const names: NameParts["row"] = [];
    for (let c = first; c < column && names.length < MOST_NAMES; c++) {
      const cell = { sheet, row, column: c };
      const heading = head < 0 ? undefined : this.#nameAt({ sheet, row: head, column: c });
      const text = this.#nameAt(cell) ?? this.#ordinal(cell, head, heading);
      if (text === undefined || (heading === undefined && !/\p{L}/u.test(text))) break;
      names.push({ cell, text, heading });
    }
    return names;
  }

  /** A whole number that counts cylinders, heights and the like; a reading that happens to be whole names nothing. */
  #ordinal(cell: CellAddress, head: number, heading: string | undefined): string | undefined {
    if (!this.#isCount(cell) || (heading !== undefined && isOfReadings(heading))) return undefined;
    if (head >= 0 && !this.#areCounts(cell, head)) return undefined;
    return String(this.book.value(cell));
  }

  #isCount(cell: CellAddress): boolean {
    const value = this.book.value(cell);
    return typeof value === "number" && Number.isInteger(value) && this.book.formula(cell) === null;
  }

  /** Whether the numbers below the heading are all whole, down to the first row that is no longer the table's. */
  #areCounts({ sheet, row, column }: CellAddress, head: number): boolean {
    const isNumber = (r: number): boolean => typeof this.book.value({ sheet, row: r, column }) === "number";
    for (let r = head + 1; r <= row || isNumber(r); r++) if (isNumber(r) && !this.#isCount({ sheet, row: r, column })) return false;
    return true;
  }
}

const OF_NUMBERS: readonly (ReadingField | undefined)[] = ["value", "lower", "upper", "uncertainty", "near", "hours"];

/** Whether numbers under the heading are measured or typed for what they say, in whole units or not. */
const isOfReadings = (heading: string): boolean =>
  OF_NUMBERS.includes(fieldOf(heading)) || knownCharacteristic(heading) !== undefined || unitIn(heading) !== undefined;
