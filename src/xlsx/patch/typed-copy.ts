import type { Cell } from "../../core/cell.ts";
import { keyOf } from "../../workbook/address.ts";
import type { Edit } from "../../workbook/port.ts";
import { FILE_LIMITS } from "../file-limits.ts";
import type { CalculatedWorkbook, WorkbookFile } from "../model.ts";
import { readStrings, readWorkbookPart, relationsOf, workbookPath } from "../read/parts.ts";
import { Zip } from "../zip.ts";
import { valueChanges } from "./cell-values.ts";
import { Package } from "./package.ts";
import { patchSheet } from "./worksheet.ts";

/**
 * The file with values typed into cells without a formula, and with what its formulas come to then: `book` and
 * `calculated` are the workbook after the edits. All else keeps every byte.
 */
export function typedCopy(bytes: Uint8Array, edits: readonly Edit[], { book, calculated }: { book: WorkbookFile; calculated: CalculatedWorkbook }): Uint8Array {
  const zip = new Zip(bytes, FILE_LIMITS);
  const files = new Package(bytes, zip);
  const path = workbookPath(zip, FILE_LIMITS);
  const related = relationsOf(zip, path, FILE_LIMITS);
  const texts = related.find(({ kind }) => kind === "sharedStrings")?.target;
  let strings: string[] | undefined;
  const shared = (index: number): string | undefined => {
    strings ??= texts === undefined ? [] : readStrings(zip.read(texts)!, texts, FILE_LIMITS);
    return strings[index];
  };
  for (const { name, relation } of readWorkbookPart(zip.read(path)!, path, FILE_LIMITS).sheets) {
    const part = related.find(({ id, kind }) => id === relation && kind === "worksheet")?.target;
    const at = book.sheets.findIndex((sheet) => sheet.name === name);
    if (part === undefined || at < 0) continue;
    const changes = { ...valueChanges(book, at, calculated), restyled: new Set<number>() };
    for (const edit of edits) if (edit.sheet === name) for (const [key, value] of valuesOf(edit)) changes.values.set(key, value);
    if (changes.values.size > 0) files.change(part, (old) => patchSheet(old, part, changes, { restyle: (_, style) => style, shared }).part);
  }
  return files.written();
}

/** Blank text empties a cell. */
function* valuesOf({ row, column, cells }: Edit): Generator<[key: number, value: Cell]> {
  for (const [r, line] of cells.entries())
    for (const [c, cell] of line.entries()) if (cell !== null) yield [keyOf({ row: row + r, column: column + c }), cell === "" ? null : cell];
}
