import type { Cell } from "../../src/core/cell.ts";
import type { CellAddress } from "../../src/workbook/address.ts";
import type { SheetHost, SheetPicture, WorkbookSnapshot } from "../../src/workbook/port.ts";
import type { Worn } from "./worn.ts";

/**
 * A cell of a workbook that the contract asks for: a value; a formula with the value that a host
 * without arithmetic is to show for it; a date by its serial number; or a cell that the formula
 * above or beside it fills, which a host that calculates leaves empty.
 */
export type ContractCell = Cell | { formula: string; value: Cell } | { date: number } | { spilled: Cell };

export interface ContractSheet {
  name: string;
  /** From A1. */
  cells: ContractCell[][];
}

/** A host under test, with the hands and eyes that a person at that host has. */
export interface Stage {
  host: SheetHost;
  /** Fill colour of a cell as `#RRGGBB`, `null` for none. */
  fill(cell: CellAddress): Promise<string | null>;
  /** The person colours a cell. */
  paint(cell: CellAddress, colour: string): Promise<void>;
  /** The person types into a cell. */
  type(cell: CellAddress, content: number | string): Promise<void>;
  /** A second host over the same workbook, as after the pane is closed and opened. */
  again(): Promise<SheetHost>;
  /** The person takes back one step; where the host has steps. */
  undo?(): Promise<void>;
  /** The person protects a sheet; where the host knows protection. */
  protect?(sheet: string): Promise<void>;
  /** The active cell, where the host has one. */
  selected?(): Promise<CellAddress>;
  /** What a sheet looks like, where the host keeps styles. */
  worn?(sheet: string): Promise<Worn>;
  /** The pictures in the workbook, where the host takes them. */
  pictures?(): Promise<{ corner: CellAddress; picture: SheetPicture }[]>;
  close?(): Promise<void>;
}

/** What formulas can call by name in the workbook; a host without tables is given none. */
export type Called = Pick<WorkbookSnapshot, "names" | "tables">;

export type Stagehand = (sheets: ContractSheet[], called?: Called) => Promise<Stage>;

/** The workbook that the contract opens. */
export const BOOK: ContractSheet[] = [
  {
    name: "Bores",
    cells: [
      ["Bore", "top", "bottom", null, "taper"],
      [1, 73.01, 73, null, { formula: "=HATCH.TAPER(B2:C2,1)", value: 0.01 }],
      [2, 73.04, null, null, { formula: "=HATCH.TAPER(B3:C3,1)", value: "" }],
      [3, true, { date: 45292 }, null, { formula: "=1/0", value: { error: "#DIV/0!" } }],
    ],
  },
  { name: "Empty", cells: [] },
  {
    name: "Summary 2",
    cells: [
      [null, null, null],
      [null, null, "sum"],
      [null, null, { formula: "=Bores!B2+Bores!C2", value: 146.01 }],
      [null, null, { formula: "=HATCH.PISTONCLEARANCE(73, 73.5)", value: { error: "#VALUE!" } }],
      [null, null, { formula: "=HATCH.TAPER({73.03,73.01;73,73},1)", value: 0.02 }],
      [null, null, { spilled: 0 }],
    ],
  },
];
