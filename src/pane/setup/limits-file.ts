import { type LimitsModel, modelsIn } from "../../setup/limits-book.ts";
import { HostRefusal } from "../../workbook/port.ts";
import { mustFit, UnreadableFile } from "../../xlsx/file-limits.ts";
import { readXlsx, storedSnapshot } from "../../xlsx/read/read.ts";

/** The engine models of a limits book, an .xlsx as it was saved. Read here, sent nowhere. */
export async function modelsOfFile(file: File): Promise<LimitsModel[]> {
  try {
    mustFit(file.size);
    const models = modelsIn(storedSnapshot(readXlsx(new Uint8Array(await file.arrayBuffer())), file.name).sheets);
    if (models.length === 0) throw new HostRefusal(`${file.name} holds no table of limits: it needs the headings Characteristic, Lower, Upper and Unit.`);
    return models;
  } catch (error) {
    throw error instanceof UnreadableFile ? new HostRefusal(`${file.name} ${error.reason}.`) : error;
  }
}
