import * as engine from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { signatures } from "../../src/calc/grid-model.ts";
import type { Cell } from "../../src/core/cell.ts";
import { cellName } from "../../src/workbook/address.ts";
import type { CellFile, SheetFile, WorkbookFile } from "../../src/xlsx/model.ts";

/** A formula as it reads in a cell so many rows below and columns beside the one that it was written for. */
export type Written = (down: number, right: number) => string;

/** What is typed stands in these, formulas beside them. */
const ROWS = 7;
const COLUMNS = 6;
const SHEETS = ["Data", "It's"];

/** Functions that give something else every time. */
const RESTLESS = /^(?:RAND|RANDBETWEEN|RANDARRAY|NOW|TODAY)$/;

/** Every function that the engine knows here: its own, ours and the two helpers. */
export function functionNames(): string[] {
  signatures();
  return Object.keys((engine.registries.functionRegistry as unknown as { content: object }).content).filter((name) => !RESTLESS.test(name));
}

const fixed =
  (text: string): Written =>
  () =>
    text;

const number = fc.oneof(
  fc.integer({ min: -3, max: 12 }),
  fc.integer({ min: 72_000, max: 74_000 }).map((thousandths) => thousandths / 1000),
  fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }),
  fc.constantFrom(0, -0, 1e-7, 1e21, 45_000.5),
);

const LOOKALIKES = ["", " ", "73,02", "73.01", "TRUE", "=1+1", "2024-01-01", " 5 ", "5%", "$3", "1:30", "#N/A", "#DIV/0!", "#VALUE!", "check: x"];
const text = fc.oneof(fc.constantFrom(...LOOKALIKES, "Bore", "bore", 'a"b', "a\\b", "two\nlines", "in", "smallest", "thrust"), fc.string({ maxLength: 4 }));

/** What is typed into a cell. */
export const typed: fc.Arbitrary<Cell> = fc.oneof(
  { weight: 6, arbitrary: number },
  { weight: 3, arbitrary: text.filter((some) => some !== "") },
  { weight: 1, arbitrary: fc.boolean() },
  { weight: 1, arbitrary: fc.constantFrom("#DIV/0!", "#N/A", "#VALUE!", "#REF!", "#NUM!", "#NAME?", "#NULL!").map((error) => ({ error })) },
);

const place = fc.record({
  row: fc.integer({ min: 0, max: ROWS }),
  column: fc.oneof({ weight: 9, arbitrary: fc.nat(COLUMNS) }, { weight: 1, arbitrary: fc.nat(3 * COLUMNS) }),
  fixedRow: fc.boolean(),
  fixedColumn: fc.boolean(),
});

const cell: fc.Arbitrary<Written> = place.map(({ row, column, fixedRow, fixedColumn }) => (down, right) => {
  const name = cellName({ row: fixedRow ? row : row + down, column: fixedColumn ? column : column + right });
  return name.replace(/([A-Z]+)(\d+)/, `${fixedColumn ? "$$" : ""}$1${fixedRow ? "$$" : ""}$2`);
});

const sheetPrefix = fc.constantFrom("", "", "", "Data!", "'It''s'!", "'Data'!");
const reference: fc.Arbitrary<Written> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.tuple(sheetPrefix, cell).map(
      ([sheet, one]): Written =>
        (down, right) =>
          sheet + one(down, right),
    ),
  },
  {
    weight: 4,
    arbitrary: fc.tuple(sheetPrefix, cell, cell).map(
      ([sheet, from, to]): Written =>
        (down, right) =>
          `${sheet}${from(down, right)}:${to(down, right)}`,
    ),
  },
  { weight: 1, arbitrary: fc.constantFrom("Limit", "Left", "Readings[Bore]", "Readings[@Bore]", "Nowhere", "A:A", "2:2", "Data!$B$1:$B$400").map(fixed) },
);

const literal: fc.Arbitrary<Written> = fc
  .oneof(
    number.map((some) => String(some).toUpperCase()),
    text.map((some) => `"${some.replaceAll('"', '""')}"`),
    fc.constantFrom("TRUE", "FALSE", "#N/A", "{1,2;3,4}", '{"a",2}', "{73.01,73.02;73,73.01}", "5%"),
  )
  .map(fixed);

const OPERATORS = ["+", "-", "*", "/", "^", "&", "=", "<>", "<", ">", "<=", ">="];

