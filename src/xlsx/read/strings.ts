import type { Limits } from "../file-limits.ts";
import { type Handlers, readXml, unescapeText } from "../xml.ts";

/**
 * Collects the text of a string item: plain, or rich text run after run. Phonetic runs, which only
 * tell how to pronounce it, are left out (ECMA-376 part 1, 18.4.8).
 */
export class TextRuns {
  #text = "";
  #inText = false;
  #phonetic = 0;

  open(name: string): void {
    if (name === "rPh") this.#phonetic++;
    else if (name === "t") this.#inText = this.#phonetic === 0;
  }

  close(name: string): void {
    if (name === "rPh") this.#phonetic--;
    else if (name === "t") this.#inText = false;
  }

  add(text: string): void {
    if (this.#inText) this.#text += text;
  }

  /** The text so far; starts anew. */
  take(): string {
    const text = unescapeText(this.#text);
    this.#text = "";
    return text;
  }
}

/** The workbook's shared strings, in order. */
export function readStrings(bytes: Uint8Array, part: string, limits: Limits): string[] {
  const strings: string[] = [];
  const runs = new TextRuns();
  const handlers: Handlers = {
    open: (name) => runs.open(name),
    close(name) {
      runs.close(name);
      if (name === "si") strings.push(runs.take());
    },
    text: (text) => runs.add(text),
  };
  readXml(bytes, part, limits.depth, handlers);
  return strings;
}
