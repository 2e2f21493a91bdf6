import type { WorkbookSpec } from "../workbook/sheet-spec.ts";

/** A build sheet as data. */
export interface BuildSheet extends WorkbookSpec {
  title: string;
}
