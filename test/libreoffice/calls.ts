import { broadcast } from "../../src/core/broadcast.ts";
import type { Argument, Cell, Result } from "../../src/core/cell.ts";
import { Fault } from "../../src/core/fault.ts";
import { checkText } from "../../src/core/sentences.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";
import type { FileCell, NewSheetFile } from "../../src/xlsx/write/workbook-file.ts";
import { givenCount } from "../parity/answer.ts";
import { isError } from "../parity/held.ts";
import type { Input } from "../parity/inputs.ts";
import { type Layout, layOut } from "../parity/sheets.ts";
import type { Office } from "./office.ts";

/** What LibreOffice itself does to a call before or instead of handing it over, in the order in which it is looked for. */
export const OWN_WAYS = {
  surplus: "more inputs than the function takes are an error without a word",
  error: "a cell with an error is that error for the whole call, one in a range Err:504; of several arguments the last one counts",
  truth: "TRUE and FALSE arrive as 1 and 0",
  blank: "a lone blank cell arrives as 0",
} as const;
export type OwnWay = keyof typeof OWN_WAYS;

const isLone = (rows: readonly (readonly unknown[])[]): boolean => rows.length === 1 && rows[0]!.length === 1;

/** What a call comes to in LibreOffice's cells, by rows; and the way of its own that makes this differ from every other host, if one does. */
export function expected({ spec, given }: Input): { rows: Cell[][]; way?: OwnWay } {
  const taken = given.slice(0, givenCount(given));
  const right = rowsOf(
    spec,
    taken.map((one) => one?.rows.map((row) => row.map(({ value }) => value))),
  );
  if (taken.length > spec.inputs.length) return { rows: [[{ error: "Err:504" }]], way: "surplus" };
  const erring = taken.findLast((one) => one?.rows.flat().some(({ value }) => isError(value)));
  if (erring) return { rows: [[isLone(erring.rows) ? erring.rows[0]![0]!.value : { error: "Err:504" }]], way: "error" };
  const arriving = (value: Cell, one: { as: string; rows: readonly (readonly unknown[])[] }): Cell => {
    if (typeof value === "boolean") return value ? 1 : 0;
    return value === null && isLone(one.rows) ? 0 : (value ?? "");
  };
  const rows = rowsOf(
    spec,
    taken.map((one) => one?.rows.map((row) => row.map(({ value }) => arriving(value, one)))),
  );
  if (JSON.stringify(rows) === JSON.stringify(right)) return { rows };
  return { rows, way: taken.some((one) => one?.rows.flat().some(({ value }) => typeof value === "boolean")) ? "truth" : "blank" };
}

function rowsOf(spec: Input["spec"], blocks: readonly (Cell[][] | undefined)[]): Result[][] {
  const args = blocks.map((block): Argument => (block && isLone(block) ? block[0]![0] : block));
  const outcome = broadcast(spec, args);
  if (outcome instanceof Fault) return [[checkText(outcome)]];
  return Array.isArray(outcome) ? outcome : [[outcome]];
}

const placed = (calls: readonly Input[]): Layout => layOut(calls, "Inputs", (call) => expected(call).rows.length);

const STYLE = { style: "plain" } as const;
const sheet = (name: string, cells: FileCell[]): NewSheetFile => ({
  ...{ name, cells, widths: [], frozen: { rows: 0, columns: 0 }, tables: [], validations: [], verdicts: [], merges: [] },
  print: { paper: "A4", isLandscape: true },
});

/** Calls in a workbook as Excel stores it, each an array formula that reaches one row and one column further than its result. */
export function workbookOf(calls: readonly Input[]): Uint8Array {
  const { cells, formulas } = placed(calls);
  const inputs = cells
    .filter(({ held: { value, typed } }) => value !== null && value !== undefined && !(value === "" && typed === undefined))
    .map(({ row, column, held: { value, typed } }): FileCell => {
      const place = { row, column, ...STYLE };
      if (typeof value === "boolean") return { ...place, content: `=${String(value).toUpperCase()}()` };
      if (isError(value) || value === "") return { ...place, content: typed! };
      return { ...place, content: value as Result, isText: typeof value === "string" };
    });
  const results = formulas.map(({ row, formula }, i): FileCell => {
    const { rows } = expected(calls[i]!);
    return { row, column: 0, ...STYLE, content: `=${formula}`, block: { rows: rows.length + 1, columns: rows[0]!.length + 1 } };
  });
  return writeXlsx({ title: "Calls", names: [], sheets: [sheet("Inputs", inputs), sheet("Results", results)] });
}

/** What such an array formula shows: a single row or column repeats, beyond the rest there is nothing. */
const shown = (rows: readonly (readonly Cell[])[]): Cell[][] =>
  Array.from({ length: rows.length + 1 }, (_, r) =>
    Array.from({ length: rows[0]!.length + 1 }, (__, c) => {
      const line = rows.length === 1 ? rows[0] : rows[r];
      const cell = rows[0]!.length === 1 ? line?.[0] : line?.[c];
      return cell === undefined ? { error: "#N/A" } : cell;
    }),
  );

const words = ({ spec, given }: Input): string =>
  `${spec.name} of ${JSON.stringify(given.map((one) => one && [one.as, one.rows.map((row) => row.map(({ value, typed }) => typed ?? value))]))}`;

/** Tries the calls in the cells of the office program; gives where it shows something else, in words that lead there. */
export async function differences(office: Office, calls: readonly Input[]): Promise<string[]> {
  await office.ask("open", { key: "calls", file: office.put("calls.xlsx", workbookOf(calls)), calculate: false });
  const values = await office.ask<Cell[][]>("cells", { key: "calls", sheet: "Results" });
  await office.ask("close", { key: "calls" });
  const { formulas } = placed(calls);
  return formulas.flatMap(({ row }, i) => {
    const wanted = shown(expected(calls[i]!).rows);
    const found = wanted.map((line, r) => line.map((_, c) => values[row + r]?.[c] ?? null));
    const same = JSON.stringify(found) === JSON.stringify(wanted);
    return same ? [] : [`${words(calls[i]!)} is ${JSON.stringify(wanted)}, but here ${JSON.stringify(found)}`];
  });
}
