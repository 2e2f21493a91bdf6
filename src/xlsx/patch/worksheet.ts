import { cellName, keyOf, MOST_COLUMNS } from "../../workbook/address.ts";
import { UnreadableFile } from "../file-limits.ts";
import { positionIn } from "../model.ts";
import type { Around, SheetChanges } from "./cell-values.ts";
import { isStored, storedContent, valueXml } from "./cell-values.ts";
import { BytesPatch, opened, withAttributes } from "./edit.ts";
import { MissingCells } from "./missing-cells.ts";
import { type Finders, fromBytes, scan, type Tag } from "./scan.ts";

/** From its `<` to behind its `>`. */
interface Span {
  from: number;
  to: number;
}

/** A cell while its element goes by. */
interface Draft {
  key: number;
  tag: Tag;
  formula?: { tag: Tag; to: number };
  /** Its `<v>`, or the text that stands in itself. */
  value?: Span;
  text: string | null;
  reads: boolean;
}

/** What has come of a sheet's part. */
export interface PatchedSheet {
  part: Uint8Array;
  /** Cells whose value was written. */
  written: number;
}

/** A sheet's part with the changes in it (ECMA-376 part 1, 18.3.1.99): other cells, and all around them, stay byte for byte. */
export function patchSheet(part: Uint8Array, name: string, changes: SheetChanges, around: Around): PatchedSheet {
  const patcher = new SheetPatcher(part, name, changes, around);
  scan(patcher.patch.bytes, name, patcher);
  return patcher.result();
}

class SheetPatcher implements Finders {
  readonly patch: BytesPatch;
  readonly #missing: MissingCells;
  #row = -1;
  #column = -1;
  #draft: Draft | null = null;
  #written = 0;
  #formulas = 0;

  constructor(
    part: Uint8Array,
    readonly name: string,
    readonly changes: SheetChanges,
    readonly around: Around,
  ) {
    this.patch = new BytesPatch(part);
    this.#missing = new MissingCells(
      this.patch,
      new Set([...changes.restyled, ...[...changes.values].flatMap(([key, value]) => (value === null ? [] : [key]))]),
    );
  }

  open(tag: Tag, inside: readonly string[]): void {
    if (this.#draft) this.#openInCell(tag, this.#draft);
    else if (tag.name === "c") this.#openCell(tag);
    else if (tag.name === "row") this.#openRow(tag);
    else if (tag.name === "col") this.#missing.column(tag);
    else if (tag.name === "sheetData" && inside.length === 1) this.#missing.begin(tag);
  }

  text(text: string): void {
    if (this.#draft?.reads) this.#draft.text += fromBytes(text);
  }

  close(name: string, to: number): void {
    const draft = this.#draft;
    if (!draft) {
      if (name === "row") this.#missing.endRow(to);
      else if (name === "sheetData") this.#missing.end(to);
    } else if (name === "f" && draft.formula) draft.formula.to = to;
    else if (name === "v" || name === "is") {
      if (draft.value) draft.value.to = to;
      draft.reads = false;
    } else if (name === "c") {
      this.#draft = null;
      this.#change(draft);
    }
  }

  /** Puts in what the sheet does not have yet. */
  result(): PatchedSheet {
    const { values, formulas } = this.changes;
    // Read as what it is not: rather nothing is written than something wrong.
    if (this.#formulas !== formulas.size) throw new UnreadableFile(`writes its part ${this.name} in a way that nothing can be put into it`);
    this.#missing.put((key, style, prefix) => {
      const value = values.get(key);
      const content = value === undefined ? null : storedContent(value);
      if (content) this.#written++;
      const s = this.changes.restyled.has(key) ? this.around.restyle(key, style) : style;
      if (!content && s === style) return "";
      const attributes = `r="${cellName({ row: Math.floor(key / MOST_COLUMNS), column: key % MOST_COLUMNS })}"${s ? ` s="${s}"` : ""}`;
      if (!content) return `<${prefix}c ${attributes}/>`;
      return `<${prefix}c ${attributes}${content.type ? ` t="${content.type}"` : ""}>${valueXml(content, prefix)}</${prefix}c>`;
    });
    return { part: this.patch.result(), written: this.#written };
  }

  #openRow(tag: Tag): void {
    const r = tag.attribute("r");
    this.#row = r === undefined ? this.#row + 1 : Number(r) - 1;
    this.#column = -1;
    this.#missing.row(this.#row, tag);
  }

  #openCell(tag: Tag): void {
    const r = tag.attribute("r");
    const place = r === undefined ? { row: this.#row, column: this.#column + 1 } : positionIn(r, this.name);
    // A cell says itself where it stands, whatever its row says; both alike in every file that programs write.
    if (place.row !== this.#row) throw new UnreadableFile(`is damaged: its part ${this.name} holds a cell in a row that is not its own`);
    this.#column = place.column;
    const key = keyOf(place);
    this.#missing.cell(place, tag);
    this.#draft = { key, tag, text: null, reads: false };
  }

  #openInCell(tag: Tag, draft: Draft): void {
    if (tag.name === "f") draft.formula = { tag, to: tag.to };
    else if ((tag.name === "v" || tag.name === "is") && !draft.value) {
      draft.value = { from: tag.from, to: tag.to };
      draft.text = "";
      draft.reads = tag.name === "v";
    }
  }

  #change(draft: Draft): void {
    const { key, tag, formula } = draft;
    const wanted: Record<string, string | number | null> = {};
    if (this.changes.restyled.has(key)) {
      const style = Number(tag.attribute("s") ?? 0);
      const s = this.around.restyle(key, style);
      if (s !== style) wanted.s = s;
    }
    // Where a formula has spilled some programs leave an element for one that says nothing.
    if (formula && this.changes.formulas.has(key)) this.#formulas++;
    const reach = this.changes.reaches.get(key);
    if (formula && reach !== undefined) this.#retag(formula.tag, { ref: reach });
    const closing = this.changes.values.has(key) ? this.#revalue(draft, wanted) : "";
    if (Object.keys(wanted).length > 0 || closing) this.#retag(tag, wanted, closing);
  }

  /** Gives a cell its value; what a cell without content gets stands behind its tag, and is given back. */
  #revalue({ key, tag, formula, value, text }: Draft, wanted: Record<string, string | number | null>): string {
    const content = storedContent(this.changes.values.get(key) ?? null);
    const stored = { type: tag.attribute("t"), text };
    if (content ? isStored(content, stored, this.around.shared) : text === null) return "";
    this.#written++;
    wanted.t = content?.type ?? null;
    // What stood beside the old value, such as the kind of an error that is newer than the format.
    wanted.vm = null;
    const xml = content ? valueXml(content, tag.prefix) : "";
    if (tag.isEmpty) return `${xml}</${tag.prefix}c>`;
    if (value) this.patch.replace(value.from, value.to, xml);
    else this.patch.insert(formula?.to ?? tag.to, xml);
    return "";
  }

  #retag(tag: Tag, wanted: Readonly<Record<string, string | number | null>>, closing = ""): void {
    const text = withAttributes(this.patch.text(tag.from, tag.to), wanted);
    this.patch.replace(tag.from, tag.to, closing ? opened(text) + closing : text);
  }
}
