import { escapedXml } from "../xml.ts";
import { BytesPatch, withAttributes } from "./edit.ts";
import { scan, startOfEnd, type Tag } from "./scan.ts";

/** The part with the relations of another. */
export const relationsPath = (part: string): string => part.replace(/([^/]*)$/, "_rels/$1.rels");

/** A part's relations, to which more are added. */
export class RelationsPatch {
  readonly #patch: BytesPatch;
  readonly #ids = new Set<string>();
  #prefix = "";
  #end = 0;
  /** What types of relations begin with, in the form of the standard that the file keeps to. */
  #base = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

  constructor(
    readonly part: Uint8Array,
    name: string,
  ) {
    this.#patch = new BytesPatch(part);
    scan(this.#patch.bytes, name, {
      open: ({ name: element, prefix, attributes: { Id, Type } }) => {
        this.#prefix = prefix;
        if (element !== "Relationship" || !Id) return;
        this.#ids.add(Id);
        if (Type?.endsWith("/worksheet")) this.#base = Type.slice(0, Type.lastIndexOf("/"));
      },
      close: (element, to) => {
        if (element === "Relationships") this.#end = startOfEnd(this.#patch.bytes, to);
      },
    });
  }

  get base(): string {
    return this.#base;
  }

  /** Adds one and gives its id. */
  add(kind: string, target: string): string {
    let number = this.#ids.size + 1;
    while (this.#ids.has(`rId${number}`)) number++;
    const id = `rId${number}`;
    this.#ids.add(id);
    this.#patch.insert(this.#end, `<${this.#prefix}Relationship Id="${id}" Type="${this.#base}/${kind}" Target="${escapedXml(target)}"/>`);
    return id;
  }

  result(): Uint8Array {
    return this.#patch.result();
  }
}

/** The workbook's own part, to which a sheet is added behind the others (ECMA-376 part 1, 18.2.27). */
export class WorkbookPartPatch {
  readonly #patch: BytesPatch;
  #sheets: { prefix: string; end: number; highest: number } = { prefix: "", end: 0, highest: 0 };
  #calculation: Tag | undefined;

  constructor(part: Uint8Array, name: string) {
    this.#patch = new BytesPatch(part);
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
    this.#patch.insert(end, `<${prefix}sheet xmlns:r="${base}" name="${escapedXml(name)}" sheetId="${highest + 1}" r:id="${relation}"/>`);
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
