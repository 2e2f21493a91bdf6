import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { broadcast } from "../../src/core/broadcast.ts";
import { sweptVolume } from "../../src/functions/volumes/swept-volume.ts";

// UCI Machine Learning Repository, Automobile data set (J. Schlimmer, 1987), CC BY 4.0; see SOURCES.md.
// The column `agrees` was worked out apart from this project: 1 where bore, stroke and displacement,
// each within the rounding of its last printed digit, fit together.
interface Row {
  cylinders: number;
  bore_in: number;
  stroke_in: number;
  displacement_cuin: number;
  computed_cuin: number;
  agrees: number;
}

const text = readFileSync(new URL("engine-geometry-1985.csv", import.meta.url), "utf8");
const rows = parse(text, { columns: true, cast: (cell, { header }) => (header ? cell : Number(cell)) }) as Row[];

const HALF_INCH_DIGIT = 0.005;
const HALF_CUBIC_INCH = 0.5;

/** Swept volumes of all rows in one call, as a sheet would ask for a whole column. */
function volumes(shift: number): number[] {
  const column = (pick: (row: Row) => number) => rows.map((row) => [pick(row)]);
  const bores = column((row) => row.bore_in + shift);
  const strokes = column((row) => row.stroke_in + shift);
  return (broadcast(sweptVolume, [bores, strokes, column((row) => row.cylinders), "in"]) as number[][]).map(([volume]) => volume!);
}

const printed = volumes(0);
const least = volumes(-HALF_INCH_DIGIT);
const most = volumes(HALF_INCH_DIGIT);
const fits = rows.map((row, i) => least[i]! <= row.displacement_cuin + HALF_CUBIC_INCH && most[i]! >= row.displacement_cuin - HALF_CUBIC_INCH);
const named = rows.map((row, i) => [`${row.cylinders} cylinders of ${row.bore_in} × ${row.stroke_in} in, ${row.displacement_cuin} in³`, i] as const);

test("the data set has 42 engine geometries, 26 of them sound", () => {
  expect(rows).toHaveLength(42);
  expect(rows.filter(({ agrees }) => agrees === 1)).toHaveLength(26);
});

describe("rows whose printed figures fit together", () => {
  test.each(named.filter(([, i]) => rows[i]!.agrees === 1))("%s: the swept volume is the printed displacement", (_, i) => {
    expect(fits[i]).toBe(true);
  });
});

describe("rows that are wrong in the data set itself", () => {
  test.each(named.filter(([, i]) => rows[i]!.agrees === 0))("%s: the swept volume contradicts the printed displacement", (_, i) => {
    expect(fits[i]).toBe(false);
  });
});

test("every row sweeps what was computed from it elsewhere, to the thousandth it was rounded to", () => {
  for (const [i, row] of rows.entries()) expect(Math.abs(printed[i]! - row.computed_cuin)).toBeLessThanOrEqual(0.0005 + 1e-9);
});
