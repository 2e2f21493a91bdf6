import { compareReadings } from "../../src/compare/compare.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import { reportInput } from "../../src/report/gather/workbook.ts";
import { type CellAddress, placeName } from "../../src/workbook/address.ts";
import { Made } from "../setup/made.ts";
import { type FilledPart, PARTS } from "./filled-parts.ts";

const CHOICES = { cylinders: 2, heights: 2, axes: 2, valves: 2 };

async function filled({ gauges, readings, items = {} }: FilledPart): Promise<Made> {
  const made = await Made.of(CHOICES);
  for (const [i, [measured, U]] of Object.entries(gauges).entries()) {
    await made.type("Gauges", "Gauge id", i, `G-${i}`);
    await made.type("Gauges", "U of the gauge", i, U);
    await made.type("Measurements", "Gauge", made.rowOf("Measurements", measured), `G-${i}`);
    await made.type("Measurements", "Measured on", made.rowOf("Measurements", measured), 46095 + i);
  }
  for (const [item, entry] of Object.entries(items)) await made.item(item, entry);
  for (const [table, columns] of Object.entries(readings)) for (const [heading, sizes] of Object.entries(columns)) await made.fill(table, heading, sizes);
  return made;
}

/** The columns of a sheet by the place of each cell in it, with the U that it should have. */
function expectedIn(made: Made, { U }: FilledPart): Map<string, number> {
  const rows = (table: string): number => made.book.sheets.flatMap(({ tables }) => tables).find(({ name }) => name === table)!.rows;
  return new Map(
    Object.entries(U).flatMap(([table, columns]) =>
      Object.entries(columns).flatMap(([heading, one]) =>
        Array.from({ length: rows(table) }, (_, i) => [placeName(made.at(table, heading, i)), one] as [string, number]),
      ),
    ),
  );
}

const at = (cell: CellAddress): string => placeName(cell);

describe.each(Object.entries(PARTS))("the sheet %s", (_, part) => {
  const made = filled(part);
  const snapshot = made.then(({ host }) => host.read());

  test("Compare takes every reading's U from its own gauge, and every result's from its readings", async () => {
    const set = readingsOfWorkbook(await snapshot);
    const { places, refused } = compareReadings(set, { ...set, name: "again" });
    expect(refused).toEqual([]);
    const expected = expectedIn(await made, part);
    const seen = new Set<number>();
    for (const { label, uncertainty, before, verdict } of places) {
      const U = expected.get(at(before.readings[0]!.cell));
      if (U === undefined) continue;
      seen.add(U);
      // Of a change √2 times that, kept to nine decimals; the same twice is no difference, and what may hide is said.
      expect([label, Math.abs(uncertainty! - Math.SQRT2 * U) < 1.5e-9, verdict]).toEqual([label, true, "cannot tell"]);
    }
    expect(seen).toEqual(new Set(Object.values(part.U).flatMap((columns) => Object.values(columns))));
  });

  test("what a gauge measured is of its session: the gauge and its day are known", async () => {
    const { readings } = readingsOfWorkbook(await snapshot);
    const gauges = Object.values(part.gauges);
    const typed = new Set(Object.entries(part.readings).flatMap(([table, columns]) => Object.keys(columns).map((heading) => `${table}|${heading}`)));
    const book = await made;
    const isTyped = new Map([...typed].map((one) => [at(book.at(...(one.split("|") as [string, string]))), one]));
    const known = readings.filter(({ cell, uncertainty }) => isTyped.has(at(cell)) && uncertainty !== undefined);
    expect(known.length).toBeGreaterThan(0);
    for (const { uncertainty, gauge, day } of known) {
      const i = gauges.indexOf(uncertainty!);
      expect([gauge, day]).toEqual([`G-${i}`, new Date(Date.UTC(2026, 2, 14 + i)).toISOString().slice(0, 10)]);
    }
  });

  test("the report judges by the same U", async () => {
    const book = await made;
    const limited = await filled(part);
    // A limit beside each characteristic: what stands there judges, whatever it says.
    const { sheet, row, column } = limited.at("LimitList", "Upper");
    const { rows } = book.book.sheets.flatMap(({ tables }) => tables).find(({ name }) => name === "LimitList")!;
    await limited.host.write([{ sheet, row, column, cells: Array.from({ length: rows }, () => [1000]) }]);
    const { judged } = reportInput(await limited.host.read());
    const expected = expectedIn(limited, part);
    const told = judged.rows.filter(({ cell }) => cell && expected.has(at(cell)));
    expect(told.length).toBeGreaterThan(0);
    for (const { label, cell, uncertainty } of told) expect([label, uncertainty / expected.get(at(cell!))!]).toEqual([label, expect.closeTo(1, 6)]);
  });
});

test("the timing's U goes from its own column into both", async () => {
  const made = await filled(PARTS.Camshaft!);
  const set = readingsOfWorkbook(await made.host.read());
  const [U] = (await made.column("ValveTiming", "U, valve opens")) as [number];
  expect(U).toBeGreaterThan(1);
  const { places } = compareReadings(set, { ...set, name: "again" });
  const cell = at(made.at("ValveTiming", "Valve opens"));
  expect(places.find(({ before }) => at(before.readings[0]!.cell) === cell)!.uncertainty! / Math.SQRT2).toBeCloseTo(U, 9);
});

describe("what stands in a row is called by its own name", () => {
  const labels = async (part: string) => readingsOfWorkbook(await (await filled(PARTS[part]!)).host.read()).readings;

  test("main bearings, bearings of a camshaft and samples are no cylinders", async () => {
    const named = (readings: Awaited<ReturnType<typeof labels>>) =>
      readings.filter(({ cylinder }) => cylinder !== "").map(({ characteristic }) => characteristic);
    expect((await labels("Crankshaft")).find(({ characteristic }) => characteristic === "Main journal upright")).toMatchObject({
      cylinder: "",
      position: "Main bearing 1",
    });
    expect(named(await labels("Oil and blow-by"))).toEqual([]);
    expect(named(await labels("Camshaft")).every((name) => /^(lobe|base circle)/i.test(name))).toBe(true);
  });

  test("head and deck, and the elements in the oil, are not averaged with one another", async () => {
    const means = async (part: string) => {
      const set = readingsOfWorkbook(await (await filled(PARTS[part]!)).host.read());
      return compareReadings(set, { ...set, name: "again" }).means.map(({ characteristic }) => characteristic);
    };
    expect(await means("Faces")).toEqual(expect.not.arrayContaining(["Height", "Flatness", "Flatness over a span"]));
    // Two samples of each element.
    expect((await means("Oil and blow-by")).filter((name) => /content|oil$/i.test(name))).toHaveLength(7);
  });

  test("a gap of a valve is none of a ring, and a height of a bore no bore", async () => {
    const own = new Set(
      ["Faces", "Crankshaft"].flatMap(async (part) => {
        const set = readingsOfWorkbook(await (await filled(PARTS[part]!)).host.read());
        return compareReadings(set, { ...set, name: "again" }).places.map((place) => place.own);
      }),
    );
    const names = (await Promise.all([...own])).flat();
    expect(names).toEqual(expect.arrayContaining(["inlet valve gap at the top", "face height", "piston height"]));
    // Heights of main bores have any zero point: their alignment is compared.
    expect(names).toContain("main bore alignment");
    for (const wrong of ["bore", "main bore height", "piston skirt", "top ring end gap"]) expect(names).not.toContain(wrong);
  });
});
