import { KEPT_NAMESPACE, keptFrom } from "../../workbook/storage.ts";
import { LIMITS, type Limits, many } from "../file-limits.ts";
import type { SheetFile, Table, WorkbookFile } from "../model.ts";
import { UnreadableFile } from "../unreadable.ts";
import { type Unpack, Zip } from "../zip.ts";
import { expectZip } from "./container.ts";
import { readTable, readWorkbookPart } from "./parts.ts";
import { type Relation, relationsOf } from "./relations.ts";
import { readStrings } from "./strings.ts";
import { readWorksheet } from "./worksheet.ts";

/**
 * Reads an .xlsx (ECMA-376) into plain data. A file that is no workbook, is damaged, or asks for
 * more than the limits is refused with an `UnreadableFile` that says why; nothing is guessed.
 */
export function readXlsx(bytes: Uint8Array, limits: Limits = LIMITS, unpack?: Unpack): WorkbookFile {
  expectZip(bytes);
  const zip = new Zip(bytes, limits, unpack);
  const path = workbookPath(zip, limits);
  const { sheets: listed, names, from1904 } = readWorkbookPart(need(zip, path), path, limits);
  const relations = relationsOf(zip, path, limits);
  const strings = sharedStrings(zip, relations, limits);
  const counter = new Counter(limits);
  const sheets: SheetFile[] = [];
  const tables: Table[] = [];
  // A sheet of another kind (a chart, a dialog) has no cells, but keeps its place: names refer to sheets by it.
  for (const { name, relation, hidden } of listed) {
    const target = relations.find((one) => one.id === relation);
    if (!target) throw new UnreadableFile(`is damaged: the sheet ${JSON.stringify(name)} is missing in it`);
    const isGrid = target.kind === "worksheet";
    const cells = isGrid
      ? readWorksheet(need(zip, target.target), target.target, { strings, limits, count: () => counter.cell() })
      : { cells: [], hiddenRows: [] };
    if (isGrid) tables.push(...tablesOf(zip, target.target, sheets.length, limits));
    const sheet: SheetFile = { name, hidden, ...cells };
    counter.sheet(sheet);
    sheets.push(sheet);
  }
  return { sheets, names, tables, from1904, kept: keptTexts(zip, relations) };
}

function need(zip: Zip, part: string): Uint8Array {
  const bytes = zip.read(part);
  if (!bytes) throw new UnreadableFile(`is damaged: its part ${part} is missing`);
  return bytes;
}

function workbookPath(zip: Zip, limits: Limits): string {
  const path = relationsOf(zip, "", limits).find((relation) => relation.kind === "officeDocument")?.target;
  if (path && /^xl\/.*\.bin$/i.test(path)) throw new UnreadableFile("is a binary workbook (.xlsb): save it as .xlsx");
  if (path && /(?:^|\/)(?:word|ppt|visio)\//i.test(`/${path}`)) throw new UnreadableFile("is an Office document, but no workbook");
  if (path) return path;
  const names = zip.names();
  if (names.includes("mimetype") && names.includes("content.xml")) throw new UnreadableFile("is an OpenDocument file: save it as .xlsx");
  throw new UnreadableFile("is a zip archive without a workbook in it");
}

function sharedStrings(zip: Zip, relations: readonly Relation[], limits: Limits): string[] {
  const part = relations.find((relation) => relation.kind === "sharedStrings")?.target;
  return part === undefined ? [] : readStrings(need(zip, part), part, limits);
}

function tablesOf(zip: Zip, part: string, sheet: number, limits: Limits): Table[] {
  return relationsOf(zip, part, limits)
    .filter((relation) => relation.kind === "table")
    .flatMap(({ target }) => readTable(need(zip, target), target, sheet, limits) ?? []);
}

/** What we keep in a workbook lies in a custom XML part; those of other programs are not looked into. */
function keptTexts(zip: Zip, relations: readonly Relation[]): Map<string, string> {
  const decoder = new TextDecoder();
  for (const { target } of relations.filter((relation) => relation.kind === "customXml")) {
    const xml = decoder.decode(zip.read(target));
    if (xml.includes(`"${KEPT_NAMESPACE}"`)) return keptFrom(xml);
  }
  return new Map();
}

/** Keeps the whole workbook within the limits on cells. */
class Counter {
  readonly #limits: Limits;
  #cells = 0;
  #area = 0;

  constructor(limits: Limits) {
    this.#limits = limits;
  }

  cell(): void {
    if (++this.#cells > this.#limits.cells) throw new UnreadableFile(`has too many cells: more than ${many(this.#limits.cells)} hold something`);
  }

  sheet({ name, cells }: SheetFile): void {
    let rows = 0;
    let columns = 0;
    for (const { row, column, array } of cells) {
      rows = Math.max(rows, row + (array?.rows ?? 1));
      columns = Math.max(columns, column + (array?.columns ?? 1));
    }
    this.#area += rows * columns;
    if (this.#area <= this.#limits.area) return;
    throw new UnreadableFile(`has too many cells: the sheet ${JSON.stringify(name)} is spread over ${many(rows)} rows and ${many(columns)} columns`);
  }
}
