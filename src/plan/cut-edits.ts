import type { Block } from "../core/cell.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import { type CellArea, cellName } from "../workbook/address.ts";
import type { Cut, CutInputs, PartRow } from "./cut.ts";
import { formulaOf, isArea, type PlanInput, reference, referencesTo } from "./inputs.ts";
import { type PlanBlock, type PlannedContent, type PlanTarget, planEdits, valueParts, type WrittenPlan } from "./placement.ts";

export const noAllowance = ({ work }: Cut): string => `no stock for ${work} is typed: any cut at all, however small, counts as cleaning up`;

const valuesOf = ({ name, needed, size, finish, first, leastStock, mostStock, says }: PartRow): PlannedContent[] => [
  name,
  needed ?? "",
  size ?? says,
  finish ?? "",
  leastStock ?? "",
  mostStock ?? "",
  ...(first === null ? [] : [first]),
];

export function written(
  book: WorkbookCells,
  cut: Cut,
  inputs: CutInputs,
  fitting: readonly PlanInput[],
  place: PlanTarget,
  lines: Block,
  rows: readonly PartRow[],
  header: readonly PlannedContent[],
  stock: number,
): WrittenPlan {
  const { parts, standard, sizes, allowance = null, centring = null, common = null } = inputs;
  const given = "rows" in parts ? [parts.rows] : [...parts.blocks];
  const sources = [...given, standard, sizes, allowance, centring, common, ...fitting].filter((one): one is CellArea => isArea(one));
  if (place.as === "values" || !given.every(isArea)) {
    const noted = stock > 0 ? [] : [[noAllowance(cut)]];
    const more = rows.some(({ first }) => first !== null) ? [beforeHeading(cut)] : [];
    return planEdits(book, place, "values", valueParts([[...header, ...more], ...rows.map(valuesOf), ...noted], place.date), sources);
  }
  const { sheet } = place.at;
  const taken = (readings: CellArea, axes: number | undefined): PlanBlock => ({
    row: 0,
    column: 0,
    cells: [[{ formula: formulaOf(cut.spec, [readings, standard, sizes, allowance, centring, axes ?? null, common, ...fitting], sheet) }]],
    // A part that is still blank gets its row once it is measured.
    fills: { rows: lines.length + 1, columns: header.length },
  });
  const more = [
    ...(inputs.names ? [["name", ...rows.map(({ name }) => name)]] : []),
    ...(cut.before !== undefined && stock > 0 ? [[beforeHeading(cut), ...rows.map((_, at) => beforeFormula(place, at, allowance))]] : []),
  ];
  const columns = more.map((cells, at): PlanBlock => ({ row: 0, column: header.length + at, cells: cells.map((cell) => [cell]) }));
  const note = [...columns, ...noteUnder(cut, allowance, stock, lines.length + 1, sheet)];
  if ("rows" in parts || given.length === 1)
    return planEdits(book, place, "formulas", [taken(given[0]!, "rows" in parts ? parts.axes : undefined), ...note], sources);
  const beside = linesBeside(given, sheet, cut, header.length + more.length + 1);
  const readings = { sheet, row: place.at.row + 1, column: place.at.column + beside.column, rows: lines.length, columns: lines[0]!.length };
  return planEdits(book, place, "formulas", [taken(readings, readings.columns), beside, ...note], sources);
}

const beforeHeading = ({ before }: Cut): string => `${before} to`;

/** The finish bore stands in the fourth column of what the function fills. */
function beforeFormula({ at: { sheet, row, column } }: PlanTarget, at: number, allowance: PlanInput): PlannedContent {
  const finish = cellName({ row: row + 1 + at, column: column + 3 });
  const stock = isArea(allowance) ? reference(allowance, sheet) : String(allowance);
  return { formula: `=IF(ISNUMBER(${finish}),ROUND(${finish}-${stock},6),"")` };
}

/** Says under the plan that no allowance is typed; where it has a cell, as long as that is blank. */
function noteUnder(cut: Cut, allowance: PlanInput, stock: number, row: number, sheet: string): PlanBlock[] {
  if (isArea(allowance)) return [{ row, column: 0, cells: [[{ formula: `=IF(${reference(allowance, sheet)}>0,"","${noAllowance(cut)}")` }]] }];
  return stock > 0 ? [] : [{ row, column: 0, cells: [[noAllowance(cut)]] }];
}

/** The function takes one part a row, so blocks are brought into rows first, right of the plan and cell by cell. */
const linesBeside = (blocks: readonly CellArea[], sheet: string, { part }: Cut, column: number): PlanBlock => ({
  row: 0,
  column,
  cells: [[`readings, one ${part} a row`], ...blocks.map((block) => referencesTo(block, sheet))],
});
