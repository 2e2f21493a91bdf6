import type { Zip } from "../zip.ts";
import { rewriteArchive } from "./archive.ts";
import { CONTENT_TYPES, withTypes } from "./content-types.ts";

/** The parts of a workbook while some of them are replaced and others added. */
export class Package {
  readonly #spelled: ReadonlyMap<string, string>;
  readonly #changed = new Map<string, Uint8Array>();
  readonly #types = new Map<string, string>();

  constructor(
    readonly bytes: Uint8Array,
    readonly zip: Zip,
  ) {
    this.#spelled = new Map(zip.entries().map(({ name }) => [name.toLowerCase(), name]));
  }

  read(name: string): Uint8Array | undefined {
    return this.#changed.get(this.#name(name)) ?? this.zip.read(name);
  }

  /** Puts what is made of a part in its place; one that is the same stays as it is packed. */
  change(name: string, make: (part: Uint8Array) => Uint8Array): void {
    const old = this.read(name)!;
    const made = make(old);
    if (made !== old && !isSame(made, old)) this.#changed.set(this.#name(name), made);
  }

  /** A new part; gives the name that it gets, the first that is free of `folder/stem1.xml`, `folder/stem2.xml`, … */
  add(stem: string, content: Uint8Array, type: string): string {
    let number = 1;
    while (this.#has(`${stem}${number}.xml`)) number++;
    const name = `${stem}${number}.xml`;
    this.#changed.set(name, content);
    this.#types.set(name, type);
    return name;
  }

  written(): Uint8Array {
    if (this.#types.size > 0) this.change(CONTENT_TYPES, (types) => withTypes(types, this.#types));
    return rewriteArchive(this.bytes, this.zip.entries(), this.#changed);
  }

  #has(name: string): boolean {
    return this.zip.has(name) || [...this.#changed.keys()].some((one) => one.toLowerCase() === name.toLowerCase());
  }

  #name(name: string): string {
    return this.#spelled.get(name.toLowerCase()) ?? name;
  }
}

const isSame = (a: Uint8Array, b: Uint8Array): boolean => a.length === b.length && a.every((byte, i) => byte === b[i]);
