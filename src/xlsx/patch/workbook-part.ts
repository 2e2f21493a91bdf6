import { xmlText } from "../xml-text.ts";
import { withAttributes } from "./attributes.ts";
import { Patch } from "./edit.ts";
import { scan, startOfEnd, type Tag } from "./scan.ts";

/** The workbook's own part, to which a sheet is added behind the others (ECMA-376 part 1, 18.2.27). */
export class WorkbookPart {
  readonly #patch: Patch;
  #sheets: { prefix: string; end: number; highest: number } = { prefix: "", end: 0, highest: 0 };
  #calculation: Tag | undefined;

  constructor(part: Uint8Array, name: string) {
    this.#patch = new Patch(part);
    scan(this.#patch.bytes, name, {
      open: (tag) => {
        if (tag.name === "sheet") this.#sheets.highest = Math.max(this.#sheets.highest, Number(tag.attributes.sheetId) || 0);
        else if (tag.name === "sheets") this.#sheets.prefix = tag.prefix;
        else if (tag.name === "calcPr") this.#calculation = tag;
      },
      close: (element, to) => {
        if (element === "sheets") this.#sheets.end = startOfEnd(this.#patch.bytes, to);
      },
    });
  }

  addSheet(name: string, relation: string, base: string): void {
    const { prefix, end, highest } = this.#sheets;
    this.#patch.insert(end, `<${prefix}sheet xmlns:r="${base}" name="${xmlText(name)}" sheetId="${highest + 1}" r:id="${relation}"/>`);
  }

  /** Where every formula has its value, a program that does not know our functions need not work it out on opening, and lose it. */
  keepValues(): void {
    const tag = this.#calculation;
    if (tag?.attributes.fullCalcOnLoad === undefined) return;
    this.#patch.replace(tag.from, tag.to, withAttributes(this.#patch.text(tag.from, tag.to), { fullCalcOnLoad: null }));
  }

  result(): Uint8Array {
    return this.#patch.result();
  }
}
