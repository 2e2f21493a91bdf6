import { isBlank } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";
import { areaOf, type FormulaContext } from "./evaluate.ts";
import { callsOf } from "./own-calls.ts";
import { type AstExpression, parseFormula, references } from "./parse.ts";
import type { Origin, Origins } from "./precedents.ts";
import { type Area, cellsOf } from "./workbook-cells.ts";

/** Formulas that lead to formulas that lead to formulas; a chain in a build sheet is short. */
const LONGEST_CHAIN = 20;

/** The area that an argument refers to, or nothing when it is worked out otherwise. */
export function areaIn(node: AstExpression | null | undefined, context: FormulaContext): Area | undefined {
  const area = node ? areaOf(node, context) : undefined;
  return area !== undefined && "rows" in area ? area : undefined;
}

/** The cell to mend where `cell` holds a fault: back through our functions to the input that none of them can take. */
export function faultSource(origins: Origins, cell: CellAddress, chain = 0): CellAddress {
  const origin = origins.of(cell);
  if (!origin || chain > LONGEST_CHAIN) return cell;
  const { book } = origins;
  for (const { spec, args, context } of callsOf(book, origin.at, origin.formula)) {
    for (const [i, { name, param }] of spec.inputs.entries()) {
      const area = areaIn(args[i], context);
      const bad = area && firstOf(origin, area, (inside) => param.take(book.value(inside), name) instanceof Fault);
      if (bad && placeName(bad) !== placeName(cell)) return faultSource(origins, bad, chain + 1);
    }
  }
  return cell;
}

/** The blank cell because of which `cell` is blank: back through whatever its formula refers to. */
export function blankSource(origins: Origins, cell: CellAddress, chain = 0): CellAddress {
  const origin = origins.of(cell);
  if (!origin || chain > LONGEST_CHAIN) return cell;
  const { book } = origins;
  for (const node of references(parseFormula(origin.formula))) {
    const area = areaIn(node, { book, sheet: origin.at.sheet, cell: origin.at });
    const blank = area && firstOf(origin, area, (inside) => isBlank(book.value(inside)));
    if (blank && placeName(blank) !== placeName(cell)) return blankSource(origins, blank, chain + 1);
  }
  return cell;
}

/** The first cell for which `holds`, of those of the area that this cell of the block gets its input from. */
function firstOf(origin: Origin, area: Area, holds: (cell: CellAddress) => boolean): CellAddress | undefined {
  for (const cell of cellsOf(partFor(origin, area))) if (holds(cell)) return cell;
  return undefined;
}

/** Blocks are worked out row by row and column by column; a block of labelled rows has one row more for its head. */
function partFor({ block, row, column }: Origin, area: Area): Area {
  const head = block.rows - area.rows;
  const byRow = area.rows > 1 && (head === 0 || head === 1) && row >= head;
  const byColumn = area.columns > 1 && area.columns === block.columns;
  return {
    sheet: area.sheet,
    row: byRow ? area.row + row - head : area.row,
    column: byColumn ? area.column + column : area.column,
    rows: byRow ? 1 : area.rows,
    columns: byColumn ? 1 : area.columns,
  };
}
