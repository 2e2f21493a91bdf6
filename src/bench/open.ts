import { MARKS_KEY } from "../hosts/bench/plugins.ts";
import { boxName } from "../workbook/address.ts";
import { FILE_LIMITS, UnreadableFile } from "../xlsx/file-limits.ts";
import type { DefinedName, SheetFile, Table, WorkbookFile } from "../xlsx/model.ts";
import { readXlsx } from "../xlsx/read/read.ts";
import { Zip } from "../xlsx/zip.ts";
import { type FileLooks, looksOf } from "./kept-looks.ts";
import type { Engine } from "./load-grid.ts";
import { type Contents, contentsOf, type EngineData, type EngineSheet, lookOf } from "./open-cells.ts";
import { type Addresses, addressesIn, picturesAmong, type Words, wordsIn } from "./pictures.ts";
import { takeMarks } from "./stored-marks.ts";
import { type EngineRule, typingRules } from "./typing-rules.ts";
import type { BesideGrid } from "./workbook.ts";

interface Opened {
  /** For a model of the grid. */
  data: EngineData;
  /** What the grid cannot hold; a saved workbook has it again. */
  beside: Omit<BesideGrid, "looks"> & { looks: FileLooks | undefined };
  /** Texts kept in the file by this tool. */
  storedTexts: Map<string, string>;
  /** What of the file the bench leaves behind, as sentences; empty when nothing. */
  note: string;
}

/**
 * Reads the bytes of an .xlsx for the grid. What the cells hold comes from the reader that all
 * hosts share, which takes in no more than is safe; how they look comes from the grid's own reader.
 */
export function openInGrid(engine: Engine, bytes: Uint8Array, name: string): Opened {
  const book = readXlsx(bytes);
  if (book.from1904) throw new UnreadableFile("counts its dates from 1904: in the program it comes from, set dates to count from 1900 and save it again");
  const contents = contentsOf(book);
  const zip = new Zip(bytes, FILE_LIMITS);
  const addresses = addressesIn(zip);
  const { look, hasOtherRules, hasOtherLists } = lookOf(engine, zip, addresses, Math.max(0, ...contents.sheets.map(({ rows }) => rows)));
  const data = engineData(engine, contents, look, {
    names: book.sheets.map((sheet) => sheet.name),
    tables: book.tables,
    words: wordsIn(zip, addresses),
    typing: book.sheets.map(({ typing }) => typing),
  });
  book.sheets.forEach(({ hidden }, i) => {
    data.sheets[i]!.isVisible = !hidden;
  });
  const isFiltered = book.sheets.some(({ filteredRows = [] }) => filteredRows.length > 0);
  const { storedTexts } = book;
  data[MARKS_KEY] = takeMarks(storedTexts, new Map(data.sheets.map((sheet) => [sheet.name, sheet.id])));
  const beside = {
    names: contents.otherNames,
    print: new Map(book.sheets.map(({ print: elements = [] }, i) => [data.sheets[i]!.id, { elements, names: printNamesOf(book, i) }])),
    looks: looksOf(zip, look && data),
  };
  return { data, beside, storedTexts, note: noteOn(zip, addresses, { shown: look && data, hasOtherRules, hasOtherLists, isFiltered }, name) };
}

/** Names for printing one sheet, their ranges without its name: the sheet may get another, and another place. */
const printNamesOf = ({ printNames = [] }: WorkbookFile, place: number): DefinedName[] =>
  printNames.filter(({ sheet }) => sheet === place).map(({ name, formula }) => ({ name, formula: formula.replace(/(?:'(?:[^']|'')*'|[^,'!]+)!/g, "") }));

const SMALLEST = { rows: 100, columns: 26 };

