import type { ShopHead } from "./content.ts";

/** Most bytes of a picture that goes into a page. */
const MOST_BYTES = 1_500_000;

const isTooLarge = (base64: string): boolean => base64.length * 0.75 > MOST_BYTES;

/** How files begin, by their kind (PNG: ISO/IEC 15948, 5.2; JPEG: ISO/IEC 10918-1, B.1.1.3, SOI and the next marker). */
const KINDS: readonly (readonly [kind: string, first: readonly number[]])[] = [
  ["image/png", [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]],
  ["image/jpeg", [0xff, 0xd8, 0xff]],
];

/**
 * A picture file in Base64 as an address that holds it. Nothing where its bytes are no PNG and no JPEG, whatever it is
 * called: another kind could hold words for a browser to run. Nothing either where it is larger than a page should be.
 */
export function pictureAddress(base64: string | undefined): string | undefined {
  if (base64 === undefined || isTooLarge(base64) || !/^[A-Za-z0-9+/]+={0,2}$/.test(base64)) return undefined;
  const start = Array.from(atob(base64.slice(0, 16)), (sign) => sign.charCodeAt(0));
  const kind = KINDS.find(([, first]) => first.every((byte, i) => start[i] === byte))?.[0];
  return kind && `data:${kind};base64,${base64}`;
}

/** Why the shop's picture does not stand on the paper, in a clause; nothing where it does, or where there is none. */
export function pictureNote({ sheet, picture }: ShopHead): string | undefined {
  if (!picture || pictureAddress(picture) !== undefined) return undefined;
  const why = isTooLarge(picture) ? `is larger than ${MOST_BYTES / 1e6} MB` : "is neither a PNG nor a JPEG";
  return `the picture on the sheet ${sheet} ${why}, so the paper goes without it`;
}
