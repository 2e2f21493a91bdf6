import { compareReadings } from "../../src/compare/compare.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import { type Typed, workbook } from "../check/workbook.ts";
import { compare, reading, set } from "./stand.ts";

const briefly = (places: readonly { label: string; difference: number }[]) => places.map(({ label, difference }) => [label, difference]);

describe("two engines are no engine before and after", () => {
  test("engines of other names are set against each other in words of difference, without wear", () => {
    const { kind, between, places, wear, notes } = compare([reading(73)], [reading(73.02, { engine: "B" })], { hours: 500 });
    expect([kind, between, wear]).toEqual(["sizes", "engine A of build against engine B of strip-down", []]);
    expect([places[0]!.label, places[0]!.says]).toEqual(["cylinder 1, bore, top thrust", "0.02 larger on engine B: differs, beyond their gauge (0.0042)"]);
    expect(notes).toContain("one engine each: this judges these two engines, not what was done differently to them");
  });

  test("what is measured on one of them only is told by its engine", () => {
    const { refused } = compare(
      [reading(73), reading(73, { cylinder: "2" })],
      [reading(73.02, { engine: "B" }), reading(2.87, { engine: "B", cylinder: "2", unit: "in" })],
    );
    expect(refused.map(({ why }) => why)).toEqual(["it is in mm on engine A and in inches on engine B"]);
    expect(compare([reading(73), reading(73, { cylinder: "2" })], [reading(73, { engine: "B" })]).refused[0]!.why).toBe("it is measured on engine A only");
  });

  test("named engines are taken out of files that hold several", () => {
    const one = [reading(73), reading(73.01, { engine: "B" })];
    const made = compare([...one, reading(73, { engine: "C" })], [reading(73.02, { engine: "B" })], { engines: { before: "A", after: "b" } });
    expect([made.kind, briefly(made.places), made.between]).toEqual([
      "sizes",
      [["cylinder 1, bore, top thrust", 0.02]],
      "engine A of build against engine b of strip-down",
    ]);
    expect(made.notes).toContain("2 readings of other engines are left out");
  });

  const bores: Typed = [
    ["Cylinder", "Characteristic", "Value (mm)", "U"],
    [1, "bore", 73.02, 0.003],
  ];
  const book = (engine: string, serial: string | number | null) =>
    readingsOfWorkbook(
      workbook({
        Engine: [
          ["Engine", engine],
          ["Serial number", serial],
        ],
        Bores: bores,
      }),
    );

  test.each([
    ["port", 417, "port", 417, "changes"],
    ["port", 417, "the port engine", 417, "changes"],
    ["port", 417, "starboard", 417, "changes"],
    ["port", 417, "port", 418, "sizes"],
    ["port", null, "starboard", 418, "sizes"],
    ["port", null, "Port engine", null, "changes"],
    ["port", 417, "", null, "changes"],
  ] as const)("by the sheets: %p number %p and %p number %p give %s", (engine, serial, other, otherSerial, kind) => {
    expect(compareReadings(book(engine, serial), book(other, otherSerial), { hours: 100 })).toMatchObject({ kind, places: [{ difference: 0 }] });
  });

  test("engines of one name are told apart by their numbers", () => {
    expect(compareReadings(book("port", 417), book("port", 418)).between).toBe("engine port number 417 of workbook against engine port number 418 of workbook");
  });

  test("a sheet of a workbook is of the engine that it names itself", () => {
    const sheet = (engine: string): Typed => [["Engine", engine], [], ...bores];
    const snapshot = workbook({ Build: sheet("port"), Other: sheet("starboard"), "Strip-down": sheet("port") });
    const side = (name: string) => readingsOfWorkbook(snapshot, { sheet: name });
    expect(compareReadings(side("Build"), side("Strip-down")).kind).toBe("changes");
    expect(compareReadings(side("Build"), side("Other")).kind).toBe("sizes");
  });
});

