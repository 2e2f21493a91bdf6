import { isBlank } from "../../core/cell.ts";
import { counted } from "../../core/number-text.ts";
import type { BuildSheet } from "../../setup/model.ts";
import { sampleBuildSheet } from "../../setup/sample.ts";
import { isRefusal, type SheetHost, type WorkbookSnapshot } from "../../workbook/port.ts";

/** Puts a build sheet into sheets of its own, in one step; a host that has one of the names already refuses, and nothing is touched. */
export async function insert(host: SheetHost, book: BuildSheet): Promise<string> {
  const names = book.sheets.map(({ name }) => name);
  await host.addSheets(book);
  const added = `${counted(names.length, "new sheet")}: ${names.join(", ")}.`;
  try {
    await host.select({ sheet: names[0]!, row: 0, column: 0 });
    return added;
  } catch (error) {
    // They are there all the same.
    if (!isRefusal(error)) throw error;
    return `${added} They could not be brought into view: ${error.message}`;
  }
}

/** The sample, for an empty workbook only. */
export async function insertSample(host: SheetHost): Promise<string> {
  if (!isEmpty(await host.read())) return "This workbook holds something already, so no sample was put in. Set up adds sheets of your own beside it.";
  return `A sample was put in, with invented readings. ${await insert(host, sampleBuildSheet())} Press Check to see what it finds.`;
}

const isEmpty = ({ sheets }: WorkbookSnapshot): boolean =>
  sheets.every(({ values, formulas }) => values.flat().every(isBlank) && formulas.flat().every((formula) => formula === null));
