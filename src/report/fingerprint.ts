import type { WorkbookSnapshot } from "../sheet/sheet-host.ts";
import type { Fingerprint } from "./content.ts";

/** SHA-256 as the surroundings have it: `(bytes) => crypto.subtle.digest("SHA-256", bytes)`. */
export type Digest = (bytes: Uint8Array<ArrayBuffer>) => Promise<ArrayBuffer>;

/** Of a file byte by byte, or, where the host has none, of everything that stands in the workbook's cells. */
export async function fingerprintOf(input: Uint8Array<ArrayBuffer> | WorkbookSnapshot, digest: Digest): Promise<Fingerprint> {
  const isFile = input instanceof Uint8Array;
  const sum = new Uint8Array(await digest(isFile ? input : new TextEncoder().encode(contentsText(input))));
  return { sha256: [...sum].map((byte) => byte.toString(16).padStart(2, "0")).join(""), of: isFile ? "file" : "contents" };
}

/** The same text for the same contents: sheets in their order, cells with their place, blank ones left out. */
export function contentsText({ sheets }: Pick<WorkbookSnapshot, "sheets">): string {
  return JSON.stringify(
    sheets.map(({ name, row, column, values, formulas }) => [
      name,
      values.flatMap((line, r) =>
        line.flatMap((value, c) => {
          const formula = formulas[r]?.[c] ?? null;
          return value === null || value === undefined || value === ""
            ? formula === null
              ? []
              : [[row + r, column + c, null, formula]]
            : [[row + r, column + c, value, formula]];
        }),
      ),
    ]),
  );
}
