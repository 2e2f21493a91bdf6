import { broadcast } from "../../src/core/broadcast.ts";
import { toReference } from "../../src/functions/measurement/to-reference.ts";
import { changeBetween, compare, csv, reading } from "./stand.ts";

const warm = (value: number, temperature: number, more = {}) => reading(value, { temperature, material: "aluminium", uncertainty: 0.004, common: 0, ...more });

describe("cited values", () => {
  // D. Swyt, J. Res. NIST 99(1), 31, 1994: aluminium 23.1 millionths per K; 100 mm grow by 11.55 µm over 5 K.
  test("100 mm of aluminium measured 5 K warmer are no larger", () => {
    const place = changeBetween(warm(100, 20), warm(100.01155, 25));
    expect(place.difference).toBe(0);
    expect(place.thermal!.correction).toBeCloseTo(-0.01155, 9);
    expect(place.says).toContain("reads alike (at 20 °C)");
  });

  // By hand, JCGM 100:2008, 4.3.7: a degree of each campaign and a tenth of the coefficient over 5 K, rectangular.
  test("a degree of each measuring and a tenth of the coefficient add to what is common", () => {
    const { commonUncertainty, uncertainty } = changeBetween(warm(100, 20), warm(100.01155, 25));
    const degree = (100 * 23.1e-6) / Math.sqrt(3);
    const common = Math.sqrt(2 * degree ** 2 + ((100 * 23.1e-6 * 0.1 * 5) / Math.sqrt(3)) ** 2);
    expect(commonUncertainty).toBeCloseTo(2 * common, 6);
    expect(uncertainty).toBeCloseTo(2 * Math.hypot(common, Math.SQRT2 * 0.002), 6);
  });

  test("sizes at 20 °C are those of TOREFERENCE", () => {
    const { difference } = changeBetween(warm(73.01, 14), warm(73.03, 27));
    const at = (value: number, temperature: number) => broadcast(toReference, [value, temperature, "aluminium"]) as number;
    expect(difference).toBeCloseTo(at(73.03, 27) - at(73.01, 14), 9);
  });
});

test("the coefficient moves the places of a mean, and the changes of two engines, alike", () => {
  const bores = (engine: string, by: number, temperature: number) =>
    [1, 2, 3, 4].map((cylinder) => warm(73 + cylinder / 100 + by, temperature, { engine, cylinder: `${cylinder}`, gauge: "BG-1", day: `${temperature}` }));
  const { means, meanDifferences } = compare([...bores("A", 0, 20), ...bores("B", 0, 20)], [...bores("A", 0.01, 26), ...bores("B", 0.01, 26)]);
  const [degree, coefficient] = [(73.02 * 23.1e-6) / Math.sqrt(3), (73.02 * 23.1e-6 * 0.1 * 6) / Math.sqrt(3)];
  expect(means[0]!.commonUncertainty).toBeCloseTo(2 * Math.sqrt(2 * degree ** 2 + coefficient ** 2), 5);
  // In the same sessions and at the same temperatures nothing of it is left.
  expect(meanDifferences[0]!.commonUncertainty).toBeCloseTo(0, 6);
});

test("a temperature on one side only, or without a material, corrects nothing and is said", () => {
  for (const after of [reading(73.01, { temperature: 25 }), reading(73.01)]) {
    const { places, notes } = compare([warm(73, 20)], [after]);
    expect(places[0]!.difference).toBe(0.01);
    expect(notes).toContain(
      "1 place with a temperature compared as measured: temperature and material of both measurings are needed, for example of engine A, cylinder 1, bore, top thrust",
    );
  }
});

test("a temperature that nobody measures at, and a material that nobody knows, are refused by name", async () => {
  const text = (temperature: number, material: string) => `cylinder,characteristic,value,unit,temperature,material\n1,bore,73,mm,${temperature},${material}\n`;
  const [hot] = (await csv(text(77, "grey iron"))).readings;
  expect(hot).toMatchObject({ value: null, fault: "temperature 77: nobody measures by hand above 60 °C, is it in °F?" });
  const [odd] = (await csv(text(21, "cheese"))).readings;
  expect(odd!.fault).toMatch(/^material "cheese" is not known: it must be one of grey iron, /);
  const [cold] = (await csv(text(-5, "11.4"))).readings;
  expect(cold).toMatchObject({ value: 73, temperature: -5, material: "11.4" });
});

test("a pressure has no size to be brought to 20 °C", () => {
  const place = changeBetween(
    warm(12, 20, { characteristic: "compression pressure", unit: "bar" }),
    warm(12.5, 30, { characteristic: "compression pressure", unit: "bar" }),
  );
  expect(place.thermal).toBeUndefined();
  expect(place.difference).toBe(0.5);
});
