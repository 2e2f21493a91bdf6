import fc from "fast-check";
import { enOf } from "../../src/compare/compare.ts";
import { compare, reading } from "./stand.ts";

const briefly = (places: readonly { label: string; difference: number }[]) => places.map(({ label, difference }) => [label, difference]);

describe("what belongs together", () => {
  test("engine, cylinder, characteristic and position, however they are spelt", () => {
    const { places: changes, refused } = compare(
      [reading(73, { engine: "Engine A", cylinder: "Cyl. 2", characteristic: "Bore", position: "top, Thrust" })],
      [reading(73.01, { engine: "a", cylinder: "2", position: "Top thrust" })],
    );
    expect([changes.length, refused.length]).toEqual([1, 0]);
  });

  test("another cylinder, characteristic or position is another thing, and each side that is missing is listed", () => {
    const { places: changes, refused } = compare(
      [reading(73), reading(73, { cylinder: "2" }), reading(72.9, { characteristic: "skirt" })],
      [reading(73.02), reading(73.01, { position: "top pin" })],
    );
    expect(briefly(changes)).toEqual([["engine A, cylinder 1, bore, top thrust", 0.02]]);
    expect(refused.map(({ label, before, after, why }) => [label, before.length, after.length, why])).toEqual([
      ["engine A, cylinder 2, bore, top thrust", 1, 0, "it is measured before only"],
      ["engine A, cylinder 1, skirt, top thrust", 1, 0, "it is measured before only"],
      ["engine A, cylinder 1, bore, top pin", 0, 1, "it is measured after only"],
    ]);
  });

  test("several engines in a file are told apart; a lone one may go unnamed on one side", () => {
    const both = [reading(73), reading(73.05, { engine: "B" })];
    expect(briefly(compare(both, [reading(73.01, { engine: "B" })]).places)).toEqual([["engine B, cylinder 1, bore, top thrust", -0.04]]);
    expect(compare([reading(73)], [reading(73.01, { engine: "" })]).places).toHaveLength(1);
  });

  test("an engine that is in neither file is said", () => {
    expect(compare([reading(73)], [reading(73)], { engines: { before: "C", after: "A" } })).toMatchObject({
      places: [],
      rows: 1,
      notes: ["1 reading of other engines is left out", "no reading of build is of engine C"],
    });
    expect(compare([reading(73)], [reading(73), reading(73.1)], { engines: { before: "A", after: "D" } })).toMatchObject({
      places: [],
      rows: 1,
      notes: ["2 readings of other engines are left out", "no reading of strip-down is of engine D"],
    });
  });

  test("on sheets laid out freely one name in two cells is refused whole: nothing tells which is meant", () => {
    const loose = { isListed: false };
    const { places, refused, rows } = compare([reading(73, loose), reading(73.01, loose)], [reading(73.02, loose)]);
    expect(places).toEqual([]);
    expect([refused[0]!.why, rows]).toEqual(["it stands 2 times before and once after, and nothing tells which belong together", 1]);
  });

  test("copies of a workbook hold each in its own cell, which tells those of one name apart", () => {
    const at = (row: number) => ({ cell: { sheet: "Bores", row, column: 2 }, line: undefined, isListed: false });
    const place = (value: number, row: number) => ({ ...reading(value), ...at(row) });
    const { places: changes, refused } = compare([place(73, 4), place(73.5, 9)], [place(73.52, 9), place(73.01, 4), place(73.1, 12)]);
    expect(changes.map(({ difference }) => difference)).toEqual([0.02, 0.01]);
    expect(refused.map(({ before, after }) => [before.length, after.length])).toEqual([[0, 1]]);
  });
});

test("what differs comes first, the clearest of it first, and nothing is lost", () => {
  const value = fc.integer({ min: 73_000, max: 73_040 }).map((n) => n / 1000);
  const rows = fc.array(
    fc.record({
      cylinder: fc.constantFrom("1", "2", "3"),
      position: fc.constantFrom("top", "bottom"),
      value: fc.option(value),
      uncertainty: fc.constantFrom(0.003, 0.008, undefined),
    }),
    { maxLength: 12 },
  );
  const side = (all: readonly { cylinder: string; position: string; value: number | null; uncertainty: number | undefined }[]) =>
    all.map(({ value: size, ...more }) => reading(size, size === null ? { ...more, fault: "the reading is still blank" } : more));
  fc.assert(
    fc.property(rows, rows, (before, after) => {
      const made = compare(side(before), side(after));
      expect(made.rows).toBe(made.places.length + made.refused.length);
      // Each reading stands in one place, or in one row that is refused.
      const kept = [
        ...made.places.flatMap(({ before: a, after: b }) => [...a.readings, ...b.readings]),
        ...made.refused.flatMap((row) => [...row.before, ...row.after]),
      ];
      expect(kept.length).toBe(before.length + after.length);
      expect(new Set(kept).size).toBe(kept.length);
      const { differs, sameWithin, cannotTell, lines } = made.counts.places;
      expect(differs + sameWithin + cannotTell).toBe(lines);
      const order = made.places.map((place) => [place.verdict === "differs" ? 0 : 1, -Math.abs(enOf(place) ?? 0)] as const);
      expect(order).toEqual([...order].sort((a, b) => a[0] - b[0] || a[1] - b[1]));
    }),
  );
});
