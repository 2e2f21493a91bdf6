import { readFileSync } from "node:fs";

const [first, ...later] = readFileSync(new URL("excel-functions.txt", import.meta.url), "utf8")
  .split(/^#.*$/m)
  .slice(1)
  .map((names) => names.trim().split(/\s+/));

/** Names of Excel's functions; the file says where they are from. */
export const EXCEL_FUNCTIONS: { first: readonly string[]; later: readonly string[] } = { first: first!, later: later.flat() };
