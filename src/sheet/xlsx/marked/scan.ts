import { SaxesParser, type SaxesTagNS } from "saxes";
import { UnreadableFile } from "../unreadable.ts";
import { type Attributes, attributesOf, isOwn } from "../xml.ts";

/** An element's start tag, and where it stands: in bytes, from its `<` to behind its `>`. */
export interface Tag {
  /** Without the prefix. */
  name: string;
  /** What stands before its name, with the colon: what is put beside it is of the same kind. */
  prefix: string;
  attributes: Attributes;
  from: number;
  to: number;
  /** It has no content and no end tag. */
  isEmpty: boolean;
}

export interface Finders {
  /** `inside`: the names of the elements around it, from the outermost. */
  open?(tag: Tag, inside: readonly string[]): void;
  /** `from` and `to` of the end tag; those of the start tag where that is all there is. */
  close?(name: string, from: number, to: number): void;
  text?(text: string): void;
}

const CHUNK = 65_536;
const OPENING = 0x3c;

/**
 * Finds where elements stand in a part, UTF-8, that has been read before; those of other namespaces
 * are passed over as they are in reading. The parser sees every byte as one character, so that its
 * places are those of bytes: nothing that it looks for has a byte outside ASCII.
 */
export function scan(bytes: Uint8Array, part: string, finders: Finders, isWanted: (uri: string) => boolean = isOwn): void {
  const parser = new SaxesParser({ xmlns: true });
  const start = bytes[0] === 0xef ? 3 : 0;
  const inside: string[] = [];
  let foreign = 0;
  parser.on("opentag", (tag) => {
    if (foreign > 0 || !isWanted(tag.uri)) foreign++;
    if (foreign > 0) return;
    const to = start + parser.position;
    finders.open?.(tagOf(tag, bytes.lastIndexOf(OPENING, to - 1), to), inside);
    inside.push(tag.local);
  });
  parser.on("closetag", (tag) => {
    if (foreign > 0) {
      foreign--;
      return;
    }
    inside.pop();
    const to = start + parser.position;
    finders.close?.(tag.local, bytes.lastIndexOf(OPENING, to - 1), to);
  });
  const text = (piece: string): void => {
    if (foreign === 0) finders.text?.(fromBytes(piece));
  };
  parser.on("text", text);
  parser.on("cdata", text);
  try {
    for (let at = start; at < bytes.length; at += CHUNK) parser.write(asBytes(bytes.subarray(at, at + CHUNK)));
    parser.close();
  } catch {
    throw new UnreadableFile(`writes its part ${part} in a way that nothing can be put into it`);
  }
}

const tagOf = (tag: SaxesTagNS, from: number, to: number): Tag => ({
  name: tag.local,
  prefix: tag.prefix === "" ? "" : `${tag.prefix}:`,
  attributes: attributesOf(tag),
  from,
  to,
  isEmpty: tag.isSelfClosing,
});

/** Characters that are handed on together, as there are only so many arguments to a call. */
const ROW = 8192;

/** One character a byte. The decoder called latin1 would make other characters of some. */
function asBytes(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += ROW) text += String.fromCharCode(...bytes.subarray(at, at + ROW));
  return text;
}

const BEYOND_ASCII = /[\u0080-\uffff]/;
const decoder = new TextDecoder();

/** The text for which such bytes stand; references to characters in it have been resolved and are not of one byte each. */
function fromBytes(text: string): string {
  if (!BEYOND_ASCII.test(text)) return text;
  return text.replace(/[\u0080-\u00ff]+/g, (bytes) => decoder.decode(Uint8Array.from(bytes, (sign) => sign.charCodeAt(0))));
}
