import { escaped } from "../drawings/text.ts";

/** HTML that is known to be harmless: made here, or by a drawing. */
export class Markup {
  constructor(readonly html: string) {}

  toString(): string {
    return this.html;
  }
}

type Part = string | Markup | readonly Markup[] | false | null | undefined;

/** HTML from a template. Whatever is put in is escaped, unless it is markup already; false and nothing leave no trace. */
export function html(texts: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  return new Markup(texts.map((text, i) => text + (i < parts.length ? written(parts[i]) : "")).join(""));
}

function written(part: Part): string {
  if (part === false || part === null || part === undefined) return "";
  if (typeof part === "string") return escaped(part);
  return part instanceof Markup ? part.html : part.map((one) => one.html).join("");
}

/** A table that can be scrolled where it is wider than the window, by keys as well. */
export const scrolled = (name: string, table: Markup): Markup => html`<div class="scroll" tabindex="0" role="group" aria-label="${name}">${table}</div>`;
