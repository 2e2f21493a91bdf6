import type { ReportInput } from "../../report/content.ts";
import { reportInput, withPicture } from "../../report/gather/workbook.ts";
import type { SheetHost, WorkbookSnapshot } from "../../workbook/port.ts";
import { recallShopLayout } from "../parts/loading.ts";

/** The workbook as it stands, with what can be drawn and reported of it. */
export async function workbookContent(host: SheetHost): Promise<{ snapshot: WorkbookSnapshot; input: ReportInput }> {
  const [snapshot, { mapping, notes }] = await Promise.all([host.read(), recallShopLayout(host)]);
  const input = reportInput(snapshot, mapping, notes);
  const pictured = await withPicture(input.content, host);
  return { snapshot, input: { ...input, content: pictured.content, notes: [...input.notes, ...pictured.notes] } };
}
