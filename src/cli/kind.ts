import { extname } from "node:path";
import { STANDARD_INPUT } from "./checked.ts";

/**
 * How a file is read, by its ending. A workbook with macros (.xlsm) is one like any other: they are never
 * run, and its marked copy keeps them byte for byte.
 */
export function kindOf(file: string): string {
  if (file === STANDARD_INPUT) return ".csv";
  const ending = extname(file).toLowerCase();
  return ending === ".xlsm" ? ".xlsx" : ending;
}
