import type { Fingerprint } from "../../report/content.ts";
import type { WorkbookSnapshot } from "../../workbook/port.ts";

/**
 * What the workbook was, by its sheets, values and formulas: a host hands over no file. Nothing
 * where the page is served in a way in which browsers lend no hash.
 */
export async function fingerprintOf(workbook: Pick<WorkbookSnapshot, "sheets">): Promise<Fingerprint | undefined> {
  if (!globalThis.crypto?.subtle) return undefined;
  const hash = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(contentsText(workbook)));
  return { of: "contents", sha256: [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, "0")).join("") };
}

/** Cells with their place. Blank ones are left out: how far a host says that a sheet reaches can change by a fill alone. */
function contentsText({ sheets }: Pick<WorkbookSnapshot, "sheets">): string {
  return JSON.stringify(
    sheets.map(({ name, row, column, values, formulas }) => [
      name,
      values.flatMap((line, r) =>
        line.flatMap((value, c) => {
          const formula = formulas[r]?.[c] ?? null;
          const held = value === undefined || value === "" ? null : value;
          return held === null && formula === null ? [] : [[row + r, column + c, held, formula]];
        }),
      ),
    ]),
  );
}
