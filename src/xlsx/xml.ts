import { SaxesParser, type SaxesTagNS } from "saxes";
import { UnreadableFile } from "./file-limits.ts";

/** The namespaces of a workbook's own elements, in the two forms of the standard (ECMA-376 and its strict form, ISO/IEC 29500). */
const MAIN = new Set(["http://schemas.openxmlformats.org/spreadsheetml/2006/main", "http://purl.oclc.org/ooxml/spreadsheetml/main"]);
const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";
const RELATION = new Set(["http://schemas.openxmlformats.org/officeDocument/2006/relationships", "http://purl.oclc.org/ooxml/officeDocument/relationships"]);

/** Elements of a workbook, or of the relations between its parts. */
export const isOwn = (uri: string): boolean => MAIN.has(uri) || uri === PACKAGE;

export type XmlAttributes = Readonly<Record<string, string>>;

export interface Handlers {
  open?(name: string, attributes: XmlAttributes): void;
  close?(name: string): void;
  text?(text: string): void;
}

/** Which elements of a part are looked at, and by what names their attributes are given. */
export interface XmlLanguage {
  isOwn(uri: string): boolean;
  attributesOf(tag: SaxesTagNS): XmlAttributes;
}

const CHUNK = 65_536;

/**
 * Reads one part. Handlers see the workbook's own elements by their local names; elements of other
 * namespaces (what newer programs add) and all that is in them are passed over. A document type is
 * refused: workbooks have none, and entities of one's own are how such files attack readers.
 */
export function readXml(bytes: Uint8Array, part: string, deepest: number, handlers: Handlers, language: XmlLanguage = { isOwn, attributesOf }): void {
  const parser = new SaxesParser({ xmlns: true });
  let depth = 0;
  let foreign = 0;
  /** A namespace of the workbook's own: nearly all elements have the same. */
  let own: string | undefined;
  const isOurs = (uri: string): boolean => {
    if (uri !== own && language.isOwn(uri)) own = uri;
    return uri === own;
  };
  parser.on("doctype", () => {
    throw new UnreadableFile(`holds a document type in its part ${part}, which no workbook has: it is refused`);
  });
  parser.on("opentag", (tag) => {
    if (++depth > deepest) throw new UnreadableFile(`nests the elements of its part ${part} more than ${deepest} deep: it is refused`);
    if (foreign > 0 || !isOurs(tag.uri)) foreign++;
    if (foreign > 0 && depth === 1) throw new UnreadableFile(`holds something other than a workbook's data in its part ${part}`);
    if (foreign > 0) return;
    handlers.open?.(tag.local, language.attributesOf(tag));
  });
  parser.on("closetag", (tag) => {
    depth--;
    if (foreign > 0) foreign--;
    else handlers.close?.(tag.local);
  });
  const text = (piece: string): void => {
    if (foreign === 0) handlers.text?.(piece);
  };
  parser.on("text", text);
  parser.on("cdata", text);
  feed(parser, bytes, part);
}

function feed(parser: SaxesParser<{ xmlns: true }>, bytes: Uint8Array, part: string): void {
  try {
    const decoder = new TextDecoder(encodingOf(bytes), { fatal: true });
    for (let at = 0; at < bytes.length; at += CHUNK) parser.write(decoder.decode(bytes.subarray(at, at + CHUNK), { stream: at + CHUNK < bytes.length }));
    parser.close();
  } catch (reason) {
    if (reason instanceof UnreadableFile) throw reason;
    throw new UnreadableFile(`is damaged: its part ${part} is not well-formed XML`);
  }
}

/** The standard allows UTF-8 and UTF-16; the latter starts with a mark. */
function encodingOf([first, second]: Uint8Array): string {
  if (first === 0xff && second === 0xfe) return "utf-16le";
  return first === 0xfe && second === 0xff ? "utf-16be" : "utf-8";
}

/** Attributes by local name; those that point to a relation keep `r:` before it. */
export function attributesOf(tag: SaxesTagNS): XmlAttributes {
  const found: Record<string, string> = {};
  for (const key in tag.attributes) {
    const { local, uri, value } = tag.attributes[key]!;
    if (uri === "") found[local] = value;
    else if (RELATION.has(uri)) found[`r:${local}`] = value;
  }
  return found;
}

/** `_x000D_` and its like in text stand for the character of that number (ECMA-376 part 1, 22.9.2.19). */
export function unescapeText(text: string): string {
  return text.includes("_x") ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16))) : text;
}

const SIGNS: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Text as XML holds it, in an element or between double quotes; signs that XML cannot hold are the caller's. */
export const escapedXml = (text: string): string => text.replace(/[&<>"]/g, (sign) => SIGNS[sign]!);
