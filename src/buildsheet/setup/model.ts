import type { DescribedSheets } from "../../sheet/described.ts";

/** A build sheet as data. */
export interface BuildSheet extends DescribedSheets {
  title: string;
}
