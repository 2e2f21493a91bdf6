const ONE = 1;
const MANY = 2;

/** A text in which `?` stands for one sign, `*` for any number of them, and `~` takes the next sign as it is. Upper and lower case are alike. */
export class Wildcards {
  readonly #parts: (string | typeof ONE | typeof MANY)[] = [];
  /** Nothing in it stands for something else. */
  readonly isPlain: boolean;
  /** What it is without its `~`, where it is plain. */
  readonly plain: string;

  constructor(pattern: string) {
    const text = pattern.toLowerCase();
    for (let i = 0; i < text.length; i++) {
      const sign = text[i]!;
      const next = text[i + 1];
      if (sign === "~" && (next === "*" || next === "?" || next === "~")) this.#parts.push(text[++i]!);
      else this.#parts.push(sign === "?" ? ONE : sign === "*" ? MANY : sign);
    }
    this.isPlain = this.#parts.every((part) => typeof part === "string");
    this.plain = this.isPlain ? this.#parts.join("") : "";
  }

  /** The whole text is of this kind. Goes back to the last `*` alone, so that no pattern takes for ever. */
  fits(text: string): boolean {
    return this.#end(text.toLowerCase(), 0, true) >= 0;
  }

  /** Where in the text the first piece of this kind starts, from the place `from`; −1 where there is none. */
  find(text: string, from: number): number {
    const lower = text.toLowerCase();
    if (this.isPlain) return lower.indexOf(this.plain, from);
    for (let at = from; at <= lower.length; at++) if (this.#end(lower, at, false) >= 0) return at;
    return -1;
  }

  #end(text: string, from: number, whole: boolean): number {
    const parts = this.#parts;
    let at = from;
    let part = 0;
    let star = -1;
    let mark = 0;
    for (;;) {
      if (part === parts.length && (!whole || at === text.length)) return at;
      if (parts[part] === MANY) {
        star = part++;
        mark = at;
      } else if (at < text.length && part < parts.length && (parts[part] === ONE || parts[part] === text[at])) {
        at++;
        part++;
      } else if (star >= 0 && mark < text.length) {
        part = star + 1;
        at = ++mark;
      } else return -1;
    }
  }
}
