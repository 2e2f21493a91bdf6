import { UnreadableFile } from "../unreadable.ts";

/**
 * What kind of file the bytes are, told by their beginning, so that each wrong kind is refused by
 * its own name. Sources: PKWARE APPNOTE 4.3.6 (zip), [MS-CFB] 2.2 (compound file), [MS-OFFCRYPTO]
 * 2.3.4.4 (EncryptedPackage), [MS-XLS] 2.1.2 (Workbook stream).
 */
const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

/** Throws the refusal for anything that is not a zip archive. */
export function expectZip(bytes: Uint8Array): void {
  if (bytes.length === 0) throw new UnreadableFile("is empty");
  if (starts(bytes, COMPOUND)) throw new UnreadableFile(compoundReason(bytes));
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return;
  if (looksLikeText(bytes)) {
    throw new UnreadableFile("is a text file, not a workbook: if it holds readings separated by commas or semicolons, give it the ending .csv");
  }
  throw new UnreadableFile("is not an .xlsx workbook");
}

const starts = (bytes: Uint8Array, sign: readonly number[]): boolean => sign.every((byte, i) => bytes[i] === byte);

function compoundReason(bytes: Uint8Array): string {
  if (holdsName(bytes, "EncryptedPackage")) return "is protected by a password: open it, take the password off and save it again";
  if (holdsName(bytes, "Workbook") || holdsName(bytes, "Book")) return "is a workbook of the old .xls kind: save it as .xlsx";
  return "is an old Office file, not an .xlsx workbook";
}

/** A name in the compound file's directory: UTF-16, ended by a zero. */
function holdsName(bytes: Uint8Array, name: string): boolean {
  const wanted = [...name].flatMap((letter) => [letter.charCodeAt(0), 0]).concat(0, 0);
  for (let at = bytes.indexOf(wanted[0]!); at >= 0; at = bytes.indexOf(wanted[0]!, at + 1)) {
    if (wanted.every((byte, i) => bytes[at + i] === byte)) return true;
  }
  return false;
}

const LOOKED_AT = 4096;

function looksLikeText(bytes: Uint8Array): boolean {
  const marked = starts(bytes, [0xff, 0xfe]) || starts(bytes, [0xfe, 0xff]);
  return marked || bytes.subarray(0, LOOKED_AT).every((byte) => byte >= 32 || byte === 9 || byte === 10 || byte === 13);
}
