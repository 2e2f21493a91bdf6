import { type Comparison, compareReadings } from "../../compare/compare.ts";
import { readingsOfWorkbook, type WorkbookOptions } from "../../compare/from-workbook.ts";
import type { ReadingSet } from "../../compare/readings.ts";
import { TypedFault, type TypedSizes, typedSizes } from "../../compare/typed-sizes.ts";
import { counted } from "../../core/number-text.ts";
import type { Mapping } from "../../layout/mapping.ts";
import { HostRefusal, type WorkbookSnapshot } from "../../workbook/port.ts";
import { noSheet } from "../../workbook/refusals.ts";
import { mustFit, UnreadableFile } from "../../xlsx/file-limits.ts";
import { readXlsx, storedSnapshot, uncalculated } from "../../xlsx/read/read.ts";
import { part, recallShopLayout } from "../parts/loading.ts";

/** Where one side of a comparison comes from: the open workbook, one sheet of it, or a file. */
export type Side = { from: "workbook" } | { from: "sheet"; sheet: string } | { from: "file"; file: File | null };

export interface CompareForm {
  before: Side;
  after: Side;
  /** As typed. */
  uncertainty: string;
  matters: string;
  hours: string;
  runIn: string;
  engineBefore: string;
  engineAfter: string;
}

/** Compares what was chosen. What cannot be is refused in a sentence. */
export async function compareSides(snapshot: WorkbookSnapshot, mapping: Mapping | undefined, choices: CompareForm): Promise<Comparison> {
  const uncertainty = sizesIn("the uncertainty of a reading", choices.uncertainty);
  const matters = sizesIn("the smallest difference that matters", choices.matters);
  const hours = positive("the hours", choices.hours);
  const runIn = positive("the length of the run-in", choices.runIn);
  const engines = enginesOf(choices);
  if (sameSide(choices.before, choices.after)) {
    const both = await readSide(choices.before, snapshot, { uncertainty, mapping });
    if (!engines && !both.readings.some(({ campaign }) => campaign)) throw new HostRefusal(SAME);
    return compareReadings(both, undefined, { hours, runIn, engines, matters });
  }
  const [before, after] = await Promise.all([choices.before, choices.after].map((side) => readSide(side, snapshot, { uncertainty, mapping })));
  return compareReadings(before!, after!, { hours, runIn, engines, matters });
}

const SAME = "Both sides are the same and hold no columns before and after: choose another side, or name two engines.";

async function readSide(side: Side, snapshot: WorkbookSnapshot, options: WorkbookOptions): Promise<ReadingSet> {
  if (side.from === "file") return readFile(side.file, options);
  if (side.from === "sheet" && !snapshot.sheets.some(({ name }) => name === side.sheet)) throw noSheet(side.sheet);
  return readingsOfWorkbook(snapshot, { ...options, sheet: side.from === "sheet" ? side.sheet : undefined });
}

async function readFile(file: File | null, { uncertainty }: WorkbookOptions): Promise<ReadingSet> {
  if (!file) throw new HostRefusal("Choose the file to compare with.");
  if (isCsv(file)) return readCsv(file, uncertainty);
  try {
    mustFit(file.size);
    const book = readXlsx(new Uint8Array(await file.arrayBuffer()));
    const { mapping, notes: laid } = await recallShopLayout({ loadText: async (key) => book.storedTexts.get(key) ?? null });
    const set = readingsOfWorkbook(storedSnapshot(book, file.name), { uncertainty, mapping });
    const blank = uncalculated(book);
    const notes =
      blank > 0 ? [`${file.name}: ${counted(blank, "formula has", "formulas have")} no saved result: open the file, save it, and compare again`] : [];
    return { ...set, notes: [...set.notes, ...laid, ...notes] };
  } catch (error) {
    if (error instanceof UnreadableFile) throw new HostRefusal(`${error.of(file.name).message}.`, { cause: error });
    throw error;
  }
}

const isCsv = ({ name }: File): boolean => /\.csv$/i.test(name);

/** The parser comes only when a file of that kind is chosen. */
async function readCsv(file: File, uncertainty: WorkbookOptions["uncertainty"]): Promise<ReadingSet> {
  const { readingsOfCsv } = await part(import("../../compare/from-csv.ts"));
  const { unread, ...set } = await readingsOfCsv(chunksOf(file), { name: file.name, uncertainty });
  if (unread !== undefined) throw new HostRefusal(`${file.name} ${unread}.`);
  return set;
}

/** Bytes of readings that are taken into memory at a time. */
const CHUNK = 1 << 20;

async function* chunksOf(file: File): AsyncGenerator<Uint8Array> {
  for (let from = 0; from < file.size; from += CHUNK) yield new Uint8Array(await file.slice(from, from + CHUNK).arrayBuffer());
}

function sameSide(a: Side, b: Side): boolean {
  if (a.from !== b.from) return false;
  return a.from === "workbook" || (a.from === "sheet" && b.from === "sheet" && a.sheet === b.sheet);
}

function enginesOf({ engineBefore, engineAfter }: CompareForm): { before: string; after: string } | undefined {
  const [before, after] = [engineBefore.trim(), engineAfter.trim()];
  if (before === "" && after === "") return undefined;
  if (before === "" || after === "") throw new HostRefusal("Name an engine on both sides, or on none.");
  return { before, after };
}

/** Sizes as on the command line, parted by commas or semicolons: `0.005; ring end gap = 0.02`. */
function sizesIn(what: string, text: string): TypedSizes | undefined {
  try {
    return typedSizes(text.split(/[;,]/).filter((size) => size.trim() !== ""));
  } catch (error) {
    if (error instanceof TypedFault) throw new HostRefusal(`For ${what}: ${error.message}.`, { cause: error });
    throw error;
  }
}

function positive(what: string, text: string): number | undefined {
  const typed = text.trim();
  if (typed === "") return undefined;
  if (!(Number(typed) > 0 && Number.isFinite(Number(typed))))
    throw new HostRefusal(`For ${what} a number above 0 is wanted, with a decimal point, and there is ${typed}.`);
  return Number(typed);
}