describe("two engines, each before and after", () => {
  const engine = (name: string, sizes: readonly number[], more: object = {}) =>
    sizes.map((size, i) => reading(size, { engine: name, cylinder: `${i + 1}`, ...more }));
  const BUILT = [73, 73.01, 73.02];
  const worn = (by: number) => BUILT.map((size) => size + by);

  test("the difference of their changes, place by place and over the places", () => {
    const made = compare([...engine("A", BUILT), ...engine("B", BUILT)], [...engine("A", worn(0.01)), ...engine("B", worn(0.03))]);
    expect(made.kind).toBe("changes");
    // JCGM 100, 5.1.2: four readings, 2 × 0.003.
    expect(made.differences[0]).toMatchObject({ engines: ["A", "B"], difference: 0.02, changes: [0.01, 0.03], uncertainty: 0.006, verdict: "differs" });
    expect(made.differences[0]!.says).toBe("engine B grew by 0.02 more: differs, beyond the gauges (0.006)");
    expect(made.meanDifferences).toMatchObject([{ difference: 0.02, n: 3, verdict: "differs", by: "gauge" }]);
    expect(made.notes).toContain("one engine each: this judges these two engines, not what was done differently to them");
  });

  // What a setting is off by is in both engines of one session alike, so it goes out of their difference.
  test("what one session was off by cancels: then U divides by the places, where it was split or not", () => {
    const day = (name: string, by: number, date: string, more: object = {}) => engine(name, worn(by), { gauge: "BG-1", day: date, ...more });
    const both = (more: object) =>
      compare(
        [...day("A", 0, "2026-03-01", more), ...day("B", 0, "2026-03-01", more)],
        [...day("A", 0, "2026-09-01", more), ...day("B", 0, "2026-09-01", more)],
      );
    const apart = compare([...day("A", 0, "2026-03-01"), ...day("B", 0, "2026-03-02")], [...day("A", 0, "2026-09-01"), ...day("B", 0, "2026-09-02")]);
    expect(apart.meanDifferences[0]!.uncertainty).toBeCloseTo(0.006, 9);
    expect(both({}).meanDifferences[0]).toMatchObject({ commonUncertainty: 0 });
    expect(both({}).meanDifferences[0]!.uncertainty).toBeCloseTo(0.006 / Math.sqrt(3), 9);
    // Of U 0.003 a common part of 0.0024 leaves 0.0018 of its own.
    expect(both({ common: 0.0024 }).differences[0]!.uncertainty).toBeCloseTo(2 * 0.0018, 9);
  });

  test("of more than two engines only those that are named are compared with one another", () => {
    const three = (by: number) => [...engine("A", worn(by)), ...engine("B", worn(2 * by)), ...engine("C", worn(0))];
    const all = compare(three(0), three(0.01));
    expect([all.differences, all.notes]).toEqual([[], ["engines are compared with one another where two are named"]]);
    const named = compare(three(0), three(0.01), { engines: { before: "A", after: "B" } });
    expect([named.differences.length, named.places.length, named.kind]).toEqual([3, 6, "changes"]);
  });

  test("one file twice has no before and after: two of its engines are compared by their sizes", () => {
    const both = [...engine("A", BUILT), ...engine("B", worn(0.02))];
    expect(compareReadings(set("two", both), set("two", both), { engines: { before: "A", after: "B" } })).toMatchObject({ kind: "sizes", differences: [] });
    expect(compareReadings(set("two", both), undefined, { engines: { before: "A", after: "B" } })).toMatchObject({ kind: "sizes" });
  });
});

describe("one file with both sides", () => {
  test("rows say on which side they stand; those that do not are refused", () => {
    const rows = [reading(73, { campaign: "before" }), reading(73.02, { campaign: "after" }), reading(20, { characteristic: "pin" })];
    const { places, refused, rows: all, between } = compareReadings(set("engine.csv", rows), undefined);
    expect([briefly(places), all, between]).toEqual([[["engine A, cylinder 1, bore, top thrust", 0.02]], 2, "engine.csv, before against after"]);
    expect(refused.map(({ why }) => why)).toEqual(["nothing says whether it was measured before or after"]);
  });

  test("two such files are two engines", () => {
    const file = (by: number) => [reading(73, { engine: "", campaign: "before" }), reading(73 + by, { engine: "", campaign: "after" })];
    const made = compareReadings(set("port.csv", file(0.01)), set("starboard.csv", file(0.02)));
    expect(made.differences).toMatchObject([{ engines: ["port.csv", "starboard.csv"], difference: 0.01 }]);
  });
});

test("one file that holds both sides, given twice, is taken once: its readings are no repeats of themselves", () => {
  const both = [reading(73, { campaign: "before" }), reading(73.01, { campaign: "after" })];
  const alone = compareReadings(set("trial.csv", both), undefined);
  const twice = compareReadings(set("trial.csv", both), set("trial.csv", [...both]));
  expect(twice.places.map(({ uncertainty, difference }) => [uncertainty, difference])).toEqual(
    alone.places.map(({ uncertainty, difference }) => [uncertainty, difference]),
  );
  expect(twice.between).toBe(alone.between);
  expect(twice.notes).toContain("trial.csv and trial.csv hold the same readings, before and after in both: taken once");
});
