import { areasOf, areaText, type CellAddress } from "../../workbook/address.ts";
import { HostRefusal } from "../../workbook/port.ts";

/** Runs a batch of requests in a context of its own, as `Excel.run` does. */
export type RunExcel = <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;

/** A change that Excel is to make in one sync, with what is needed to take it back. */
export interface UndoableEdit<Result = void> {
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
export async function makeEdit<Result>(run: RunExcel, prepare: (context: Excel.RequestContext) => Promise<UndoableEdit<Result>>): Promise<Result> {
  let begun: UndoableEdit<Result> | undefined;
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

async function remaining(run: RunExcel, { takeBack, where }: UndoableEdit<unknown>): Promise<string> {
  try {
    return (await run(takeBack)) || "Nothing was changed.";
  } catch {
    return `What was done before that is not known, since Excel no longer answers: look at ${where}.`;
  }
}

/** Which of the cells have changed and which have not, as a sentence; none when no cell has. */
export function halfChanged(cells: readonly { cell: CellAddress; isChanged: boolean }[]): string {
  const those = (isChanged: boolean) => areasText(cells.filter((one) => one.isChanged === isChanged).map(({ cell }) => cell));
  if (!cells.some(({ isChanged }) => isChanged)) return "";
  return `It could not be taken back. Changed: ${those(true)}. Not changed: ${those(false) || "none"}.`;
}

/** `Bores!B2:C3, Limits!A1` */
export function areasText(cells: readonly CellAddress[]): string {
  const sheets = [...new Set(cells.map(({ sheet }) => sheet))];
  return sheets.flatMap((sheet) => areasOf(cells.filter((cell) => cell.sheet === sheet)).map((area) => areaText({ sheet, ...area }))).join(", ");
}

/** Excel's codes that a person can do something about, in sentences. */
const SENTENCES: Record<string, string> = {
  AccessDenied: "Excel does not allow this here: a sheet or the workbook is protected, or open for reading only.",
  InvalidOperationInCellEditMode: "A cell is being typed into: finish it with Enter or leave it with Esc, then try again.",
  InvalidSelection: "Select one range of cells: several ranges at once, or a picture, are not read.",
  RequestPayloadSizeLimitExceeded: "This is more than Excel takes at once: try it on fewer cells.",
  ResponsePayloadSizeLimitExceeded:
    "This workbook is more than Excel hands over at once: check a copy with fewer sheets, or check the file with the command line.",
  UserCancelled: "Excel stopped this before it was done.",
};

/** Whatever Excel answered, as a refusal in a sentence; our own faults stay what they are. */
export function asHostRefusal(error: unknown): unknown {
  if (error instanceof HostRefusal) return error;
  const code = codeOf(error);
  if (code === undefined) return error;
  return new HostRefusal(SENTENCES[code] ?? `Excel could not do this: ${(error as Error).message} (${code})`, { cause: error });
}

/** Excel hands over no more than so much in one answer. */
export const isTooMuch = (error: unknown): boolean => codeOf(error) === "ResponsePayloadSizeLimitExceeded";

/** Errors of office.js carry a code of their own; a mistake in this program does not. */
function codeOf(error: unknown): string | undefined {
  if (!(error instanceof Error) || error.name !== "RichApi.Error") return undefined;
  const { code } = error as Error & { code?: unknown };
  return typeof code === "string" ? code : undefined;
}
