import type { Fingerprint } from "../../report/content.ts";
import type { WorkbookSnapshot } from "../../sheet/sheet-host.ts";

/**
 * What the workbook was, by its sheets, values and formulas: a host hands over no file. Nothing
 * where the page is served in a way in which browsers lend no hash.
 */
export async function fingerprintOf({ sheets }: WorkbookSnapshot): Promise<Fingerprint | undefined> {
  if (!globalThis.crypto?.subtle) return undefined;
  const contents = sheets.map(({ name, row, column, values, formulas }) => [name, row, column, values, formulas]);
  const hash = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(JSON.stringify(contents)));
  return { of: "contents", sha256: [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, "0")).join("") };
}
