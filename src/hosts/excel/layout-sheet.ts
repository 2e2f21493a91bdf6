import type { Cell } from "../../core/cell.ts";
import { LAYOUT_SHEET, layoutCells, layoutInCells } from "../../workbook/layout-sheet.ts";
import type { UndoableEdit } from "./change.ts";

interface LayoutSheet {
  /** Nothing where no sheet has the name. */
  sheet: Excel.Worksheet | undefined;
  /** What it holds; nothing where it is another one. */
  layout: string | undefined;
}

/** One sync, or two where a sheet has the name. */
async function layoutSheetIn(context: Excel.RequestContext): Promise<LayoutSheet> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(LAYOUT_SHEET);
  sheet.load("name");
  await context.sync();
  if (sheet.isNullObject) return { sheet: undefined, layout: undefined };
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load("values,rowIndex,columnIndex");
  await context.sync();
  const isFromStart = !used.isNullObject && used.rowIndex + used.columnIndex === 0;
  return {
    sheet,
    layout: isFromStart
      ? layoutInCells(
          LAYOUT_SHEET,
          (used.values as Cell[][]).map(([cell]) => cell ?? null),
        )
      : undefined,
  };
}

export const loadLayoutSheet = async (context: Excel.RequestContext): Promise<string | null> => (await layoutSheetIn(context)).layout ?? null;

/** Writes the layout on its sheet, very hidden; an empty one takes the sheet away. A person's own sheet of that name stays as it is. */
export async function storeLayoutSheet(context: Excel.RequestContext, layout: string): Promise<UndoableEdit> {
  const there = await layoutSheetIn(context);
  const isForeign = there.sheet !== undefined && there.layout === undefined;
  return {
    result: undefined,
    where: `the hidden sheet ${LAYOUT_SHEET}`,
    ...(isForeign || (there.layout ?? "") === layout ? {} : { order: () => put(context, there, layout) }),
    takeBack: async (again) => {
      const now = await layoutSheetIn(again);
      if (now.layout === there.layout) return "";
      put(again, now, there.layout ?? "");
      await again.sync();
      return (await layoutSheetIn(again)).layout === there.layout ? "" : `The hidden sheet ${LAYOUT_SHEET} may hold the new layout.`;
    },
  };
}

/** Puts the layout there with the next sync. */
function put(context: Excel.RequestContext, { sheet, layout: before = "" }: LayoutSheet, layout: string): void {
  if (layout === "") {
    if (!sheet) return;
    // A very hidden sheet cannot be deleted (Office.js, Worksheet.delete).
    sheet.visibility = "Hidden";
    sheet.delete();
    return;
  }
  const cells = layoutCells(layout);
  // Cells of a longer layout are emptied.
  const blanks: string[] = new Array(Math.max(0, layoutCells(before).length - cells.length)).fill("");
  const target = sheet ?? context.workbook.worksheets.add(LAYOUT_SHEET);
  target.getRangeByIndexes(0, 0, cells.length + blanks.length, 1).formulas = [...cells, ...blanks].map((text) => [text]);
  if (!sheet) target.visibility = "VeryHidden";
}
