import type { DescribedSheets } from "../workbook/sheet-spec.ts";

/** A build sheet as data. */
export interface BuildSheet extends DescribedSheets {
  title: string;
}
