import type { Model } from "@odoo/o-spreadsheet";
import type { SheetHost } from "../workbook/port.ts";

/** What the bench's page leaves on its window for the pane in the frame, and for whoever drives the page. */
export interface Shared {
  /** The workbook that is open now. */
  host: SheetHost;
  /** The same, as the grid has it. */
  model: Model;
  /** For a file that is let go over the pane. */
  openFile(file: File): Promise<void>;
  /** For a key pressed in the pane. */
  save(): Promise<boolean>;
  /** Leads on from the pane to the next part of the page, or back. */
  goOn(isBack: boolean): void;
}

declare global {
  interface Window {
    crosshatchBench?: Shared;
  }
}
