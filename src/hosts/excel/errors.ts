import { HostRefusal } from "../../workbook/port.ts";

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

/** Errors of office.js carry a code of their own; a mistake in this program does not. */
function codeOf(error: unknown): string | undefined {
  if (!(error instanceof Error) || error.name !== "RichApi.Error") return undefined;
  const { code } = error as Error & { code?: unknown };
  return typeof code === "string" ? code : undefined;
}