/** The sheets in the order of the file, each with its look where there is one. */
function engineData(engine: Engine, contents: Contents, look: EngineData | undefined, file: InFile): EngineData {
  const base = look ?? (engine.load(undefined) as unknown as EngineData);
  const sheets = contents.sheets.map(({ name, cells, rows, columns }, i): EngineSheet => {
    const looks = look?.sheets.find((sheet) => sheet.name === file.names[i]) ?? {
      ...engine.helpers.createEmptySheet(`sheet${i}`, name),
      colNumber: 0,
      rowNumber: 0,
    };
    return {
      ...(looks as EngineSheet),
      name,
      cells: withLinks(cells, looks.cells as Record<string, string>),
      colNumber: Math.max(looks.colNumber, columns, SMALLEST.columns),
      rowNumber: Math.max(looks.rowNumber, rows, SMALLEST.rows),
      // Charts need what the bench has not; the note says so.
      dataValidationRules: typingRules((looks.dataValidationRules ?? []) as EngineRule[], file.typing[i]),
      figures: picturesAmong(looks.figures, looks.id, file.words),
      tables: withNames(
        looks.tables as EngineTable[],
        file.tables.filter(({ sheet }) => sheet === i),
      ),
    };
  });
  return { ...base, sheets, namedRanges: contents.namedRanges };
}

/** What the grid's reader leaves out. */
interface InFile {
  /** Of the sheets in their order. */
  names: readonly string[];
  tables: readonly Table[];
  words: Words[];
  /** Of each sheet, what may be typed. */
  typing: readonly SheetFile["typing"][];
}

interface EngineTable {
  range: string;
  config?: object;
  [key: string]: unknown;
}

/** Tables of one sheet with their names, which the grid keeps with what it knows of a table. */
const withNames = (tables: readonly EngineTable[], own: readonly Table[]): EngineTable[] =>
  tables.map((table) => {
    const named = own.find(({ area }) => boxName(area) === table.range);
    return named ? { ...table, config: { ...table.config, name: named.name } } : table;
  });

const LINK = /^\[([^\]]+)\]\([^)]+\)$/;

/** The grid writes a cell with a link as `[text](address)`; of its reading of the cells this alone is taken over. */
function withLinks(cells: Record<string, string>, looks: Record<string, string>): Record<string, string> {
  for (const [name, content] of Object.entries(cells)) {
    const link = looks[name];
    if (link !== undefined && LINK.exec(link)?.[1] === content) cells[name] = link;
  }
  return cells;
}

/** Kinds of parts that the bench neither shows nor saves. */
const LEFT_BEHIND: readonly [part: RegExp, kind: string][] = [
  [/^xl\/vbaproject\.bin$/, "macros"],
  [/^xl\/charts\//, "charts"],
  [/^xl\/(?:comments|threadedcomments)/, "comments"],
  [/^xl\/pivottables\//, "pivot tables"],
  [/^xl\/(?:slicers|timelines)\//, "slicers"],
  [/^xl\/(?:ctrlprops|activex)\//, "buttons and controls"],
  [/^xl\/externallinks\//, "links to other workbooks"],
];

interface Seen {
  shown: EngineData | undefined;
  hasOtherRules: boolean;
  hasOtherLists: boolean;
  /** A filter hides rows. */
  isFiltered: boolean;
}

function noteOn(zip: Zip, addresses: Addresses, { shown, hasOtherRules, hasOtherLists, isFiltered }: Seen, name: string): string {
  const parts = zip.names();
  const kinds = LEFT_BEHIND.filter(([part]) => parts.some((one) => part.test(one))).map(([, kind]) => kind);
  if (hasMorePictures(addresses, shown)) kinds.push(shown ? "some pictures" : "pictures");
  if (hasOtherRules) kinds.push("colour rules about averages, errors or periods");
  if (hasOtherLists) kinds.push("lists for typing that stand on other sheets");
  const sentences = [
    kinds.length ? `${name} also holds ${list(kinds)}, which the bench neither shows nor saves: keep the file as it is and save under another name.` : "",
    shown ? "" : `The looks of ${name} could not be read: its cells are all here, without colours and widths.`,
    isFiltered ? `Rows that a filter hides in ${name} count on the bench for SUBTOTAL(1 to 11, …), as rows hidden by hand do.` : "",
  ];
  return sentences.filter(Boolean).join(" ");
}

/** Files of pictures that are not shown anywhere. */
function hasMorePictures(addresses: Addresses, shown: EngineData | undefined): boolean {
  const seen = new Set(shown?.sheets.flatMap(({ figures }) => (figures as { data: { path: string } }[]).map(({ data }) => data.path)));
  return [...addresses.values()].some((address) => !seen.has(address));
}

const list = (kinds: readonly string[]): string => new Intl.ListFormat("en").format(kinds);
