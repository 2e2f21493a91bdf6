import { noSheet, protectedSheet } from "./refusals.ts";
import { MARK_FILL, type Mark } from "./sheet-host.ts";

/** How a cell is filled; `null` for not at all. */
interface Fill {
  color: string;
  pattern?: string;
  patternColor?: string;
}

interface Marked {
  /** Excel's own id of the sheet, which stays when the sheet is renamed. */
  sheet: string;
  row: number;
  column: number;
  /** What it looked like before, and the colour that the mark gave it. */
  before: Fill | null;
  mark: string;
}

/** The setting of the workbook that remembers what marked cells looked like. */
const MARKED = "crosshatch.marked";

/** A cell that is or will be marked, with its fill. */
interface Place {
  sheet: Excel.Worksheet;
  row: number;
  column: number;
  fill: Excel.RangeFill;
  earlier?: Marked;
  colour?: string;
}

/** Takes every remembered mark off and puts these on; says how many there were. Changes in one sync, after two that read. */
export async function replaceMarks(context: Excel.RequestContext, marks: readonly Mark[]): Promise<number> {
  const { worksheets, settings } = context.workbook;
  const setting = settings.getItemOrNullObject(MARKED);
  setting.load("value");
  worksheets.load("items/id,items/name,items/protection/protected");
  await context.sync();
  const remembered = setting.isNullObject ? [] : (JSON.parse(String(setting.value)) as Marked[]);
  if (remembered.length === 0 && marks.length === 0) return 0;
  const places = placesOf(worksheets.items, remembered, marks);
  for (const { fill } of places) fill.load("color,pattern,patternColor,tintAndShade");
  await context.sync();
  const marked = places.flatMap(repaint);
  settings.add(MARKED, JSON.stringify(marked));
  await context.sync();
  return remembered.length;
}

/** Each cell once, whether it has a mark, gets one, or both; refuses where a sheet is closed to changes. */
function placesOf(sheets: readonly Excel.Worksheet[], remembered: readonly Marked[], marks: readonly Mark[]): Place[] {
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
    const sheet = sheets.find(({ id }) => id === earlier.sheet);
    // A sheet deleted since has taken its marks with it.
    if (sheet) place(sheet, earlier.row, earlier.column).earlier = earlier;
  }
  return [...places.values()];
}

/** Gives a cell its look: its mark, or the one it had before; says what to remember. */
function repaint({ sheet, row, column, fill, earlier, colour }: Place): Marked[] {
  const now = lookOf(fill);
  // Filled by the person since it was marked: that is how they want it.
  const own = earlier && now?.color.toUpperCase() !== earlier.mark;
  const before = earlier && !own ? earlier.before : now;
  if (colour === undefined) {
    if (!own) give(fill, before);
    return [];
  }
  give(fill, { color: colour });
  return [{ sheet: sheet.id, row, column, before, mark: colour.toUpperCase() }];
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
