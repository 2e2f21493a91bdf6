import { keyOf, MOST_COLUMNS } from "../../workbook/address.ts";
import { type CellMark, MARK_FILL } from "../../workbook/port.ts";
import { FINDINGS_SHEET, MARKED, STORAGE_NAMESPACE, type StoredMark, storageXml, storedMarks } from "../../workbook/storage.ts";
import { FILE_LIMITS, type FileLimits } from "../file-limits.ts";
import { partsBesideKept } from "../kept-parts.ts";
import type { CalculatedWorkbook, WorkbookFile } from "../model.ts";
import { type Relation, readStrings, readWorkbookPart, relationsOf, workbookPath } from "../read/parts.ts";
import { HEADING } from "../write/xml.ts";
import { Zip } from "../zip.ts";
import { valueChanges } from "./cell-values.ts";
import { themeColours } from "./colours.ts";
import { type FindingsPage, findingsSheet, SHEET_NAME, TITLE } from "./findings-sheet.ts";
import { Package } from "./package.ts";
import { RelationsPatch, relationsPath, WorkbookPartPatch } from "./parts.ts";
import { StylesPatch } from "./styles.ts";
import { patchSheet } from "./worksheet.ts";

/** The marks of one sheet: those that it remembers, and those that it is to have. */
class SheetMarks {
  readonly #earlier = new Map<number, StoredMark>();
  readonly #colours = new Map<number, string>();
  readonly #kept = new Map<number, StoredMark>();

  constructor(
    readonly sheet: string,
    remembered: readonly StoredMark[],
    marks: readonly CellMark[],
  ) {
    for (const mark of remembered) if (mark.cell.sheet === sheet) this.#earlier.set(keyOf(mark.cell), mark);
    for (const { cell, tone } of marks) if (cell.sheet === sheet) this.#colours.set(keyOf(cell), MARK_FILL[tone]);
  }

