import type { CellAddress } from "./address.ts";

/**
 * Texts kept inside a workbook, as one custom XML part: its own namespace, and inside it one JSON
 * object of key and text. Read and written as text, because neither a pane nor the command line
 * needs an XML parser for one element.
 */
export const STORAGE_NAMESPACE = "urn:crosshatch:kept";

/** The key under which a workbook remembers its marked cells, whichever host marked them. */
export const MARKED = "marked";

/** The key under which a workbook remembers the name of the sheet that lists the findings. */
export const FINDINGS_SHEET = "findings";

/** A marked cell as it is remembered; a host may remember more of it, which the others hand on. */
export interface StoredMark {
  cell: CellAddress;
  /** The fill before the mark, `null` for none, and that of the mark. */
  before: string | null;
  mark: string;
}

/** The marks in what is kept; what cannot be read is no memory. */
export function storedMarks(texts: ReadonlyMap<string, string>): StoredMark[] {
  try {
    const marks: unknown = JSON.parse(texts.get(MARKED) ?? "[]");
    return Array.isArray(marks) ? marks.filter(isMark) : [];
  } catch {
    return [];
  }
}

function isMark(given: unknown): given is StoredMark {
  const { cell, before, mark } = (given ?? {}) as Partial<StoredMark>;
  const isPlace = typeof cell?.sheet === "string" && Number.isInteger(cell.row) && cell.row >= 0 && Number.isInteger(cell.column) && cell.column >= 0;
  return isPlace && typeof mark === "string" && (before === null || typeof before === "string");
}

export function storageXml(texts: ReadonlyMap<string, string>): string {
  const json = JSON.stringify(Object.fromEntries([...texts].filter(([key]) => key !== LAYOUT_ON_SHEET)));
  return `<kept xmlns="${STORAGE_NAMESPACE}">${json.replace(/[&<>]/g, (sign) => ESCAPED[sign]!)}</kept>`;
}

/** Empty for a part that is not one of ours, or no longer readable. */
export function storedTextsIn(xml: string): Map<string, string> {
  const inside = /<(?:\w+:)?kept\b[^>]*>([\s\S]*)<\/(?:\w+:)?kept>/.exec(xml)?.[1];
  if (inside === undefined) return new Map();
  try {
    const read: unknown = JSON.parse(inside.replace(ENTITY, (whole, name: string) => character(name) ?? whole));
    return typeof read === "object" && read !== null ? new Map(Object.entries(read).map(([key, text]) => [key, String(text)])) : new Map();
  } catch {
    return new Map();
  }
}

const ESCAPED: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;" };

const ENTITY = /&(#x[\da-f]+|#\d+|\w+);/gi;

const NAMED: Record<string, string> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

function character(name: string): string | undefined {
  if (!name.startsWith("#")) return Object.hasOwn(NAMED, name) ? NAMED[name] : undefined;
  const code = name[1]?.toLowerCase() === "x" ? Number.parseInt(name.slice(2), 16) : Number(name.slice(1));
  return code <= 0x10ffff ? String.fromCodePoint(code) : undefined;
}

/** The key under which a workbook keeps what people typed and chose in the pane; apart, for whoever needs the key alone. */
export const PANE_KEY = "pane";

/** The key under which a workbook keeps a layout of its own; apart from the layouts, so that looking for one loads nothing else. */
export const LAYOUT_KEY = "layout";

/**
 * The key of the layout that stands once more on a hidden sheet of its own, which programs carry along that drop
 * custom XML parts. It is never kept among the other texts: each host reads it from that sheet and writes it there.
 */
export const LAYOUT_ON_SHEET = "layout on a sheet";
