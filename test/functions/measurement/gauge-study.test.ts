import fc from "fast-check";
import { gaugeStudy } from "../../../src/functions/measurement/gauge-study.ts";
import { crossedVariances, gaugeVariances, studyOf } from "../../../src/functions/measurement/gauge-variances.ts";
import { anovaRow } from "../../../src/math/anova.ts";
import { cellsOf, tenParts, thermalImpedance } from "../../reference/gauge-studies.ts";
import { ask, BLANKS } from "../ask.ts";

type Table = (number | string)[][];
const study = (...args: Parameters<typeof ask> extends [unknown, ...infer Rest] ? Rest : never) => ask(gaugeStudy, ...args) as Table;
const line = (table: Table, name: string) => table.find(([label]) => label === name)!.slice(1);
const numbered = (rows: readonly unknown[]) => rows.map((_, i) => [i + 1]);

describe("cited values", () => {
  // Montgomery's thermal impedance: variances as R's VCA package prints them (operators 0.5646, both together 0.7280, error
  // 0.5111, parts 48.2926), and his P/T ratio of 6 × 1.343 / 40 = 0.2014.
  test("thermal impedance: the interaction is kept, and the four variances are those printed", () => {
    const table = study(numbered(thermalImpedance), [["A", "A", "A", "B", "B", "B", "C", "C", "C"]], thermalImpedance, 40);
    expect(line(table, "repeatability")[0]).toBeCloseTo(Math.sqrt(0.5111), 4);
    expect(line(table, "reproducibility")[0]).toBeCloseTo(Math.sqrt(0.5646 + 0.728), 4);
    expect(line(table, "parts")[0]).toBeCloseTo(6.9493, 4);
    expect(line(table, "whole")[0]).toBeCloseTo(7.0779, 4);
    expect(line(table, "gauge")[0]).toBeCloseTo(1.342982, 4);
    expect(line(table, "gauge")[3]).toBeCloseTo(20.14473, 2);
    expect(line(table, "repeatability")[1]).toBeCloseTo(1.0203, 3);
    expect(line(table, "parts")[1]).toBeCloseTo(96.3995, 4);
    expect(line(table, "chance of the interaction")).toEqual([expect.closeTo(5.06e-7, 9), "kept", "", ""]);
    expect(line(table, "distinct categories")[0]).toBe(7);
  });

  // Published solution of Montgomery's problem 13.1: interaction P 0.927, so it is pooled; what follows by hand from its sums
  // of squares: (60 + 5.417) / 49, operators below nothing, parts (11.002 − 1.335) / 6.
  test("ten parts, two operators: the interaction is pooled and the operators' variance counts as nothing", () => {
    const table = study(numbered(tenParts), [["A", "A", "A", "B", "B", "B"]], tenParts);
    expect(line(table, "chance of the interaction")).toEqual([expect.closeTo(0.927, 3), "pooled", "", ""]);
    expect(line(table, "repeatability")[0]).toBeCloseTo(Math.sqrt(65.4166667 / 49), 6);
    expect(line(table, "reproducibility").slice(0, 3)).toEqual([0, 0, 0]);
    expect(line(table, "parts")[0]).toBeCloseTo(Math.sqrt((99.0166667 / 9 - 65.4166667 / 49) / 6), 6);
    expect(line(table, "gauge")[3]).toBe("");
  });

  // P. Keller, Six Sigma Demystified, 2nd ed., pp. 342–343: its table of 3 items, 2 operators, 3 trials; interaction p 0.686.
  test("a published table without interaction: components 0.0000913, 0.0000201 and 0.0004931", () => {
    const { repeatability, reproducibility, parts, isPooled, interactionPValue } = crossedVariances(
      { parts: anovaRow(0.0061, 2), operators: anovaRow(0.0002722, 1), interaction: anovaRow(0.0000778, 2), repeats: anovaRow(0.0012, 12) },
      3,
      2,
      3,
    );
    expect(interactionPValue).toBeCloseTo(0.686, 3);
    expect(isPooled).toBe(true);
    expect(repeatability).toBeCloseTo(0.0000913, 7);
    expect(reproducibility).toBeCloseTo(0.0000201, 7);
    expect(parts).toBeCloseTo(0.0004931, 7);
    // The same page: total gauge 0.0105535 by itself, 42.92 % of the variation, 2 categories.
    const gauge = Math.sqrt(repeatability + reproducibility!);
    expect(gauge).toBeCloseTo(0.0105535, 6);
    expect((100 * gauge) / Math.sqrt(gauge ** 2 + parts)).toBeCloseTo(42.92, 1);
    expect(Math.floor((Math.SQRT2 * Math.sqrt(parts)) / gauge)).toBe(2);
  });

  // One operator leaves a one-way analysis: repeatability² = mean square within, parts² = (between − within) / repeats.
  test("one operator: the people are said not to be seen", () => {
    const rows = thermalImpedance.map((row) => row.slice(0, 3));
    const table = study(numbered(rows), "A", rows);
    expect(line(table, "reproducibility")).toEqual(["not seen: one operator", "", "", ""]);
    expect(line(table, "repeatability")[0]).toBeCloseTo(Math.sqrt(14 / 30), 10);
    expect(line(table, "gauge")).toEqual(line(table, "repeatability"));
    expect(table.some(([label]) => label === "chance of the interaction")).toBe(false);
    expect(gaugeVariances(cellsOf(rows, 3))).toMatchObject({ reproducibility: undefined, interactionPValue: undefined, isPooled: false });
  });
});

