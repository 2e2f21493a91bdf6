import { areaText, type CellAddress } from "../../workbook/address.ts";
import { areasOf } from "../../workbook/areas.ts";
import { HostRefusal } from "../../workbook/port.ts";
import { asHostRefusal } from "./errors.ts";
import type { RunExcel } from "./host.ts";

/** A change that Excel is to make in one sync, with what is needed to take it back. */
export interface Change<Result = void> {
  /** Tells Excel what to do with the next sync; nothing where there is nothing to do. */
  order?(): void;
  result: Result;
  /** Makes everything as it was, as far as Excel lets it, and says what is left of the change; nothing when none. */
  takeBack(context: Excel.RequestContext): Promise<string>;
  /** Where to look when Excel no longer answers: `the cells Bores!B2:C3`. */
  where: string;
}

/**
 * Makes a change wholly or not at all. Excel stops at the first part of a sync that fails and leaves
 * done what came before it, so whatever went wrong, the workbook is looked at again and what is there
 * of the change is taken back; the sentence says what came of that.
 */
export async function changed<Result>(run: RunExcel, prepare: (context: Excel.RequestContext) => Promise<Change<Result>>): Promise<Result> {
  let begun: Change<Result> | undefined;
  try {
    return await run(async (context) => {
      const change = await prepare(context);
      if (!change.order) return change.result;
      begun = change;
      change.order();
      await context.sync();
      return change.result;
    });
  } catch (error) {
    const reason = asHostRefusal(error);
    if (!begun) throw reason;
    const left = await remaining(run, begun);
    throw reason instanceof HostRefusal ? new HostRefusal(`${reason.message} ${left}`, { cause: error }) : reason;
  }
}

async function remaining(run: RunExcel, { takeBack, where }: Change<unknown>): Promise<string> {
  try {
    return (await run(takeBack)) || "Nothing was changed.";
  } catch {
    return `What was done before that is not known, since Excel no longer answers: look at ${where}.`;
  }
}

/** Which of the cells have changed and which have not, as a sentence; none when no cell has. */
export function halfChanged(cells: readonly { cell: CellAddress; isChanged: boolean }[]): string {
  const those = (isChanged: boolean) => placesOf(cells.filter((one) => one.isChanged === isChanged).map(({ cell }) => cell));
  if (!cells.some(({ isChanged }) => isChanged)) return "";
  return `It could not be taken back. Changed: ${those(true)}. Not changed: ${those(false) || "none"}.`;
}

/** `Bores!B2:C3, Limits!A1` */
export function placesOf(cells: readonly CellAddress[]): string {
  const sheets = [...new Set(cells.map(({ sheet }) => sheet))];
  return sheets.flatMap((sheet) => areasOf(cells.filter((cell) => cell.sheet === sheet)).map((area) => areaText({ sheet, ...area }))).join(", ");
}
