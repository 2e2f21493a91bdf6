import { type Criterion, criterionOf } from "./criteria.ts";
import {
  type CallContext,
  calledIn,
  declared,
  type Given,
  type GridCell,
  type GridParts,
  gridBlock,
  isError,
  notHere,
  type OwnFunction,
  Reader,
  SheetFault,
} from "./own-function.ts";

type Block = (GridCell | undefined)[][];

/** What a condition of a list asks for: as in COUNTIF, but a text alone asks for what begins with it, and nothing at all for everything. */
function conditionOf(cell: GridCell | undefined, read: (text: string) => number | undefined): Criterion | undefined {
  const value = cell?.value ?? null;
  if (value === null || value === "") return undefined;
  const isTextAlone = typeof value === "string" && !/^(?:[<>=]|true$|false$)/i.test(value) && !isError(value) && read(value) === undefined;
  return criterionOf(isTextAlone ? `${value}*` : value, read);
}

const headingOf = (cell: GridCell | undefined): string => String(cell?.value ?? "").toLowerCase();

/** DSUM and its like: a function over one column of a list, in the rows that meet one row of the conditions. Without a column the rows count. */
export function databaseFunctions(grid: GridParts): Record<string, OwnFunction> {
  const reader = new Reader(grid.helpers);
  const mapping = calledIn(grid);

  function rowsOf(list: Block, conditions: Block, around: CallContext): number[] {
    const read = (text: string): number | undefined => reader.inText(text, around.locale);
    const headings = list.map(([heading]) => headingOf(heading));
    const columns = conditions.map(([heading]) => headings.indexOf(headingOf(heading)));
    const wanted = Array.from({ length: (conditions[0]?.length ?? 1) - 1 }, (_, i) =>
      conditions.flatMap((column, c) => {
        const criterion = conditionOf(column[i + 1], read);
        if (!criterion) return [];
        if (columns[c]! < 0)
          throw new SheetFault(
            "#VALUE!",
            notHere(`No column of the list is called ${JSON.stringify(column[0]?.value ?? "")}; formulas as conditions are not calculated here.`),
          );
        return [{ column: list[columns[c]!]!, criterion }];
      }),
    );
    return Array.from({ length: (list[0]?.length ?? 1) - 1 }, (_, i) => i + 1).filter((row) =>
      wanted.some((all) => all.every(({ column, criterion }) => criterion.fits(column[row]?.value))),
    );
  }

  function columnOf(list: Block, field: Given, around: CallContext): number {
    const cell = gridBlock(field)[0]?.[0];
    if (isError(cell?.value)) throw cell;
    const place =
      typeof cell?.value === "string" ? list.findIndex(([heading]) => headingOf(heading) === headingOf(cell)) : Math.trunc(reader.number(field, around)) - 1;
    if (!list[place]) throw new SheetFault("#VALUE!", "The field is the heading of a column of the list, or its number from 1.");
    return place;
  }

  const over = (name: string, description: string, of: (this: CallContext, cells: GridCell[]) => GridCell): OwnFunction =>
    declared(
      grid.helpers,
      description,
      ["list (any, range)", "field (any, optional)", "conditions (any, range, optional)"],
      function (list, field, conditions) {
        if (conditions === undefined) return new SheetFault("#VALUE!", "The conditions are a range: headings, and below them what is asked for.");
        const block = gridBlock(list);
        if ((block[0]?.length ?? 0) < 2) return new SheetFault("#VALUE!", "A list is a row of headings with rows below it.");
        const rows = rowsOf(block, gridBlock(conditions), this);
        const hasField = field !== undefined && (gridBlock(field)[0]?.[0]?.value ?? null) !== null;
        if (!hasField && COUNTING_ROWS.has(name)) return rows.length;
        const column = block[columnOf(block, field, this)]!;
        return of.call(
          this,
          rows.flatMap((row) => column[row] ?? []),
        );
      },
    );
  const by = (name: string, description: string, sheetFunction: string): OwnFunction =>
    over(name, description, function (cells) {
      return mapping[sheetFunction]!.call(this, [cells]);
    });

  const functions = Object.fromEntries(
    BY_SHEET_FUNCTION.map(([name, sheetFunction, what]) => [name, by(name, `${what} in the rows of a list that meet conditions`, sheetFunction)]),
  );
  return {
    ...functions,
    DGET: over("DGET", "The one value in the rows of a list that meet conditions", (cells) => {
      if (cells.length === 0) throw new SheetFault("#VALUE!", "No row of the list meets the conditions.");
      if (cells.length > 1) throw new SheetFault("#NUM!", "More than one row of the list meets the conditions.");
      return cells[0]!;
    }),
  };
}

const COUNTING_ROWS = new Set(["DCOUNT", "DCOUNTA"]);

const BY_SHEET_FUNCTION: readonly [name: string, sheetFunction: string, what: string][] = [
  ["DAVERAGE", "AVERAGE", "Mean"],
  ["DCOUNT", "COUNT", "How many numbers there are"],
  ["DCOUNTA", "COUNTA", "How many values there are"],
  ["DMAX", "MAX", "Largest number"],
  ["DMIN", "MIN", "Smallest number"],
  ["DPRODUCT", "PRODUCT", "Product"],
  ["DSTDEV", "STDEV.S", "Standard deviation of a sample"],
  ["DSTDEVP", "STDEV.P", "Standard deviation of all"],
  ["DSUM", "SUM", "Sum"],
  ["DVAR", "VAR.S", "Variance of a sample"],
  ["DVARP", "VAR.P", "Variance of all"],
];