describe("layouts", () => {
  const long = thermalImpedance.flatMap((row, p) => row.map((reading, c) => ({ part: `p${p}`, operator: `o${Math.floor(c / 3)}`, reading })));

  test("three columns, in any order, give what a block with operators above it gives", () => {
    const block = study(numbered(thermalImpedance), [["A", "A", "A", "B", "B", "B", "C", "C", "C"]], thermalImpedance) as unknown[];
    const shuffled = [...long].sort((a, b) => ((a.reading * 7919) % 13) - ((b.reading * 7919) % 13));
    const columns = study(
      shuffled.map(({ part }) => [part]),
      shuffled.map(({ operator }) => [operator]),
      shuffled.map(({ reading }) => [reading]),
    );
    expect(columns.length).toBe(block.length);
    for (const [r, row] of columns.entries()) {
      for (const [c, cell] of row.entries()) {
        const other = (block as Table)[r]![c]!;
        if (typeof cell === "number") expect(cell).toBeCloseTo(other as number, 9);
        else expect(cell).toBe(other);
      }
    }
  });

  test("labels differ neither by case nor by outer blanks", () => {
    const readings = [[1], [2], [2], [3], [5], [6], [6], [7]];
    const one = study([[1], [1], [1], [1], [2], [2], [2], [2]], [["Ann"], ["Ann"], ["Ben"], ["Ben"], ["Ann"], ["Ann"], ["Ben"], ["Ben"]], readings);
    const other = study([["1"], ["1 "], [1], [1], [2], [2], [2], [2]], [["Ann"], ["ANN"], ["ben"], [" Ben"], ["ann"], ["Ann"], ["Ben"], ["Ben"]], readings);
    expect(other).toEqual(one);
  });

  // In capitals both names would be WEISS.
  test("two people whose names are one in capitals only are two people", () => {
    const study = studyOf(
      { rows: 8, columns: 1, values: ["1", "1", "1", "1", "2", "2", "2", "2"] },
      { rows: 8, columns: 1, values: ["Weiß", "Weiß", "Weiss", "Weiss", "Weiß", "Weiß", "Weiss", "Weiss"] },
      { rows: 8, columns: 1, values: [1, 2, 3, 4, 5, 6, 7, 8] },
    );
    expect(study).toMatchObject({ parts: ["1", "2"], operators: ["Weiß", "Weiss"] });
  });
});

