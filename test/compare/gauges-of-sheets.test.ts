import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import { headingKey, MEASURED_TOGETHER } from "../../src/vocabulary/measured-together.ts";
import { placeName } from "../../src/workbook/address.ts";
import type { SheetSpec, TableSpec } from "../../src/workbook/sheet-spec.ts";
import { Made } from "../setup/made.ts";

/**
 * Compare knows by words alone what the rows of a gauge table measured, because it reads workbooks that are years old as well as new ones.
 * So these words and the sheets of Set up are held together here: a new column that no gauge measures fails, and so does a word that no sheet has.
 */
const made = Made.of({ cylinders: 2, heights: 3, axes: 2, valves: 4, secondReadings: true });
const tablesOf = ({ book }: Made): { sheet: SheetSpec; table: TableSpec }[] => book.sheets.flatMap((sheet) => sheet.tables.map((table) => ({ sheet, table })));
const NO_READINGS = ["EngineData", "Gauges", "Measurements", "LimitList"];

/** Columns of a table into which people type numbers. */
function typedColumns({ sheet, table }: { sheet: SheetSpec; table: TableSpec }): { heading: string; column: number }[] {
  return table.headings.flatMap((heading, i) => {
    const [row, column] = [table.row + 1, table.column + i];
    const isTyped = sheet.cells.some((cell) => cell.row === row && cell.column === column && cell.style === "typed");
    const at = sheet.validations.find(
      ({ area }) => row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns,
    );
    return isTyped && ["above zero", "at least zero", "number"].includes(at?.rule.kind ?? "") ? [{ heading, column }] : [];
  });
}

/** The largest build sheet with one gauge for everything and a number in every cell where one is typed; the heading of each by its place. */
const filled = made.then(async (book) => {
  const measured = tablesOf(book).find(({ table }) => table.name === "Measurements")!.table;
  for (let i = 0; i < measured.rows; i++) await book.type("Measurements", "Gauge", i, "G-1");
  await book.type("Gauges", "Gauge id", 0, "G-1");
  await book.type("Gauges", "U of the gauge", 0, 0.001);
  const headings = new Map<string, string>();
  const blocks = tablesOf(book)
    .filter(({ table }) => !NO_READINGS.includes(table.name))
    .flatMap(({ sheet, table }) =>
      typedColumns({ sheet, table }).map(({ heading, column }) => {
        const row = table.row + 1;
        for (let r = 0; r < table.rows; r++) headings.set(placeName({ sheet: sheet.name, row: row + r, column }), `${table.name}: ${heading}`);
        return { sheet: sheet.name, row, column, cells: Array.from({ length: table.rows }, (_, r) => [10 + column / 10 + r / 100]) };
      }),
    );
  await book.host.write(blocks);
  return { headings, readings: readingsOfWorkbook(await book.host.read()).readings };
});

test("every reading that is typed on our sheets has the U of a gauge, but for masses, stamped sizes, hours and what a tester works out", async () => {
  const { headings, readings } = await filled;
  const typed = readings.flatMap(({ cell, uncertainty }) => {
    const heading = headings.get(placeName(cell));
    return heading === undefined ? [] : [{ heading, uncertainty }];
  });
  expect(new Set(typed.map(({ heading }) => heading)).size).toBeGreaterThan(100);
  expect([...new Set(typed.filter(({ uncertainty }) => uncertainty === undefined).map(({ heading }) => heading))]).toEqual([
    "RodMasses: Piston mass",
    "RodMasses: Rod mass",
    "RodMasses: Big end mass",
    "RodMasses: Small end mass weighed",
    "ValveSprings: Spring rate",
    "ValveReadings: Shim",
    "OilAdded: Hours at the mark",
  ]);
}, 60_000);

test("every row and every heading that is known to be measured together stands on our sheets", async () => {
  const book = await made;
  const measured = tablesOf(book).find(({ table }) => table.name === "Measurements")!;
  const rows = measured.sheet.cells
    .filter(({ row, column }) => column === measured.table.column && row > measured.table.row && row <= measured.table.row + measured.table.rows)
    .map(({ content }) => content);
  expect(Object.keys(MEASURED_TOGETHER).filter((row) => !rows.includes(row))).toEqual([]);
  // In some tables the row names the characteristic too: iron, head.
  const named = (await filled).readings.map(({ cell, characteristic }) => headingKey(characteristic, cell.sheet));
  const headed = tablesOf(book).flatMap(({ sheet, table }) => table.headings.map((heading) => headingKey(heading, sheet.name)));
  const there = [...named, ...headed];
  const stands = (known: string): boolean => {
    const [heading, sheet] = known.split("!").reverse();
    const key = headingKey(heading!, sheet);
    return there.some((one) => (sheet === undefined ? one.endsWith(key) : one === key));
  };
  expect(
    Object.values(MEASURED_TOGETHER)
      .flat()
      .filter((heading) => !stands(heading)),
  ).toEqual([]);
}, 60_000);
