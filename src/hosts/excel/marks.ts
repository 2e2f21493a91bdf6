import type { CellAddress } from "../../workbook/address.ts";
import { type CellMark, MARK_FILL } from "../../workbook/port.ts";
import { noSheet, protectedSheet } from "../../workbook/refusals.ts";
import { MARKED, type StoredMark, storedMarks } from "../../workbook/storage.ts";
import { halfChanged, areasText as placesText, type UndoableEdit } from "./change.ts";
import { store, storeAgain, storedIn } from "./storage.ts";

/** How a cell is filled; `null` for not at all. */
interface Fill {
  color: string;
  pattern?: string;
  patternColor?: string;
}

/** What Excel knows of a marked cell beyond that: its own id of the sheet, which outlives a new name, and the pattern of the fill before. */
interface ExcelMark extends StoredMark {
  id?: string;
  pattern?: string;
  patternColor?: string;
}

/** A cell that is or will be marked, with its fill. */
interface Place {
  sheet: Excel.Worksheet;
  row: number;
  column: number;
  fill: Excel.RangeFill;
  earlier?: ExcelMark;
  colour?: string;
}

/** Takes every remembered mark off and puts these on; says how many there were. Two or three syncs that look. */
export async function replaceMarks(context: Excel.RequestContext, marks: readonly CellMark[]): Promise<UndoableEdit<number>> {
  const { worksheets } = context.workbook;
  worksheets.load("items/id,items/name,items/protection/protected");
  const kept = await storedIn(context);
  const remembered: ExcelMark[] = storedMarks(kept.texts);
  const before = new Map(kept.texts);
  if (remembered.length === 0 && marks.length === 0) return { result: 0, where: "", takeBack: async () => "" };
  const places = placesOf(worksheets.items, remembered, marks);
  for (const { fill } of places) fill.load(LOOK);
  await context.sync();
  const looks = places.map(({ fill }) => lookOf(fill));
  return {
    result: remembered.length,
    where: `the cells ${placesText(places.map(cellOf))}`,
    order: () => {
      const repainted = places.map((place, i) => repaint(place, looks[i]!));
      kept.texts.set(MARKED, JSON.stringify(repainted.flatMap(({ memory }) => memory)));
      // The memory first: a mark that nobody remembers could not be taken off any more.
      store(context, kept);
      for (const { paint } of repainted) paint();
    },
    takeBack: (again) => takeBack(again, places, looks, before),
  };
}

/** Whether a cell that is remembered still has the colour of its mark: an undo in Excel takes the colours back and not the memory. */
export async function hasMarks(context: Excel.RequestContext): Promise<boolean> {
  const { worksheets } = context.workbook;
  worksheets.load("items/id,items/name,items/protection/protected");
  const remembered: ExcelMark[] = storedMarks((await storedIn(context)).texts);
  if (remembered.length === 0) return false;
  const places = placesOf(worksheets.items, remembered, []);
  for (const { fill } of places) fill.load(LOOK);
  await context.sync();
  return places.some(({ fill, earlier }) => hasMark(earlier!, lookOf(fill)));
}

const hasMark = (earlier: ExcelMark, now: Fill | null): boolean => now?.color.toUpperCase() === earlier.mark.toUpperCase();

const LOOK = "color,pattern,patternColor,tintAndShade";

const cellOf = ({ sheet, row, column }: Place): CellAddress => ({ sheet: sheet.name, row, column });

/** Gives every cell the look that it had and the workbook its memory, and says which cells are not as they were. */
async function takeBack(
  context: Excel.RequestContext,
  places: readonly Place[],
  before: readonly (Fill | null)[],
  texts: ReadonlyMap<string, string>,
): Promise<string> {
  const changes = async () => {
    const fills = places.map(({ sheet, row, column }) => context.workbook.worksheets.getItem(sheet.name).getCell(row, column).format.fill);
    for (const fill of fills) fill.load(LOOK);
    await context.sync();
    return fills.map((fill, i) => ({ fill, cell: cellOf(places[i]!), before: before[i]!, isChanged: !isSame(lookOf(fill), before[i]!) }));
  };
  for (const { fill, before: look, isChanged } of await changes()) if (isChanged) give(fill, look);
  await context.sync();
  const left = halfChanged(await changes());
  if (left) return left;
  return (await storeAgain(context, texts)) ? "" : "The cells are as they were, but the note of which are marked may be the new one.";
}

const isSame = (a: Fill | null, b: Fill | null): boolean =>
  a?.color.toUpperCase() === b?.color.toUpperCase() && a?.pattern === b?.pattern && a?.patternColor === b?.patternColor;

/** Each cell once, whether it has a mark, gets one, or both; refuses where a sheet is closed to changes. */
function placesOf(sheets: readonly Excel.Worksheet[], remembered: readonly ExcelMark[], marks: readonly CellMark[]): Place[] {
  const places = new Map<string, Place>();
  const place = (sheet: Excel.Worksheet, row: number, column: number): Place => {
    if (sheet.protection.protected) throw protectedSheet(sheet.name);
    const key = `${row},${column},${sheet.id}`;
    const found = places.get(key) ?? { sheet, row, column, fill: sheet.getCell(row, column).format.fill };
    places.set(key, found);
    return found;
  };
  for (const { cell, tone } of marks) {
    const sheet = sheets.find(({ name }) => name === cell.sheet);
    if (!sheet) throw noSheet(cell.sheet);
    place(sheet, cell.row, cell.column).colour = MARK_FILL[tone];
  }
  for (const earlier of remembered) {
    const { id, cell } = earlier;
    const sheet = sheets.find((one) => (id === undefined ? one.name === cell.sheet : one.id === id));
    // A sheet deleted since has taken its marks with it.
    if (sheet) place(sheet, cell.row, cell.column).earlier = earlier;
  }
  return [...places.values()];
}

/** How a cell gets its look, its mark or the one it had before, and what to remember of it. */
function repaint({ sheet, row, column, fill, earlier, colour }: Place, now: Fill | null): { paint(): void; memory: ExcelMark[] } {
  // Filled by the person since it was marked: that is how they want it.
  const own = earlier && !hasMark(earlier, now);
  const before = earlier && !own ? lookBefore(earlier) : now;
  if (colour === undefined) return { paint: () => own || give(fill, before), memory: [] };
  const { color = null, ...pattern } = before ?? {};
  return {
    paint: () => give(fill, { color: colour }),
    memory: [{ cell: { sheet: sheet.name, row, column }, before: color, mark: colour, id: sheet.id, ...pattern }],
  };
}

function lookBefore({ before, pattern, patternColor }: ExcelMark): Fill | null {
  return before === null ? null : { color: before, ...(pattern ? { pattern, patternColor } : {}) };
}

/**
 * Excel calls a cell without a fill #FFFFFF as it does a white one; only the tint tells them apart:
 * it is null where there is no fill (OfficeDev/office-js thread 4900).
 */
function lookOf({ color, pattern, patternColor, tintAndShade }: Excel.RangeFill): Fill | null {
  if (pattern === "None" || (/^#?F{6}$/i.test(color) && tintAndShade === null)) return null;
  const plain = !pattern || pattern === "Solid";
  return plain ? { color } : { color, pattern, patternColor };
}

function give(fill: Excel.RangeFill, look: Fill | null): void {
  if (!look) {
    fill.clear();
    return;
  }
  fill.color = look.color;
  if (!look.pattern) return;
  fill.pattern = look.pattern as Excel.FillPattern;
  if (look.patternColor) fill.patternColor = look.patternColor;
}
