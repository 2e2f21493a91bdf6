import { SaxesParser, type SaxesTagNS } from "saxes";
import { UnreadableFile } from "../file-limits.ts";
import { attributesOf, isOwn, type XmlAttributes } from "../xml.ts";

/** An element's start tag, and where it stands: in bytes, from its `<` to behind its `>`. Large parts have many, so that nothing is made of one before it is asked for. */
export class Tag {
  readonly #tag: SaxesTagNS;
  readonly #bytes: Uint8Array;

  constructor(
    tag: SaxesTagNS,
    bytes: Uint8Array,
    readonly to: number,
  ) {
    this.#tag = tag;
    this.#bytes = bytes;
  }

  /** Without the prefix. */
  get name(): string {
    return this.#tag.local;
  }

  /** What stands before its name, with the colon: what is put beside it is of the same kind. */
  get prefix(): string {
    return this.#tag.prefix === "" ? "" : `${this.#tag.prefix}:`;
  }

  get from(): number {
    return this.#bytes.lastIndexOf(OPENING, this.to - 1);
  }

  /** It has no content and no end tag. */
  get isEmpty(): boolean {
    return this.#tag.isSelfClosing;
  }

  get attributes(): XmlAttributes {
    return attributesOf(this.#tag);
  }

  /** One of them alone, where there are many tags. */
  attribute(name: string): string | undefined {
    return Object.hasOwn(this.#tag.attributes, name) ? this.#tag.attributes[name]!.value : undefined;
  }
}

export interface Finders {
  /** `inside`: the names of the elements around it, from the outermost. */
  open?(tag: Tag, inside: readonly string[]): void;
  /** Where the end tag ends, or the start tag where that is all there is. */
  close?(name: string, to: number): void;
  /** As the parser sees it: `fromBytes` gives the text. */
  text?(bytes: string): void;
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
    finders.open?.(new Tag(tag, bytes, to), inside);
    inside.push(tag.local);
  });
  parser.on("closetag", (tag) => {
    if (foreign > 0) {
      foreign--;
      return;
    }
    inside.pop();
    finders.close?.(tag.local, start + parser.position);
  });
  const text = (piece: string): void => {
    if (foreign === 0) finders.text?.(piece);
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

/** Where the end tag begins that ends at `to`. */
export const startOfEnd = (bytes: Uint8Array, to: number): number => bytes.lastIndexOf(OPENING, to - 1);

/** Characters that are handed on together, as there are only so many arguments to a call. */
const ROW = 8192;

/** One character a byte. The decoder called latin1 would make other characters of some. */
function asBytes(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += ROW) text += String.fromCharCode.apply(null, bytes.subarray(at, at + ROW) as unknown as number[]);
  return text;
}

const BEYOND_ASCII = /[\u0080-\uffff]/;
const decoder = new TextDecoder();

/** The text for which such bytes stand. A character that is written by its number may come out as another one. */
export function fromBytes(text: string): string {
  if (!BEYOND_ASCII.test(text)) return text;
  return text.replace(/[\u0080-\u00ff]+/g, (bytes) => decoder.decode(Uint8Array.from(bytes, (sign) => sign.charCodeAt(0))));
}
