import type { CellAddress } from "../../workbook/address.ts";
import type { Edit, SheetPicture } from "../../workbook/port.ts";
import { noSheet, protectedSheet } from "../../workbook/refusals.ts";
import { POINTS_OF_A_PIXEL } from "../../workbook/styles.ts";
import { areasText, halfChanged, type UndoableEdit } from "./change.ts";

/** One cell's content as Excel takes it. */
type Typed = number | string | boolean | null;

interface Target {
  sheet: string;
  row: number;
  column: number;
  block: Typed[][];
}

/** One sync to look at the sheets, one at the cells. */
export async function write(context: Excel.RequestContext, edits: readonly Edit[]): Promise<UndoableEdit> {
  const sheets = await openSheets(
    context,
    edits.map(({ sheet }) => sheet),
  );
  const targets = edits.flatMap(targetOf);
  const ranges = targets.map((target) => rangeOf(sheets.get(target.sheet)!, target));
  for (const range of ranges) range.load("formulas,values,hasSpill");
  await context.sync();
  const before = ranges.map(({ formulas, values, hasSpill }) => ({ formulas: formulas as Typed[][], values: values as Typed[][], spills: hasSpill !== false }));
  const cells = targets.flatMap((target) => cellsOf(target));
  return {
    result: undefined,
    where: areasText(cells),
    order: () => {
      for (const [i, { block }] of targets.entries()) ranges[i]!.formulas = block;
    },
    takeBack: async (again) => {
      const found = await differences(again, targets, before);
      if (!found.some(({ isChanged }) => isChanged)) return "";
      // What a formula elsewhere spills cannot be typed back; Excel would then take it for the person's own.
      if (before.every(({ spills }) => !spills)) {
        await putBack(again, targets, before, found);
        return halfChanged(await differences(again, targets, before));
      }
      return halfChanged(found);
    },
  };
}

function targetOf({ sheet, row, column, cells }: Edit): Target[] {
  const width = Math.max(0, ...cells.map((line) => line.length));
  if (width === 0) return [];
  // Excel leaves a cell alone where the block holds null.
  return [{ sheet, row, column, block: cells.map((line) => Array.from({ length: width }, (_, c) => typed(line[c] ?? null))) }];
}

const rangeOf = (sheet: Excel.Worksheet, { row, column, block }: Target): Excel.Range => sheet.getRangeByIndexes(row, column, block.length, block[0]!.length);

/** The cells that are written to. */
const cellsOf = ({ sheet, row, column, block }: Target): CellAddress[] =>
  block.flatMap((line, r) => line.flatMap((content, c) => (content === null ? [] : [{ sheet, row: row + r, column: column + c }])));

/** Excel reads text as if it were typed: `'` in front keeps 73,02 or 3/4 from becoming something else. */
export function typed(value: Typed): Typed {
  return typeof value === "string" && value !== "" && !value.startsWith("=") ? `'${value}` : value;
}

interface Before {
  formulas: Typed[][];
  values: Typed[][];
  /** Whether a formula spills into some of these cells. */
  spills: boolean;
}

interface Found {
  cell: CellAddress;
  isChanged: boolean;
  target: number;
}

async function differences(context: Excel.RequestContext, targets: readonly Target[], before: readonly Before[]): Promise<Found[]> {
  const ranges = targets.map((target) => rangeOf(context.workbook.worksheets.getItem(target.sheet), target));
  for (const range of ranges) range.load("formulas");
  await context.sync();
  return targets.flatMap((target, i) =>
    cellsOf(target).map((cell) => {
      const [r, c] = [cell.row - target.row, cell.column - target.column];
      return { cell, target: i, isChanged: ranges[i]!.formulas[r]![c] !== before[i]!.formulas[r]![c] };
    }),
  );
}

/** The earlier of two edits on one cell knows what was there, so the last is put back first. */
async function putBack(context: Excel.RequestContext, targets: readonly Target[], before: readonly Before[], found: readonly Found[]): Promise<void> {
  for (const [i, target] of [...targets.entries()].reverse()) {
    const block = target.block.map((line) => line.map((): Typed => null));
    for (const { cell, isChanged, target: own } of found) {
      if (own !== i || !isChanged) continue;
      const [r, c] = [cell.row - target.row, cell.column - target.column];
      const [formula, value] = [before[i]!.formulas[r]![c]!, before[i]!.values[r]![c]!];
      // Text that starts with = is its own formula.
      block[r]![c] = typeof formula === "string" && formula !== "" && formula === value ? `'${formula}` : formula;
    }
    rangeOf(context.workbook.worksheets.getItem(target.sheet), target).formulas = block;
  }
  await context.sync();
}

/** The named sheets, once all of them are known to be there and open to changes. One sync. */
async function openSheets(context: Excel.RequestContext, names: readonly string[]): Promise<Map<string, Excel.Worksheet>> {
  const sheets = new Map([...new Set(names)].map((name) => [name, context.workbook.worksheets.getItemOrNullObject(name)]));
  for (const sheet of sheets.values()) sheet.load("name,protection/protected");
  await context.sync();
  for (const [name, sheet] of sheets) {
    if (sheet.isNullObject) throw noSheet(name);
    if (sheet.protection.protected) throw protectedSheet(name);
  }
  return sheets;
}

/** Excel measures in points. */
export const pointsOf = (pixels: number): number => pixels * POINTS_OF_A_PIXEL;

/** Two syncs to look. */
export async function insertPicture(context: Excel.RequestContext, { sheet: name, row, column }: CellAddress, picture: SheetPicture): Promise<UndoableEdit> {
  const sheet = (await openSheets(context, [name])).get(name)!;
  const corner = sheet.getCell(row, column);
  corner.load("left,top");
  sheet.shapes.load("items/id");
  await context.sync();
  const there = new Set(sheet.shapes.items.map(({ id }) => id));
  return {
    result: undefined,
    where: `the pictures of the sheet ${name}`,
    order: () => place(sheet, corner, picture),
    takeBack: async (again) => {
      const { shapes } = again.workbook.worksheets.getItem(name);
      const ours = async () => {
        shapes.load("items/id");
        await again.sync();
        return shapes.items.filter(({ id }) => !there.has(id));
      };
      for (const shape of await ours()) shape.delete();
      await again.sync();
      return (await ours()).length > 0 ? `It could not be taken back: the picture stands on the sheet ${name}.` : "";
    },
  };
}

/** As PNG, whatever the picture is kept as. */
export async function firstPicture(context: Excel.RequestContext, name: string): Promise<string | null> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(name);
  sheet.load("name");
  await context.sync();
  if (sheet.isNullObject) return null;
  const { shapes } = sheet;
  shapes.load("items/type,items/top,items/left");
  await context.sync();
  const [first] = shapes.items.filter(({ type }) => type === "Image").sort((a, b) => a.top - b.top || a.left - b.left);
  if (!first) return null;
  const file = first.getAsImage("PNG");
  await context.sync();
  const { value } = file;
  return value;
}

function place(sheet: Excel.Worksheet, corner: Excel.Range, picture: SheetPicture): void {
  const shape = sheet.shapes.addImage(picture.png);
  shape.name = picture.name;
  shape.altTextDescription = picture.description;
  // Until this is off, one measure changes the other.
  shape.lockAspectRatio = false;
  shape.left = corner.left;
  shape.top = corner.top;
  shape.width = pointsOf(picture.width);
  shape.height = pointsOf(picture.height);
  shape.lockAspectRatio = true;
}
