import { xmlText } from "../xml-text.ts";
import { Patch } from "./edit.ts";
import { scan, startOfEnd } from "./scan.ts";

/** The part with the relations of another. */
export const relationsPath = (part: string): string => part.replace(/([^/]*)$/, "_rels/$1.rels");

/** A part's relations, to which more are added. */
export class Relations {
  readonly #patch: Patch;
  readonly #ids = new Set<string>();
  #prefix = "";
  #end = 0;
  /** What types of relations begin with, in the form of the standard that the file keeps to. */
  #base = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

  constructor(
    readonly part: Uint8Array,
    name: string,
  ) {
    this.#patch = new Patch(part);
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
    this.#patch.insert(this.#end, `<${this.#prefix}Relationship Id="${id}" Type="${this.#base}/${kind}" Target="${xmlText(target)}"/>`);
    return id;
  }

  result(): Uint8Array {
    return this.#patch.result();
  }
}
