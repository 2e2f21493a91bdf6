import { compareTrial } from "../../src/compare/compare.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import type { ReadingSet } from "../../src/compare/readings.ts";
import type { Cell } from "../../src/core/cell.ts";
import { csv } from "./stand.ts";

type Row = Record<string, string | number>;
const COLUMNS = ["group", "engine", "campaign", "cylinder", "characteristic", "position", "value", "unit", "uncertainty", "common", "gauge", "day", "repeat"];

/** Engines of two ways of treatment, two bores each, every one measured before and after with one gauge whose ring was read in both. */
function sound(engines: Readonly<Record<string, string>> = { A: "short", B: "short", C: "long", D: "long" }): Row[] {
  const beside = { unit: "mm", uncertainty: 0.003, common: 0, gauge: "BG-1" };
  return (["before", "after"] as const).flatMap((campaign, late) => [
    { campaign, characteristic: "master", position: "start", value: 73, day: campaign, ...beside },
    { campaign, characteristic: "master", position: "end", value: 73, day: campaign, ...beside },
    ...Object.entries(engines).flatMap(([engine, group], e) =>
      [1, 2].map((cylinder) => ({
        ...{ group, engine, campaign, cylinder, characteristic: "bore", position: "top", day: campaign, ...beside },
        value: Number((73 + cylinder / 100 + late * (0.02 + e / 2000)).toFixed(4)),
      })),
    ),
  ]);
}

/** The same rows from a file in long form and from a sheet of a workbook. */
const SOURCES: readonly (readonly [name: string, read: (rows: readonly Row[]) => Promise<ReadingSet>])[] = [
  ["CSV", (rows) => csv([COLUMNS, ...rows.map((row) => COLUMNS.map((column) => row[column] ?? ""))].map((cells) => cells.join(",")).join("\n"))],
  [
    "a workbook",
    async (rows) => {
      const values: Cell[][] = [COLUMNS, ...rows.map((row) => COLUMNS.map((column) => row[column] ?? null))];
      const formulas = values.map((line) => line.map(() => null));
      return readingsOfWorkbook({ name: "trial.xlsx", sheets: [{ name: "Readings", row: 0, column: 0, values, formulas }] });
    },
  ],
];

const isOf = (engine: string, campaign: string, cylinder: number) => (row: Row) =>
  row.engine === engine && row.campaign === campaign && row.cylinder === cylinder;
const changed = (rows: Row[], is: (row: Row) => boolean, more: Row) => rows.map((row) => (is(row) ? { ...row, ...more } : row));

describe.each(SOURCES)("from %s", (_, read) => {
  const judged = async (rows: Row[]) => compareTrial([await read(rows)]);
  const whys = ({ refused }: Awaited<ReturnType<typeof judged>>) => refused.map(({ label, why }) => `${label}: ${why}`);

  test("nothing is wrong with the rows themselves", async () => {
    const { rows, places, refused, notes, groups } = await judged(sound());
    expect({ rows, places: places.length, refused }).toEqual({ rows: 8, places: 8, refused: [] });
    expect(groups).toMatchObject([{ lone: null, engines: [2, 2] }]);
    expect(notes.filter((note) => /only|left out/.test(note))).toEqual([]);
  });

  test("a place that was measured in one campaign only is named and counted, and the rest is judged", async () => {
    const comparison = await judged(sound().filter((row) => !isOf("B", "after", 2)(row)));
    expect(whys(comparison)).toEqual(["engine B, cylinder 2, bore, top: it is measured before only"]);
    expect(comparison).toMatchObject({ rows: 8, groups: [{ engines: [2, 2], places: 1 }] });
    expect(comparison.places).toHaveLength(7);
    expect(comparison.notes).toContain("long against short: bore: 3 places left out, as not every engine has them");
  });

  test("units that differ are named and counted, and the rest is judged", async () => {
    const comparison = await judged(changed(sound(), isOf("C", "after", 1), { unit: "in", value: 2.876 }));
    expect(whys(comparison)).toEqual(["engine C, cylinder 1, bore, top: it is in mm before and in inches after"]);
    expect(comparison.rows).toBe(8);
    expect(comparison.places).toHaveLength(7);
  });

  test("a master that was read in one campaign only is named; the places are judged without it", async () => {
    const rows = sound().filter(({ characteristic, campaign }) => characteristic !== "master" || campaign === "before");
    const { places, refused, notes } = await judged(rows);
    expect(notes).toContain("the master of gauge BG-1 was read before only, so nothing shows whether its setting moved: read it in both campaigns");
    expect(places.map(({ master }) => master)).toEqual(Array(8).fill(undefined));
    expect(refused).toEqual([]);
  });

  test("a reading of a master that is blank is named, and the other one serves", async () => {
    const rows = changed(sound(), ({ campaign, position }) => campaign === "after" && position === "end", { value: "" });
    const { places, notes } = await judged(rows);
    expect(notes).toContainEqual(
      expect.stringMatching(/^a reading of the master of gauge BG-1 is left out \((?:line 13|Readings, row 13)\): the reading is still blank$/),
    );
    expect(places.map(({ master }) => master?.readings)).toEqual(Array(8).fill([2, 1]));
  });

  test("of a group of one engine the engines are judged, and the way of treatment is not", async () => {
    const { groups, places, notes } = await judged(sound({ A: "short", B: "short", C: "long" }));
    expect(groups).toMatchObject([{ lone: "long", verdict: "cannot tell", uncertainty: null }]);
    expect(notes).toContainEqual(expect.stringMatching(/^only one engine of long: the engines are judged, the ways of treatment cannot be told/));
    expect(places.every(({ verdict }) => verdict === "differs")).toBe(true);
  });

  test("repeats that contradict one another are named with their readings and counted, and the rest is judged", async () => {
    const again = (more: number): Row[] =>
      sound()
        .filter(({ characteristic, campaign }) => characteristic === "bore" && campaign === "before")
        .map((row) => ({ ...row, value: Number((Number(row.value) + (isOf("A", "before", 1)(row) ? more : 0.001)).toFixed(4)) }));
    const comparison = await judged([...sound(), ...again(0.2)]);
    expect(whys(comparison)).toEqual([
      "engine A, cylinder 1, bore, top: before: its readings 73.01 and 73.21 contradict one another beyond what the gauge explains",
    ]);
    expect(comparison.rows).toBe(8);
    expect(comparison.places).toHaveLength(7);
    expect((await judged([...sound(), ...again(0.002)])).refused).toEqual([]);
  });
});
