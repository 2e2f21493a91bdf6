import type { ComponentType } from "preact";
import { recallLayout as recallWith } from "../../layout/recall.ts";
import type { SheetHost } from "../../workbook/port.ts";

/** What a view that is loaded on first use is given. */
export interface ViewProps {
  host: SheetHost;
  /** Changes of the sheet seen so far. */
  changes: number;
  /** To be called when another layout is kept in the workbook. */
  onLayout(): void;
  /** How often somebody has asked, elsewhere in the pane, for a layout to be proposed. */
  proposals: number;
}

export type LoadView = () => Promise<ComponentType<ViewProps>>;

/** Reads the layouts that workbooks keep. Its schemas are told first that the pane's policy lets nothing be compiled. */
async function loadLayouts() {
  await part(import("./no-eval.ts"));
  return part(import("../../layout/mapping.ts"));
}

/** A part did not come. Browsers remember that, so only a page loaded anew asks again. */
export class PartMissing extends Error {
  constructor() {
    super("This part of the pane could not be loaded. See that the address it comes from can be reached, then reload the pane.");
  }
}

export async function part<T>(loading: Promise<T>): Promise<T> {
  try {
    return await loading;
  } catch {
    throw new PartMissing();
  }
}

/** The layout of its own that a workbook keeps; `notes` say why one that is there cannot be used. */
export const recallShopLayout = (host: Pick<SheetHost, "loadText">) => recallWith(host, loadLayouts);
