import type { Cell } from "../../src/core/cell.ts";
import { columnLetters } from "../../src/workbook/address.ts";
import { type Answer, bare } from "./answer.ts";
import { type Held, isError } from "./held.ts";
import type { Input } from "./inputs.ts";

/** Calls laid out in a workbook: what they are given on one sheet, their formulas on another. */
export interface Layout {
  cells: { row: number; column: number; held: Held }[];
  /** Rows apart, so that each has room for what it fills and an empty row under it. */
  formulas: { row: number; formula: string }[];
  /** Size of both sheets. */
  rows: number;
  columns: number;
}

const WIDE = 90;

/** `height` says how many rows the result of a call fills. */
export function layOut(calls: readonly Input[], sheet: string, height: (call: Input) => number = bareHeight): Layout {
  const layout: Layout = { cells: [], formulas: [], rows: 1, columns: WIDE };
  let free = 0;
  let next = 0;
  for (const { spec, given } of calls) {
    const written = given.map((one) => {
      if (!one) return "";
      if (one.as === "literal") return literal(one.rows);
      const top = free;
      one.rows.forEach((row, r) => {
        for (const [column, held] of row.entries()) layout.cells.push({ row: top + r, column, held });
      });
      free += one.rows.length + 1;
      const [rows, columns] = [one.rows.length, one.rows[0]!.length];
      const first = `A${top + 1}`;
      return `${sheet}!${rows * columns === 1 ? first : `${first}:${columnLetters(columns - 1)}${top + rows}`}`;
    });
    layout.formulas.push({ row: next, formula: `HATCH.${spec.name}(${written.join(",")})` });
    next += height({ spec, given }) + 1;
  }
  return { ...layout, rows: Math.max(free, next) + 1 };
}

function bareHeight(call: Input): number {
  const answer = bare(call);
  return "rows" in answer ? answer.rows.length : 1;
}

function literal(rows: readonly (readonly Held[])[]): string {
  const text = rows.map((row) => row.map(({ value }) => written(value)).join(",")).join(";");
  return rows.length * rows[0]!.length === 1 ? text : `{${text}}`;
}

const written = (value: Cell): string => (typeof value === "string" ? `"${value.replaceAll('"', '""')}"` : String(value).toUpperCase());

/** What stands where a formula is and below and beside it, up to the next formula. */
export function answersIn(values: readonly (readonly Cell[])[], { formulas }: Layout): Answer[] {
  return formulas.map(({ row }, i) => {
    const first = values[row]?.[0] ?? null;
    if (isError(first)) return { fault: first.error === "#VALUE!" ? (first.message ?? "") : `${first.error} ${first.message ?? ""}` };
    const end = formulas[i + 1]?.row ?? values.length;
    const block = values.slice(row, end).map((line) => filled(line));
    while (block.length > 1 && block.at(-1)!.length === 0) block.pop();
    return { rows: block };
  });
}

function filled(line: readonly Cell[]): Cell[] {
  const end = line.findLastIndex((cell) => cell !== null && cell !== undefined);
  return line.slice(0, end + 1);
}