/** Formulas of references, literals, operators and these functions, sensible or not. */
export function formula(names: readonly string[]): fc.Arbitrary<Written> {
  return fc.letrec<{ part: Written }>((tie) => {
    const part = tie("part");
    return {
      part: fc.oneof(
        { depthSize: "small", withCrossShrink: true },
        { weight: 4, arbitrary: reference },
        { weight: 2, arbitrary: literal },
        {
          weight: 3,
          arbitrary: fc.tuple(part, fc.constantFrom(...OPERATORS), part).map(
            ([a, operator, b]): Written =>
              (d, r) =>
                `${a(d, r)}${operator}${b(d, r)}`,
          ),
        },
        {
          weight: 1,
          arbitrary: fc.tuple(fc.constantFrom("-", "+", "("), part).map(
            ([sign, a]): Written =>
              (d, r) =>
                sign === "(" ? `(${a(d, r)})%` : sign + a(d, r),
          ),
        },
        {
          weight: 6,
          arbitrary: fc.tuple(fc.constantFrom(...names), fc.array(fc.option(part, { freq: 12, nil: fixed("") }), { maxLength: 5 })).map(
            ([name, args]): Written =>
              (d, r) =>
                `${name}(${args.map((arg) => arg(d, r)).join(",")})`,
          ),
        },
      ),
    };
  }).part;
}

const array: fc.Arbitrary<CellFile["array"]> = fc.oneof(
  { weight: 5, arbitrary: fc.constant(undefined) },
  { weight: 3, arbitrary: fc.constant({ rows: 1, columns: 1, grows: true }) },
  { weight: 1, arbitrary: fc.record({ rows: fc.integer({ min: 1, max: 3 }), columns: fc.integer({ min: 1, max: 2 }), grows: fc.constant(false) }) },
);

type Content = { value: Cell } | { written: Written; down: number; right: number; array: CellFile["array"] };

/** A formula in one cell, or filled down and across from there. */
const filled = (formulas: fc.Arbitrary<Written>) =>
  fc.record({
    written: formulas,
    sheet: fc.integer({ min: 0, max: SHEETS.length - 1 }),
    row: fc.integer({ min: 0, max: ROWS }),
    column: fc.oneof({ weight: 1, arbitrary: fc.nat(COLUMNS) }, { weight: 20, arbitrary: fc.integer({ min: 1, max: 6 }).map((n) => 1 + n * (COLUMNS + 1)) }),
    rows: fc.integer({ min: 1, max: 4 }),
    columns: fc.integer({ min: 1, max: 2 }),
    array,
  });

/** Workbooks of two sheets: typed cells, and formulas over them, filled down and across; a name, a table. */
export function books(formulas: fc.Arbitrary<Written>, mostFilled = 6): fc.Arbitrary<WorkbookFile> {
  const typedCells = fc.array(fc.tuple(fc.nat(SHEETS.length - 1), fc.nat(ROWS), fc.nat(COLUMNS), typed), { maxLength: 50 });
  return fc.tuple(typedCells, fc.array(filled(formulas), { minLength: 1, maxLength: mostFilled })).map(([cells, fills]) => {
    const contents = SHEETS.map(() => new Map<string, Content & { row: number; column: number }>());
    const put = (sheet: number, row: number, column: number, content: Content) => contents[sheet]!.set(`${row},${column}`, { row, column, ...content });
    for (const [sheet, row, column, value] of cells) put(sheet, row, column, { value });
    for (const { written, sheet, row, column, rows, columns, array } of fills)
      for (let down = 0; down < rows; down++)
        for (let right = 0; right < columns; right++) put(sheet, row + down, column + right, { written, down, right, array });
    return bookOf(contents.map((one, sheet) => sheetOf(SHEETS[sheet]!, [...one.values()])));
  });
}

function sheetOf(name: string, contents: (Content & { row: number; column: number })[]): SheetFile {
  const cells = contents.map((content): CellFile => {
    const { row, column } = content;
    if ("value" in content) return { row, column, value: content.value };
    const formula = content.written(content.down, content.right);
    return { row, column, value: null, formula, ...(content.array ? { array: content.array } : {}) };
  });
  cells.sort((a, b) => a.row - b.row || a.column - b.column);
  return { name, hidden: false, cells, hiddenRows: [] };
}

const bookOf = (sheets: SheetFile[]): WorkbookFile => ({
  sheets,
  names: [
    { name: "Limit", formula: "Data!$B$2" },
    { name: "Left", formula: "Data!XFD1" },
  ],
  tables: [{ name: "Readings", sheet: 0, area: { row: 0, column: 0, rows: 5, columns: 2 }, headerRows: 1, totalsRows: 0, columns: ["Bore", "Skirt #1"] }],
  from1904: false,
  storedTexts: new Map(),
});
