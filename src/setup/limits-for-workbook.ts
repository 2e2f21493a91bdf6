import { type Cell, isBlank } from "../core/cell.ts";
import type { ComparisonField } from "../vocabulary/headings.ts";
import { cellText, type TableLine } from "../vocabulary/table-lines.ts";
import type { CellAddress } from "../workbook/address.ts";
import type { Edit, SheetSnapshot } from "../workbook/port.ts";
import { type BookLimit, besideLimits, bookKey, type LimitsModel, limitLines, otherUnit, sourceText } from "./limits-book.ts";

/** A limit that a workbook already has otherwise than the limits book. */
export interface OtherLimit {
  characteristic: string;
  /** Where its limits stand: the row's first cell of them. */
  cell: CellAddress;
  /** What is typed, and what the book says, in words. */
  typed: string;
  inBook: string;
  edits: readonly Edit[];
}

/** What a model's limits come to in a workbook that is set up already. */
export interface LimitsForWorkbook {
  /** Of rows without a limit so far. */
  edits: Edit[];
  copied: number;
  /** Rows that say the same already. */
  same: number;
  /** Left as they are typed, unless somebody says otherwise. */
  others: OtherLimit[];
  notes: string[];
}

/** A model's limits for the tables of limits of a workbook, each with its source; nothing that is typed is among the edits. */
export function limitsFor(sheets: readonly SheetSnapshot[], { name, limits, refused }: LimitsModel, file: string): LimitsForWorkbook {
  const rows = sheets.flatMap((sheet) => [...limitLines(sheet)].map((line) => ({ sheet, line, key: bookKey(cellText(line.cells.characteristic)) })));
  const found: LimitsForWorkbook = { edits: [], copied: 0, same: 0, others: [], notes: [...refused] };
  const seen = new Set<string>();
  if (rows.length === 0) found.notes.push("this workbook has no table of limits: it needs the headings Characteristic, Lower, Upper and Unit");
  for (const limit of rows.length === 0 ? [] : limits) {
    const key = bookKey(limit.characteristic);
    const own = rows.filter((row) => row.key === key);
    if (seen.has(key)) found.notes.push(`${limit.characteristic}: the limits book has it twice, and the first counts`);
    else if (own.length === 0) found.notes.push(`${limit.characteristic}: no limit of this workbook has that name`);
    else for (const { sheet, line } of own) take(found, sheet, line, limit, sourceText(file, name, limit.source));
    seen.add(key);
  }
  return found;
}

function take(found: LimitsForWorkbook, sheet: SheetSnapshot, line: TableLine, limit: BookLimit, source: string): void {
  const { at } = line.columns;
  const { unit, source: sourceAt } = besideLimits(sheet, line);
  if (unit !== limit.unit) {
    found.notes.push(`${limit.characteristic}: ${otherUnit(limit.unit, unit)}`);
    return;
  }
  const oneSide = (["lower", "upper"] as const).find((side) => limit[side] !== null && at[side] === undefined);
  if (oneSide) {
    found.notes.push(`${limit.characteristic}: this workbook has no column for its ${oneSide} limit`);
    return;
  }
  // A distance counts where the book has one and the table a column for it.
  const fields = ["lower", "upper", ...DISTANCES.filter((field) => limit[field] !== null && at[field] !== undefined)] as const;
  const wanted: [column: number | undefined, content: number | string | null][] = [
    ...fields.map((field): [number | undefined, number | null] => [at[field], limit[field]]),
    [sourceAt, source],
  ];
  const edits = wanted.flatMap(([column, content]) =>
    // A side that the book leaves open is emptied where it was typed otherwise.
    column === undefined ? [] : [{ sheet: sheet.name, row: sheet.row + line.row, column: sheet.column + column, cells: [[content ?? ""]] }],
  );
  const typed = fields.map((field) => line.cells[field] ?? null);
  const inBook = fields.map((field) => limit[field]);
  const isFormula = [at.lower, at.upper].some((column) => column !== undefined && sheet.formulas[line.row]?.[column] != null);
  if (typed.every(isBlank) && !isFormula) {
    found.edits.push(...edits.filter(({ cells }) => cells[0]![0] !== ""));
    found.copied++;
  } else if (typed.every((cell, i) => (isBlank(cell) ? null : cell) === inBook[i])) found.same++;
  else {
    const cell = { sheet: sheet.name, row: sheet.row + line.row, column: sheet.column + (at.lower ?? at.upper)! };
    found.others.push({
      characteristic: limit.characteristic,
      cell,
      typed: typed.every(isBlank) ? "a formula that shows nothing" : limitSays(fields, typed),
      inBook: limitSays(fields, inBook),
      edits,
    });
  }
}

/** Beside the limits: how far from one is near it, and the smallest difference that matters. */
const DISTANCES = ["near", "matters"] as const;

/** `0.02 to 0.05`, `at most 0.08, near 0.005`, `at least 9.4, matters 0.1` */
function limitSays(fields: readonly ComparisonField[], cells: readonly Cell[]): string {
  const [low, high, ...distances] = cells.map(cellText);
  const sides = low && high ? `${low} to ${high}` : high ? `at most ${high}` : low ? `at least ${low}` : "no limit";
  return [sides, ...distances.flatMap((text, i) => (text === "" ? [] : [`${fields[i + 2]} ${text}`]))].join(", ");
}
