import { extname } from "node:path";
import { excelForm } from "../xlsx/patch/excel-form.ts";
import { ALL_WELL, Refusal } from "./exit-codes.ts";
import { refuseAsInput } from "./inputs.ts";
import { countText, print, printable } from "./output.ts";
import { whyUnread, workbookBytes } from "./read-file.ts";
import { put } from "./safe-file.ts";
import { unpack } from "./unpack.ts";

/** `crosshatch for-excel IN.xlsx OUT.xlsx`: a workbook that LibreOffice has saved, in the form in which Excel stores our functions. */
export async function forExcel(file: string, out: string, { force = false }: { force?: boolean }): Promise<number> {
  if (extname(file).toLowerCase() === ".ods") throw new Refusal(`${file} is an OpenDocument file: open it in LibreOffice and use Save a copy for Excel there`);
  if (extname(out).toLowerCase() !== ".xlsx") throw new Refusal(`${out} does not end with .xlsx, which is what is written`);
  refuseAsInput(out, [file], "the copy");
  const { bytes, formulas } = await made(file);
  put(out, bytes, force);
  await print(`${printable(out)}: ${countText(formulas, "formula of ours", "formulas of ours")} as Excel stores them.`);
  return ALL_WELL;
}

async function made(file: string): Promise<ReturnType<typeof excelForm>> {
  try {
    return excelForm(await workbookBytes(file), unpack);
  } catch (error) {
    throw new Refusal(`${printable(file)} ${whyUnread(error)}`);
  }
}