/** Two parts, twice each, by two people. */
const PAIRS = [
  [73.01, 73.02],
  [73.02, 73.04],
  [73.05, 73.06],
  [73.06, 73.05],
];

test("labels in a block of the shape of the readings go cell by cell", () => {
  const plain = study([[1], [1], [2], [2]], [["Ann", "Ben"]], PAIRS);
  const parts = [1, 1, 2, 2].map((part) => [part, part]);
  const people = PAIRS.map(() => ["Ann", "Ben"]);
  expect(study(parts, people, PAIRS)).toEqual(plain);
});

describe("identities", () => {
  const cells = fc
    .tuple(fc.integer({ min: 2, max: 5 }), fc.integer({ min: 1, max: 3 }), fc.integer({ min: 2, max: 3 }))
    .chain(([parts, operators, repeats]) => {
      const row = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: operators * repeats, maxLength: operators * repeats });
      return fc.array(row, { minLength: parts, maxLength: parts }).map((rows) => cellsOf(rows, repeats));
    });

  test("the order of parts, people and repeats is no matter; no variance is below nothing", () => {
    fc.assert(
      fc.property(cells, (study) => {
        fc.pre(study.flat().some((cell) => cell.some((reading) => reading !== cell[0])));
        const found = gaugeVariances(study);
        const turned = gaugeVariances([...study].reverse().map((row) => [...row].reverse().map((cell) => [...cell].reverse())));
        expect(turned.isPooled).toBe(found.isPooled);
        for (const name of ["repeatability", "parts"] as const) {
          expect(turned[name]).toBeCloseTo(found[name], 6);
          expect(found[name]).toBeGreaterThanOrEqual(0);
        }
        if (found.reproducibility !== undefined) {
          expect(turned.reproducibility).toBeCloseTo(found.reproducibility, 6);
          expect(found.reproducibility).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  test("another zero changes no variance, a tenth of the unit makes them a hundredth", () => {
    fc.assert(
      fc.property(cells, (study) => {
        fc.pre(study.flat().some((cell) => cell.some((reading) => reading !== cell[0])));
        const found = gaugeVariances(study);
        const moved = gaugeVariances(study.map((row) => row.map((cell) => cell.map((reading) => 73 + reading / 10))));
        expect(moved.repeatability * 100).toBeCloseTo(found.repeatability, 6);
        expect(moved.parts * 100).toBeCloseTo(found.parts, 6);
      }),
    );
  });
});

describe("faults", () => {
  const refused = (sentence: string) => ({ code: "unfit", sentence: `GAUGESTUDY: ${sentence}` });

  test("one part is no study", () => {
    expect(ask(gaugeStudy, [[1], [1]], "Ann", [[73.01], [73.02]])).toEqual(refused("parts 1: at least 2 different parts are needed"));
  });

  test("one reading of each part and operator shows no repeatability", () => {
    expect(
      ask(
        gaugeStudy,
        [[1], [2]],
        [["Ann", "Ben"]],
        [
          [1, 2],
          [3, 4],
        ],
      ),
    ).toEqual(refused("readings 1: for each part and operator, repeatability needs at least 2"));
  });

  test("unequal repeats are named by part and operator", () => {
    expect(ask(gaugeStudy, [[1], [1], [2], [2], [2]], "Ann", [[1], [2], [3], [4], [5]])).toEqual(
      refused("readings 3: for part 2 by Ann, where part 1 by Ann has 2, as many are needed of each"),
    );
  });

  test("an operator who has not read a part is named", () => {
    expect(ask(gaugeStudy, [[1], [1], [1], [1], [2], [2]], [["Ann"], ["Ann"], ["Ben"], ["Ben"], ["Ann"], ["Ann"]], [[1], [2], [3], [4], [5], [6]])).toEqual(
      refused("readings 0: for part 2 by Ben, where part 1 by Ann has 2, as many are needed of each"),
    );
  });

  test("a person spelled in two ways is named by the first", () => {
    expect(ask(gaugeStudy, [[1], [1], [2], [2], [2]], [["Ann"], ["ANN"], ["ann"], ["Ann"], ["ANN"]], [[1], [2], [3], [4], [5]])).toEqual(
      refused("readings 3: for part 2 by Ann, where part 1 by Ann has 2, as many are needed of each"),
    );
  });

  test("repeats that all agree are a gauge too coarse", () => {
    expect(ask(gaugeStudy, [[1], [1], [2], [2]], "Ann", [[73.01], [73.01], [73.05], [73.05]])).toEqual(
      refused("readings 73.01: all repeats agree, this gauge is too coarse to show its repeatability"),
    );
  });

  test("a reading without a part or an operator is refused where it stands", () => {
    expect(ask(gaugeStudy, [[1], [null], [2], [2]], "Ann", [[1], [2], [3], [4]])).toEqual(refused("parts nothing: this reading has no part (row 2)"));
    expect(ask(gaugeStudy, [[1], [1], [2], [2]], [["Ann"], ["Ann"], [""], ["Ann"]], [[1], [2], [3], [4]])).toEqual(
      refused("operators nothing: this reading has no operator (row 3)"),
    );
  });

  test("ranges that do not lie beside the readings are refused", () => {
    expect(ask(gaugeStudy, [[1], [1], [2]], "Ann", [[1], [2], [3], [4]])).toEqual({
      code: "shape",
      sentence: "GAUGESTUDY: parts is 3×1 cells, which does not fit readings of 4×1: ranges must be of one size, or one row, one column or one cell",
    });
    expect(ask(gaugeStudy, [[1], [1], [2], [2]], [["Ann"], ["Ben"]], [[1], [2], [3], [4]])).toEqual({
      code: "shape",
      sentence: "GAUGESTUDY: operators is 2×1 cells, which does not fit readings of 4×1: ranges must be of one size, or one row, one column or one cell",
    });
  });

  test("text among the readings is refused where it stands", () => {
    expect(ask(gaugeStudy, [[1], [1], [2], [2]], "Ann", [[1], ["73,02"], [3], [4]])).toEqual({
      code: "decimal-comma",
      sentence: 'GAUGESTUDY: readings holds the text "73,02": a decimal comma is not read, type it with this sheet\'s decimal sign (row 2)',
    });
  });
});

describe("blanks", () => {
  test("readings still to come leave it blank", () => {
    expect(ask(gaugeStudy, [[1], [1], [2], [2]], "Ann", [[1], [2], [3], [null]])).toEqual([[""]]);
    for (const blank of BLANKS) expect(ask(gaugeStudy, [[1], [1]], "Ann", blank)).toBe("");
  });

  test("blank readings with a blank part or a blank operator beside them are left out, whichever of the two runs across", () => {
    const plain = study([[1], [1], [2], [2]], [["Ann", "Ben"]], PAIRS);
    expect(study([[1], [1], [2], [2], [""]], [["Ann", "Ben"]], [...PAIRS, ["", ""]] as never)).toEqual(plain);
    const turned = PAIRS[0]!.map((_, column) => PAIRS.map((row) => row[column]!));
    expect(study([[1, 1, 2, 2]], [["Ann"], ["Ben"], [""]], [...turned, ["", "", "", ""]] as never)).toEqual(plain);
  });

  test("wholly blank rows below the study are left out", () => {
    const column = [[1], [1], [2], [2], [null]];
    expect(ask(gaugeStudy, column, [["A"], ["A"], ["A"], ["A"], [null]], [[1], [2], [3], [4], [null]])).toEqual(
      ask(gaugeStudy, column.slice(0, 4), "A", [[1], [2], [3], [4]]),
    );
  });
});
