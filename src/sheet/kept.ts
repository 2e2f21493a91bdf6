/**
 * Texts kept inside a workbook, as one custom XML part: its own namespace, and inside it one JSON
 * object of key and text. Read and written as text, because neither a pane nor the command line
 * needs an XML parser for one element.
 */
export const KEPT_NAMESPACE = "urn:crosshatch:kept";

export function keptXml(texts: ReadonlyMap<string, string>): string {
  const json = JSON.stringify(Object.fromEntries(texts));
  return `<kept xmlns="${KEPT_NAMESPACE}">${json.replace(/[&<>]/g, (sign) => ESCAPED[sign]!)}</kept>`;
}

/** Empty for a part that is not one of ours, or no longer readable. */
export function keptFrom(xml: string): Map<string, string> {
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
  if (!name.startsWith("#")) return NAMED[name];
  const code = name[1]?.toLowerCase() === "x" ? Number.parseInt(name.slice(2), 16) : Number(name.slice(1));
  return code <= 0x10ffff ? String.fromCodePoint(code) : undefined;
}
