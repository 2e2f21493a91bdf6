import { roughCount } from "../core/number-text.ts";
import { FILE_LIMITS, type FileLimits, UnreadableFile } from "../xlsx/file-limits.ts";
import { withoutLayoutSheet } from "../xlsx/layout-sheet.ts";
import type { Table, WorkbookFile } from "../xlsx/model.ts";
import { rectangleIn } from "../xlsx/model.ts";
import { readXml, type XmlLanguage } from "../xlsx/xml.ts";
import { type Unpack, Zip } from "../xlsx/zip.ts";
import { ContentReader } from "./content.ts";

const CONTENT = "content.xml";
const KIND = "application/vnd.oasis.opendocument.spreadsheet";

const BASE = "urn:oasis:names:tc:opendocument:xmlns:";
/** What a sheet's content is written in. Pictures, forms and what programs add of their own are passed over. */
const PREFIXES: Readonly<Record<string, string>> = {
  [`${BASE}office:1.0`]: "office",
  [`${BASE}table:1.0`]: "table",
  [`${BASE}text:1.0`]: "text",
  [`${BASE}style:1.0`]: "style",
  "urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0": "calcext",
};

/** Elements by their local names; attributes with the usual prefix of their namespace, whatever the file calls it. */
const LANGUAGE: XmlLanguage = {
  isOwn: (uri) => uri in PREFIXES,
  attributesOf(tag) {
    const found: Record<string, string> = {};
    for (const key in tag.attributes) {
      const { local, uri, value } = tag.attributes[key]!;
      if (PREFIXES[uri]) found[`${PREFIXES[uri]}:${local}`] = value;
    }
    return found;
  },
};

/** True for an archive that is an OpenDocument file, of whatever kind; what is no archive is left to the other reader's refusals. */
export function isOpenDocument(bytes: Uint8Array): boolean {
  try {
    const zip = new Zip(bytes, FILE_LIMITS);
    return zip.has("mimetype") && zip.has(CONTENT);
  } catch {
    return false;
  }
}

/**
 * Reads an .ods (OASIS OpenDocument 1.3) into the same plain data as an .xlsx, within the same limits.
 * What cannot be read is refused with the reason; a formula that has no other spelling keeps its value,
 * and says why it is not calculated.
 */
export function readOds(bytes: Uint8Array, limits: FileLimits = FILE_LIMITS, unpack?: Unpack): WorkbookFile {
  const zip = new Zip(bytes, limits, unpack);
  const kind = new TextDecoder().decode(zip.read("mimetype"));
  if (!kind.startsWith(KIND)) throw new UnreadableFile("is an OpenDocument file, but no spreadsheet");
  const manifest = new TextDecoder().decode(zip.read("META-INF/manifest.xml"));
  if (manifest.includes("encryption-data")) throw new UnreadableFile("is protected by a password: open it, take the password off and save it again");
  const reader = new ContentReader(limits);
  readXml(zip.read(CONTENT)!, CONTENT, limits.depth, reader, LANGUAGE);
  const { sheets, names, ranges, from1904 } = reader.result();
  if (sheets.length > limits.sheets) throw new UnreadableFile(`has ${roughCount(sheets.length)} sheets, and at most ${roughCount(limits.sheets)} are read`);
  const tables = ranges.flatMap(({ name, address }): Table[] => {
    const [, quoted, plain, range] = /^(?:'((?:[^']|'')*)'|(.+))!(.*)$/.exec(address) ?? [];
    const sheet = sheets.findIndex((one) => one.name === (quoted?.replaceAll("''", "'") ?? plain));
    if (sheet < 0) return [];
    const area = rectangleIn(range!.replaceAll("$", ""), CONTENT);
    const headings = sheets[sheet]!.cells.filter(({ row, column }) => row === area.row && column >= area.column && column < area.column + area.columns);
    const columns = Array.from({ length: area.columns }, (_, i) => String(headings.find(({ column }) => column === area.column + i)?.value ?? ""));
    return [{ name, sheet, area, headerRows: 1, totalsRows: 0, columns }];
  });
  tables.sort((a, b) => a.sheet - b.sheet || a.area.row - b.area.row || a.area.column - b.area.column);
  return withoutLayoutSheet({ sheets, names, tables, from1904, storedTexts: new Map() });
}
