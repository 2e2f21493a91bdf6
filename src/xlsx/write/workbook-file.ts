import type { Result } from "../../core/cell.ts";
import type { Rectangle } from "../../workbook/address.ts";
import type { CellSpec, CellStyle, SheetSpec, WorkbookSpec } from "../../workbook/sheet-spec.ts";
import type { StyleParts } from "../../workbook/styles.ts";

/** A workbook as data, with what only a file holds beside it: its title, and what formulas came to before it was written. */
export interface NewWorkbookFile extends Omit<WorkbookSpec, "sheets"> {
  title: string;
  sheets: readonly NewSheetFile[];
}

export interface NewSheetFile extends Omit<SheetSpec, "cells"> {
  cells: readonly FileCell[];
  /** Heights of rows in points, where they are not as high as usual. */
  heights?: ReadonlyMap<number, number>;
  /** Cells that are shaded while the formula holds, which is written for the first of them. */
  shaded?: { area: Rectangle; formula: string };
}

export interface FileCell extends Omit<CellSpec, "style"> {
  style: CellStyle | FileStyle;
  /** What the formula comes to, for programs that do not calculate it. */
  value?: Result;
  /** The block that an array formula fills from this cell on; the other cells of the block stand for themselves. */
  block?: { rows: number; columns: number };
  /** The content is text, even where it starts with `=`. */
  isText?: boolean;
}

export interface FileStyle extends StyleParts {
  /** At the top of its height. */
  isTop?: true;
}