  /** The cells that have a mark, get one, or both. */
  cells(): Set<number> {
    return new Set([...this.#earlier.keys(), ...this.#colours.keys()]);
  }

  /** Gives a cell its look: its mark, or the one that it had before. */
  restyle(key: number, style: number, styles: StylesPatch): number {
    const earlier = this.#earlier.get(key);
    const colour = this.#colours.get(key);
    const now = styles.fillOf(style);
    // Filled by a person since it was marked: that is how they want it.
    const own = earlier !== undefined && now?.toUpperCase() !== earlier.mark.toUpperCase();
    if (colour === undefined) return earlier && !own ? styles.unfilled(style, earlier.before) : style;
    const place = { row: Math.floor(key / MOST_COLUMNS), column: key % MOST_COLUMNS };
    const before = earlier && !own ? earlier.before : now;
    this.#kept.set(key, { ...(earlier ?? {}), cell: { sheet: this.sheet, ...place }, before, mark: colour });
    return earlier && !own && earlier.mark === colour ? style : styles.filled(style, colour);
  }

  /** What is to be remembered, in the order of the cells. */
  kept(): StoredMark[] {
    return [...this.#kept].sort(([a], [b]) => a - b).map(([, mark]) => mark);
  }
}

const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const STRICT = "http://purl.oclc.org/ooxml/";
const MAIN = { transitional: "http://schemas.openxmlformats.org/spreadsheetml/2006/main", strict: `${STRICT}spreadsheetml/main` };

/** A workbook as it was read and calculated, and what was found in it. */
interface Marking {
  book: WorkbookFile;
  calculated: CalculatedWorkbook;
  /** One for each cell. */
  marks: readonly CellMark[];
  page: FindingsPage;
}

export interface MarkedCopy {
  bytes: Uint8Array;
  /** Cells that are coloured. */
  marked: number;
  /** Cells that were given a calculated value other than the one that they had. */
  written: number;
  /** The file bears a digital signature, which counts for the original alone. */
  signed: boolean;
}

/**
 * The file with calculated values and marks written in. Parts that this does not concern keep every
 * byte; in those that it does, all stays but the cells, styles and lists that are meant. Marks are
 * remembered in the workbook, so that the pane can take them off and marking again changes nothing more.
 */
export function markedCopy(bytes: Uint8Array, { book, calculated, marks, page }: Marking, limits: FileLimits = FILE_LIMITS): MarkedCopy {
  const marker = new Marker(new Package(bytes, new Zip(bytes, limits)), book, limits);
  const counts = marker.sheets(calculated, marks);
  marker.findings(page);
  marker.memory();
  marker.finish(calculated.unknown().size === 0);
  return { bytes: marker.files.written(), ...counts, signed: marker.files.zip.names().some((name) => name.startsWith("_xmlsignatures/")) };
}

class Marker {
  readonly #path: string;
  readonly #folder: string;
  readonly #related: Relation[];
  readonly #relations: RelationsPatch;
  readonly #workbook: WorkbookPartPatch;
  readonly #styles: StylesPatch;
  readonly #marks: SheetMarks[] = [];
  readonly #texts: Map<string, string>;
  /** The part of each sheet, by its place; that with the findings of an earlier marking last. */
  readonly #parts: (string | undefined)[];
  readonly #earlier: number;
  #strings: string[] | undefined;

  constructor(
    readonly files: Package,
    readonly book: WorkbookFile,
    readonly limits: FileLimits,
  ) {
    this.#path = workbookPath(files.zip, limits);
    this.#folder = this.#path.slice(0, this.#path.lastIndexOf("/") + 1);
    this.#related = relationsOf(files.zip, this.#path, limits);
    this.#relations = new RelationsPatch(files.read(relationsPath(this.#path))!, relationsPath(this.#path));
    this.#workbook = new WorkbookPartPatch(files.read(this.#path)!, this.#path);
    this.#styles = this.#openStyles();
    this.#texts = new Map(book.storedTexts);
    const { sheets } = readWorkbookPart(files.read(this.#path)!, this.#path, limits);
    // The sheet with our layout is none of the book's.
    const own = sheets.filter(({ name }) => book.sheets.some((sheet) => sheet.name === name));
    this.#parts = own.map(({ relation }) => this.#related.find(({ id, kind }) => id === relation && kind === "worksheet")?.target);
    this.#earlier = book.sheets.findIndex(
      ({ name, cells }) => name === this.#texts.get(FINDINGS_SHEET) && cells[0]?.value === TITLE && cells[0].row + cells[0].column === 0,
    );
  }

  /** Values and marks in the cells of every sheet. */
  sheets(calculated: CalculatedWorkbook, marks: readonly CellMark[]): Pick<MarkedCopy, "marked" | "written"> {
    const remembered = storedMarks(this.#texts);
    let written = 0;
    for (const [i, { name }] of this.book.sheets.entries()) {
      const part = this.#parts[i];
      if (part === undefined || i === this.#earlier) continue;
      const painter = new SheetMarks(name, remembered, marks);
      const changes = { ...valueChanges(this.book, i, calculated), restyled: painter.cells() };
      this.#marks.push(painter);
      if (changes.values.size + changes.restyled.size === 0) continue;
      const around = { restyle: (key: number, style: number) => painter.restyle(key, style, this.#styles), shared: (index: number) => this.#sharedText(index) };
      this.files.change(part, (old) => {
        const patched = patchSheet(old, part, changes, around);
        written += patched.written;
        return patched.part;
      });
    }
    return { marked: marks.length, written };
  }

  /** The sheet with the findings in words: that of an earlier marking, or a new one behind the others. */
  findings(page: FindingsPage): void {
    const namespace = this.#relations.base.startsWith(STRICT) ? MAIN.strict : MAIN.transitional;
    const content = new TextEncoder().encode(findingsSheet(page, namespace, this.#styles));
    const earlier = this.#parts[this.#earlier];
    if (earlier !== undefined) {
      this.files.change(earlier, () => content);
      return;
    }
    const taken = new Set(this.book.sheets.map(({ name }) => name.toLowerCase()));
    let name = SHEET_NAME;
    for (let number = 2; taken.has(name.toLowerCase()); number++) name = `${SHEET_NAME} ${number}`;
    const part = this.files.add(`${this.#folder}worksheets/sheet`, content, `${TYPE}.worksheet+xml`);
    this.#workbook.addSheet(name, this.#relations.add("worksheet", part.slice(this.#folder.length)), this.#relations.base);
    this.#texts.set(FINDINGS_SHEET, name);
  }

  /** What the marked cells looked like, as every host of ours remembers it. */
  memory(): void {
    this.#texts.set(MARKED, JSON.stringify(this.#marks.flatMap((painter) => painter.kept())));
    const content = new TextEncoder().encode(HEADING + storageXml(this.#texts));
    const decoder = new TextDecoder();
    const kept = [...this.#related, ...relationsOf(this.files.zip, "", this.limits)];
    const there = kept.find(({ kind, target }) => kind === "customXml" && decoder.decode(this.files.read(target)).includes(`"${STORAGE_NAMESPACE}"`));
    if (there) this.files.change(there.target, () => content);
    else this.#keep(this.files.add("customXml/item", content, "application/xml"));
  }

  #keep(part: string): void {
    this.#relations.add("customXml", `/${part}`);
    const beside = partsBesideKept(Number(/\d+/.exec(part)));
    // Left by a part that somebody took out: it is that one's.
    if (beside.some(({ path }) => this.files.has(path))) return;
    for (const { path, xml, type } of beside) this.files.put(path, new TextEncoder().encode(xml), type);
  }

  finish(isWhole: boolean): void {
    if (isWhole) this.#workbook.keepValues();
    const styles = this.#target("styles");
    const content = this.#styles.part();
    if (styles && this.files.has(styles)) this.files.change(styles, () => content);
    else if (styles) this.files.put(styles, content, `${TYPE}.styles+xml`);
    else this.#relations.add("styles", `/${this.files.add(`${this.#folder}styles`, content, `${TYPE}.styles+xml`)}`);
    this.files.change(this.#path, () => this.#workbook.result());
    this.files.change(relationsPath(this.#path), () => this.#relations.result());
  }

  #openStyles(): StylesPatch {
    const theme = this.#target("theme");
    const colours = theme ? themeColours(this.files.read(theme) ?? new Uint8Array(), theme) : new Map<string, string>();
    const styles = this.#target("styles");
    const namespace = this.#relations.base.startsWith(STRICT) ? MAIN.strict : MAIN.transitional;
    const none = new TextEncoder().encode(`${HEADING}<styleSheet xmlns="${namespace}"></styleSheet>`);
    return new StylesPatch((styles && this.files.read(styles)) || none, styles ?? "styles", colours);
  }

  #sharedText(index: number): string | undefined {
    const part = this.#target("sharedStrings");
    this.#strings ??= part === undefined ? [] : readStrings(this.files.read(part)!, part, this.limits);
    return this.#strings[index];
  }

  #target(kind: string): string | undefined {
    return this.#related.find((one) => one.kind === kind)?.target;
  }
}
