import type { PrintElement, SheetFile, TypingRule } from "../model.ts";
import type { XmlAttributes } from "../xml.ts";

const PRINT = new Set(["printOptions", "pageMargins", "pageSetup", "headerFooter"]);
const HEADER = /^(?:odd|even|first)(?:Header|Footer)$/;
const FORMULA = /^formula[12]$/;

/** What a sheet's part holds beside its cells that other programs go by: rules for typing, and how the sheet is printed. */
export class BesideCells {
  readonly #typing = new Map<string, TypingRule & { formulas: string[] }>();
  readonly #print: (PrintElement & { within: PrintElement["within"][number][] })[] = [];
  #rule: { formulas: string[] } | undefined;
  #text: string | null = null;

  open(name: string, attributes: XmlAttributes): void {
    if (name === "dataValidation") this.#openRule(attributes);
    else if (PRINT.has(name) || name === "pageSetUpPr") this.#openPrint(name, attributes);
    else if (HEADER.test(name) || (this.#rule && FORMULA.test(name))) this.#text = "";
  }

  text(piece: string): void {
    if (this.#text !== null) this.#text += piece;
  }

  close(name: string): void {
    if (name === "dataValidation") this.#rule = undefined;
    if (this.#text === null) return;
    if (this.#rule) this.#rule.formulas.push(this.#text);
    else this.#print.at(-1)?.within.push({ name, text: this.#text });
    this.#text = null;
  }

  result(): Pick<SheetFile, "typing" | "print"> {
    return { ...(this.#typing.size ? { typing: this.#typing } : {}), ...(this.#print.length ? { print: this.#print } : {}) };
  }

  #openRule({ sqref, ...attributes }: XmlAttributes): void {
    const rule = { attributes, formulas: [] };
    this.#rule = rule;
    if (sqref) this.#typing.set(sqref, rule);
  }

  /** The settings of one printer, a part of their own, are left out. */
  #openPrint(name: string, { "r:id": _, ...attributes }: XmlAttributes): void {
    this.#print.push({ name, attributes, within: [] });
  }
}
