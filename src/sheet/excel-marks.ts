import type { CellAddress } from "./address.ts";
import { noSheet, protectedSheet } from "./refusals.ts";
import { MARK_FILL, type Mark } from "./sheet-host.ts";

/** How a cell is filled; `null` for not at all. */
interface Fill {
  color: string;
  pattern?: string;
  patternColor?: string;
}

interface Marked {
  cell: CellAddress;
  /** What it looked like before, and the colour that the mark gave it. */
  before: Fill | null;
  mark: string;
}

/** The setting of the workbook that remembers what marked cells looked like. */
const MARKED = "crosshatch.marked";

/** Colours the cells in one sync, after two that read. Earlier marks come off in the same one. */
export async function mark(context: Excel.RequestContext, marks: readonly Mark[]): Promise<void> {
  const tones = new Map(marks.map((one) => [placeOf(one.cell), one]));
  await replaceMarks(context, [...tones.values()]);
}

export async function unmark(context: Excel.RequestContext): Promise<number> {
  return replaceMarks(context, []);
}

/** Takes every remembered mark off and puts these on; says how many there were. */
async function replaceMarks(context: Excel.RequestContext, marks: readonly Mark[]): Promise<number> {
  const { worksheets, settings } = context.workbook;
  const setting = settings.getItemOrNullObject(MARKED);
  setting.load("value");
  worksheets.load("items/name,items/protection/protected");
  await context.sync();
  const earlier = setting.isNullObject ? [] : (JSON.parse(String(setting.value)) as Marked[]);
  if (earlier.length === 0 && marks.length === 0) return 0;
  const sheets = new Map(worksheets.items.map((sheet) => [sheet.name, sheet]));
  for (const { cell } of marks) refuseClosed(sheets, cell.sheet);
  // A sheet deleted since has taken its marks with it.
  const there = earlier.filter(({ cell }) => sheets.has(cell.sheet));
  for (const { cell } of there) refuseClosed(sheets, cell.sheet);

  const fillAt = ({ sheet, row, column }: CellAddress) => sheets.get(sheet)!.getCell(row, column).format.fill;
  const cells = new Map([...there, ...marks].map(({ cell }) => [placeOf(cell), { cell, fill: fillAt(cell) }]));
  for (const { fill } of cells.values()) fill.load("color,pattern,patternColor,tintAndShade");
  await context.sync();

  const looks = new Map([...cells].map(([place, { fill }]) => [place, lookOf(fill)]));
  for (const { cell, before, mark: colour } of there) {
    const place = placeOf(cell);
    // Filled by the person since: that is how they want it.
    if (looks.get(place)?.color.toUpperCase() !== colour) continue;
    looks.set(place, before);
    give(cells.get(place)!.fill, before);
  }
  const marked = marks.map(({ cell, tone }) => {
    const place = placeOf(cell);
    give(cells.get(place)!.fill, { color: MARK_FILL[tone] });
    return { cell, before: looks.get(place) ?? null, mark: MARK_FILL[tone].toUpperCase() };
  });
  settings.add(MARKED, JSON.stringify(marked));
  await context.sync();
  return earlier.length;
}

function refuseClosed(sheets: ReadonlyMap<string, Excel.Worksheet>, name: string): void {
  const sheet = sheets.get(name);
  if (!sheet) throw noSheet(name);
  if (sheet.protection.protected) throw protectedSheet(name);
}

const placeOf = ({ sheet, row, column }: CellAddress): string => `${row},${column},${sheet}`;

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
