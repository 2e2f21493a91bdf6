import { compareReadings } from "../../src/compare/compare.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import { type Typed, workbook } from "../check/workbook.ts";
import { filledSheet } from "./filled-sheets.ts";

const read = async (filling: Parameters<typeof filledSheet>[0]) => readingsOfWorkbook(await (await filledSheet(filling)).host.read());
const built = read({});

describe("a build sheet of ours against its strip-down", () => {
  const stripped = read({ hours: 850, worn: (table, heading) => (table === "BoreReadings" && heading.startsWith("Top") ? 0.03 : 0) });
  const made = Promise.all([built, stripped]).then(([before, after]) => compareReadings(before, after));

  test("every part is as good as the gauge that it was measured with", async () => {
    const { places, refused } = await made;
    expect(refused).toEqual([]);
    const without = places.filter(({ uncertainty }) => uncertainty === null).map(({ own }) => own);
    // What no gauge of the sheet measures: volumes by burette, leak-down, shims by their marks, sizes out of a book.
    expect([...new Set(without)].sort()).toEqual(
      ["chamber volume", "compression ratio", "deck space", "exhaust shim", "gasket", "gasket bore", "gasket thickness"].concat([
        "inlet shim",
        "leak-down",
        "leak-down spread",
        "piston volume",
        "pressure held",
        "stroke",
        "swept",
      ]),
    );
    expect([places.length, without.length]).toEqual([191, 34]);
  });

  // The gauges' U typed in the sheet: bores 0.002, ring gaps 0.02, pressures 0.3; each change has √2 times that.
  test.each([
    ["bore", 0.002],
    ["piston skirt", 0.002],
    ["pin", 0.002],
    ["pin bore", 0.002],
    ["top ring width", 0.002],
    ["second ring groove", 0.002],
    ["oil ring end gap", 0.02],
    ["inlet valve stem", 0.002],
    ["exhaust valve guide", 0.002],
    ["inlet clearance", 0.02],
    ["deck height", 0.002],
    ["compression pressure", 0.3],
    ["wet compression", 0.3],
  ])("%s: U %p", async (name, U) => {
    const [place] = (await made).places.filter(({ own }) => own === name);
    expect(place!.uncertainty).toBeCloseTo(U * Math.SQRT2, 8);
  });

  test("the hours of the strip-down give wear, and what has worn stands first", async () => {
    const { wear, places, headline } = await made;
    expect(wear.every(({ useTo }) => useTo === 850)).toBe(true);
    expect(wear.find(({ label }) => label === places[0]!.label)!.rate).toBeCloseTo((0.03 / 850) * 1000, 6);
    // Six bores, and of each cylinder taper, wear and the like that are worked out from them.
    expect(headline).toMatch(/^\d+ of 157 lie beyond their own gauge; about 7 would by chance; \d+ remain\.$/);
    expect(places.filter(({ own, verdict }) => own === "bore" && verdict === "differs")).toHaveLength(6);
  });

  test("what matters is typed beside the limits, for results and in a row of the shop's own for readings", async () => {
    const made = await filledSheet({ hours: 850 });
    await made.type("LimitList", "Matters", made.rowOf("LimitList", "Ring end gap, top"), 0.05);
    await made.type("LimitList", "Matters", made.rowOf("LimitList", "Taper"), 0.001);
    await made.type("LimitList", "Characteristic", made.rowOf("LimitList", ""), "Bore");
    await made.type("LimitList", "Matters", made.rowOf("LimitList", ""), 0.005);
    const { places } = compareReadings(await built, readingsOfWorkbook(await made.host.read()));
    const of = (name: string) => new Set(places.filter(({ own }) => own === name).map(({ matters, verdict }) => `${matters}: ${verdict}`));
    // Two gauges with U of 0.02 see 1.645 × 0.02 ÷ √2 = 0.023, and with 0.002 a tenth of that; a taper of two readings 0.0033.
    expect(of("top ring end gap")).toEqual(new Set(["0.05: same within"]));
    expect(of("bore")).toEqual(new Set(["0.005: same within"]));
    expect(of("taper")).toEqual(new Set(["0.001: cannot tell"]));
    expect(of("second ring end gap")).toEqual(new Set(["null: cannot tell"]));
  });

  test("another engine's sheet is no strip-down", async () => {
    expect(compareReadings(await built, await read({ serial: "0418", hours: 850 }))).toMatchObject({ kind: "sizes", wear: [] });
  });
});

describe("what a second person measured", () => {
  const second = [0, 0.002, 0.001, 0.0005, 0.001, 0];

  test("repeats the first reading of its place, in one session", async () => {
    const { readings } = await read({ second });
    const repeats = readings.filter((reading) => reading.repeats !== undefined);
    expect(repeats).toHaveLength(18);
    expect(repeats[1]).toMatchObject({ cylinder: "1", characteristic: "bore", position: "Top pin", value: 73.012, uncertainty: 0.002, gauge: "BG-1" });
    expect(readings.filter(({ characteristic }) => /disagree|may differ/i.test(characteristic))).toEqual([]);
  });

  test("the mean of both counts, and their scatter where it is larger than the gauge's own part", async () => {
    const worn = (table: string) => (table === "BoreReadings" ? 0.004 : 0);
    const both = await Promise.all([read({ second }), read({ second, worn, hours: 850 })]);
    const places = compareReadings(...both).places.filter(({ own }) => own === "bore");
    expect(places).toHaveLength(18);
    expect(places.every(({ difference }) => Math.abs(difference - 0.004) < 1e-9)).toBe(true);
    const topPin = places.find(({ label }) => label === "cylinder 1, bore, Top pin")!;
    expect([topPin.before.value, topPin.after.value]).toEqual([73.011, 73.015]);
  });

  test("without a gauge of its own it says nothing of how good it is", async () => {
    const made = await filledSheet({ second });
    await made.type("Measurements", "Gauge", made.rowOf("Measurements", "Bores, second readings"), "");
    const { readings } = readingsOfWorkbook(await made.host.read());
    expect(readings.filter(({ repeats }) => repeats !== undefined).every(({ uncertainty }) => uncertainty === undefined)).toBe(true);
  });
});

