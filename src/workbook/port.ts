import type { Cell } from "../core/cell.ts";
import type { CellAddress, CellArea, CellPosition } from "./address.ts";
import type { WorkbookSpec } from "./sheet-spec.ts";
import type { TablePlace } from "./table-references.ts";

export interface SheetSnapshot {
  name: string;
  /** Where the block starts: its top left cell. */
  row: number;
  column: number;
  /** Calculated values, row by row; errors as `{ error, message }`, blanks as `null`. */
  values: Cell[][];
  /** The formula with its `=` in names that people type (`=HATCH.TAPER(B3:C5)`), or `null`. Same shape as `values`. */
  formulas: (string | null)[][];
  /** Of a sheet that was calculated from its file: the results of our functions that the file keeps otherwise. Hosts that show what they calculate leave it out. */
  stored?: readonly StoredResult[];
}

/** What a file keeps as a result of one of our functions. */
export interface StoredResult {
  cell: CellPosition;
  /** Where the formula stands that gives it. */
  formulaAt: CellPosition;
  value: Cell;
}

/** A name that formulas use. */
export interface NameSnapshot {
  name: string;
  /** The sheet on which alone it counts; without one it counts on all. */
  sheet?: string;
  /** What it stands for, with its `=`: cells, a number, a formula. */
  formula: string;
}

/** A table, whose columns formulas call by their headings: `Limits[Upper]`. */
export interface TableSnapshot extends TablePlace {
  sheet: string;
}

export interface WorkbookSnapshot {
  name: string;
  sheets: SheetSnapshot[];
  /** As far as the host has them. */
  names?: NameSnapshot[];
  tables?: TableSnapshot[];
}

/** A block of values or formulas (text starting with `=`) to write; `null` leaves a cell as it is. */
export interface Edit {
  sheet: string;
  row: number;
  column: number;
  cells: (number | string | boolean | null)[][];
}

/** A picture for a sheet. */
export interface SheetPicture {
  name: string;
  /** The same in words, for those who do not see it. */
  description: string;
  /** A PNG file in Base64. */
  png: string;
  /** Its size in the sheet, in pixels of a screen at its usual size. */
  width: number;
  height: number;
}

export type MarkTone = "outside" | "doubt" | "near" | "fault";

export interface CellMark {
  cell: CellAddress;
  tone: MarkTone;
}

/** What only some hosts can do: each says of every one how it stands there, and the contract's tests go by that. */
export const ABILITIES = {
  "other names": "names of numbers, of formulas and of single sheets",
  tables: "tables, told with their names",
  styles: "styles, widths, frozen rows and columns, rules for typing, fills that repeat verdicts",
  "print set-up": "set-up for printing",
  pictures: "pictures",
  undo: "each act is one undo step",
  protection: "a protected sheet is refused",
  "active cell": "what is selected is shown",
} as const;

export type Ability = keyof typeof ABILITIES;

/** `left out` is passed over, and what else was asked is done; `refused` is a sentence, and nothing is done. */
export type Abilities = Readonly<Record<Ability, "yes" | "left out" | "refused">>;

/** What contributors should know of how a host does it, and how it does all or nothing of what is asked. */
export type AbilityNotes = Readonly<Partial<Record<Ability, string>> & { "all or nothing": string }>;

/**
 * The port between the tool and whatever holds the workbook: Excel, the bench, a file, memory. An
 * adapter translates only; it does no arithmetic, words no findings and sets no policy. Rows and
 * columns count from 0.
 */
export interface SheetHost {
  readonly abilities: Abilities;
  /** Everything on every sheet, in as few round trips as the host allows. */
  read(): Promise<WorkbookSnapshot>;
  /** Selects a cell or an area, whose first cell becomes the active one, and brings it into view. */
  select(place: CellAddress | CellArea): Promise<void>;
  /** Lets the next keys go to the sheet, where the host can do that: beside Excel a pane cannot. */
  takeKeys?(): void;
  /** The cells that are selected; of several areas the one that was selected last, where the host tells. */
  selection(): Promise<CellArea>;
  /**
   * Adds sheets behind the others, in this order, with all that is described, as one undoable step as far
   * as the host has steps for it; refuses, and adds none, when a name is taken.
   */
  addSheets(added: WorkbookSpec): Promise<void>;
  /** Writes all edits as one undoable step, or none of them. */
  write(edits: readonly Edit[]): Promise<void>;
  /** Puts a picture into a sheet, its top left corner in that of the cell, as one undoable step. */
  insertPicture(corner: CellAddress, picture: SheetPicture): Promise<void>;
  /** The file of the picture that stands first on a sheet, from above and from the left, in Base64; `null` where there is none, or the host does not tell. Whatever kind of file it is. */
  firstPicture(sheet: string): Promise<string | null>;
  /** Colours the marked cells as one undoable step and remembers what they looked like; takes earlier marks off first. */
  mark(marks: readonly CellMark[]): Promise<void>;
  /** Gives every marked cell its earlier look back as one step; says how many there were. */
  unmark(): Promise<number>;
  /** Whether the workbook remembers marked cells, also of a pane that was open before. */
  hasMarks(): Promise<boolean>;
  /** Calls `changed` after cells change; returns how to stop. */
  watch(changed: () => void): Promise<() => void>;
  /** Text kept inside the workbook under a key of ours; `null` when there is none. */
  loadText(key: string): Promise<string | null>;
  storeText(key: string, value: string): Promise<void>;
}

/** The host would not do it: a protected sheet, a sheet that is gone. The message is a whole sentence for people. */
export class HostRefusal extends Error {
  /** Tells a refusal from a fault of ours also where the host lives in another page and has a class of its own. */
  override readonly name = "HostRefusal";
}

export const isRefusal = (error: unknown): error is HostRefusal => (error as HostRefusal | null)?.name === "HostRefusal";

/** Fill colours of marks, one place for every adapter. The words stand in the pane; colour only repeats them. */
export const MARK_FILL: Record<MarkTone, string> = {
  outside: "#F4B6B0",
  doubt: "#F6DFA4",
  near: "#D9E6F5",
  fault: "#BDB4E8",
};