test("a first and a second reading typed side by side are repeats; columns of rings are not", () => {
  const rows: Typed = [
    ["Cylinder", "Place", "First reading", "Second reading", "Verdict"],
    [1, "bore top", 73.01, 73.012, "=HATCH.VERDICT(C2,72.9,73.1)"],
  ];
  const found = readingsOfWorkbook(workbook({ Bores: rows })).readings;
  expect(found.map(({ value, repeats }) => [value, repeats])).toEqual([
    [73.01, undefined],
    [73.012, "Bores!C2"],
  ]);
  expect(found[1]).toMatchObject({ lower: 72.9, upper: 73.1, cylinder: found[0]!.cylinder, characteristic: found[0]!.characteristic });
  const rings: Typed = [
    ["Cylinder", "First", "Second"],
    [1, "=HATCH.RINGGAPATBORE(0.3,73,73.01)", 0.35],
  ];
  expect(readingsOfWorkbook(workbook({ Rings: rings })).readings.filter(({ repeats }) => repeats !== undefined)).toEqual([]);
});

describe("a table of what was measured with which gauge", () => {
  const bores: Typed = [
    ["Cylinder", "Characteristic", "Value (mm)"],
    [1, "bore", 73.02],
    [1, "gudgeon pin", 18],
  ];
  const found = (rows: Typed) =>
    readingsOfWorkbook(workbook({ Gauges: rows, Readings: bores })).readings.map(({ uncertainty, gauge, day }) => [uncertainty, gauge, day]);

  test("gives U outright, by the gauge's own, and the session", () => {
    expect(
      found([
        ["Gauge", "U", "Unit"],
        ["MI-1", 0.002, "mm"],
        [],
        ["Measured", "Gauge", "Measured on", "U"],
        ["Bores and liners", "BG-1", "2026-03-21", 0.003],
        ["Pins", "MI-1", "2026-03-22", null],
      ]),
    ).toEqual([
      [0.003, "BG-1", "2026-03-21"],
      [undefined, undefined, undefined],
    ]);
    expect(
      found([["Gauge", "U", "Unit"], ["MI-1", 0.002, "mm"], [], ["Measured", "Gauge", "Measured on", "U"], ["Piston pins", "MI-1", "2026-03-22", null]])[1],
    ).toEqual([0.002, "MI-1", "2026-03-22"]);
  });

  test("a gauge's common part is that of its readings, 0 too; a blank one was not typed", () => {
    const common = (part: number | null) =>
      readingsOfWorkbook(
        workbook({
          Gauges: [
            ["Gauge", "U", "Common part of U"],
            ["BG-1", 0.003, part],
          ],
          Used: [
            ["Measured", "Gauge", "Measured on"],
            ["Bores", "BG-1", "2026-03-21"],
          ],
          Readings: bores,
        }),
      ).readings[0];
    expect(common(0.002)).toMatchObject({ uncertainty: 0.003, common: 0.002 });
    expect(common(0)).toMatchObject({ uncertainty: 0.003, common: 0 });
    expect(common(null)!.common).toBeUndefined();
    // More than the whole cannot be a part.
    expect(common(0.004)!.common).toBeUndefined();
  });

  test("second readings and re-checks are not those of the parts as built", () => {
    expect(
      found([
        ["Measured", "Gauge", "U"],
        ["Bores, second readings", "BG-2", 0.01],
      ])[0],
    ).toEqual([undefined, undefined, undefined]);
  });
});

test("what matters stands beside a limit: a ring's own goes before that of rings", () => {
  const rows: Typed = [
    ["Cylinder", "Characteristic", "Position", "Value (mm)", "Matters"],
    [1, "ring end gap", "top ring", 0.3, null],
    [1, "ring end gap", "oil ring", 0.3, null],
    [1, "bore", "top", 73, 0.01],
  ];
  const limits: Typed = [
    ["Characteristic", "Lower", "Upper", "Smallest difference that matters"],
    ["Ring end gap", 0.2, 0.6, 0.1],
    ["Ring end gap, top", 0.2, 0.6, 0.05],
    ["Bore", null, 73.1, 0.02],
  ];
  expect(readingsOfWorkbook(workbook({ Limits: limits, Readings: rows })).readings.map(({ matters }) => matters)).toEqual([0.05, 0.1, 0.01]);
});

test("a table with a column before and one after is both sides of a comparison, its unit that of the heading", () => {
  const rows: Typed = [
    ["Engine A, strip-down"],
    ["Cylinder", "Characteristic", "Position", "As built (mm)", "At strip-down", "U", "Max"],
    [1, "bore", "top thrust", 73.01, 73.03, 0.003, 73.08],
    [2, "bore", "top thrust", 73.01, null, 0.003, 73.08],
  ];
  const { places, refused, between } = compareReadings(readingsOfWorkbook(workbook({ Wear: rows })), undefined);
  expect(places).toMatchObject([{ difference: 0.02, unit: "mm", verdict: "differs", label: "cylinder 1, bore, top thrust" }]);
  expect(refused.map(({ why }) => why)).toEqual(["after: the reading is still blank"]);
  expect(between).toBe("workbook, before against after");
});
