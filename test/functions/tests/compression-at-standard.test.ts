import fc from "fast-check";
import { compressionAtStandard } from "../../../src/functions/tests/compression-at-standard.ts";
import { ask, BLANKS, number } from "../ask.ts";

const gauge = fc.integer({ min: 0, max: 3000 });
const air = fc.integer({ min: 600, max: 1060 }).map((tenths) => tenths / 10);

describe("cited values", () => {
  // ISO 2533, from memory: 794.952 hPa at 2,000 m of geopotential altitude, 1013.25 at sea level.
  test("at 2,000 m a gauge pressure of 794.952 stands for 1013.25", () => {
    expect(number(compressionAtStandard, 794.952, "", 2000)).toBeCloseTo(1013.25, 2);
  });

  // TM 5-3895-359-14&P: 515 psi at 500 ft, 380 psi at 10,000 ft; the standard is 57.2 °F at 500 ft and 23.3 °F at 10,000 ft.
  test("the density rule brings a manual's two figures within 2 % of one another", () => {
    const [low, high] = [number(compressionAtStandard, 515, "", 500, 57.2, "psi"), number(compressionAtStandard, 380, "", 10_000, 23.3, "psi")];
    expect(Math.abs(low / high - 1)).toBeLessThan(0.02);
  });
});

describe("against the compression itself", () => {
  test("what is drawn in is multiplied by one factor wherever it is: absolute pressure by absolute pressure", () => {
    fc.assert(
      fc.property(gauge, air, (read, ambient) => {
        const factor = (read + ambient) / ambient;
        expect(number(compressionAtStandard, read, ambient)).toBeCloseTo(factor * 101.325 - 101.325, 6);
        expect(number(compressionAtStandard, read / 100, ambient / 100, "", "", "bar") * 100).toBeCloseTo(number(compressionAtStandard, read, ambient), 5);
        const psi = number(compressionAtStandard, read / 6.894757293168, ambient / 6.894757293168, "", "", "psi");
        expect(psi * 6.894757293168).toBeCloseTo(number(compressionAtStandard, read, ambient), 5);
      }),
      { numRuns: 500 },
    );
  });

  test("by altitude as by the pressure that a column of air has there, worked out in steps of a metre", () => {
    fc.assert(
      fc.property(gauge, fc.integer({ min: 0, max: 4000 }), (read, metres) => {
        // dp/dh = −g p ÷ (R T): 9.80665 ÷ 287.05287, and 6.5 K less for each kilometre.
        let pressure = 101.325;
        for (let h = 0; h < metres; h++) pressure -= (9.80665 * pressure) / (287.05287 * (288.15 - 0.0065 * (h + 0.5)));
        expect(number(compressionAtStandard, read, "", metres) / (number(compressionAtStandard, read, pressure) || 1)).toBeCloseTo(read ? 1 : 0, 3);
        const feet = number(compressionAtStandard, read, "", metres / 0.3048, "", "psi");
        expect(feet).toBeCloseTo(number(compressionAtStandard, read, "", metres), 5);
      }),
      { numRuns: 400 },
    );
  });

  test("thinner air always means a higher standard pressure; with the temperature, warmer air too; °F as °C", () => {
    fc.assert(
      fc.property(gauge, air, fc.integer({ min: -30, max: 45 }), (read, ambient, celsius) => {
        const plain = number(compressionAtStandard, read + 1, ambient);
        expect(number(compressionAtStandard, read + 1, ambient - 1)).toBeGreaterThan(plain);
        const warm = number(compressionAtStandard, read + 1, ambient, "", celsius);
        expect(warm).toBeCloseTo((plain * (celsius + 273.15)) / 288.15, 6);
        const fahrenheit = number(compressionAtStandard, (read + 1) / 6.894757293168, ambient / 6.894757293168, "", celsius * 1.8 + 32, "psi");
        expect(fahrenheit * 6.894757293168).toBeCloseTo(warm, 5);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("at standard air nothing changes, and a dead cylinder stays one", () => {
    expect(ask(compressionAtStandard, 1200, 101.325)).toBe(1200);
    expect(ask(compressionAtStandard, 1200, "", 0)).toBe(1200);
    expect(ask(compressionAtStandard, 0, 90)).toBe(0);
  });

  test("altitudes from −500 to 11,000 m are taken", () => {
    expect(number(compressionAtStandard, 1000, "", -500)).toBeLessThan(1000);
    expect(number(compressionAtStandard, 1000, "", 11_000)).toBeCloseTo(4477.1, 0);
    expect(ask(compressionAtStandard, 1000, "", 11_001)).toEqual({
      code: "unfit",
      sentence: "COMPRESSIONATSTANDARD: altitude 11001: the rule holds from -500 to 11000 m",
    });
    expect(ask(compressionAtStandard, 1000, "", -501)).toMatchObject({ code: "unfit" });
  });
});

describe("faults", () => {
  test.each<[string, unknown[], string]>([
    ["pressure and altitude together", [1200, 95, 500], "COMPRESSIONATSTANDARD: altitude 500: beside ambient 95 it is one too many: give one of the two"],
    ["neither", [1200], "COMPRESSIONATSTANDARD: ambient is not given: it must be the absolute air pressure, or the altitude in its place"],
    ["hectopascals for kilopascals", [1200, 950], "COMPRESSIONATSTANDARD: ambient 950: no air has that pressure in kPa, at sea level it is 101.325"],
    ["a vacuum", [12, 0.1, "", "", "bar"], "COMPRESSIONATSTANDARD: ambient 0.1: no air has that pressure in bar, at sea level it is 1.01325"],
    ["kelvins", [1200, 95, "", 288], "COMPRESSIONATSTANDARD: temperature 288: air is no colder than -90 °C and no warmer than 60 °C"],
    ["another unit", [1200, 95, "", "", "atm"], 'COMPRESSIONATSTANDARD: unit "atm" is not known: it must be one of kPa, bar, psi'],
  ])("%s", (_, args, sentence) => {
    expect(ask(compressionAtStandard, ...(args as never[]))).toMatchObject({ sentence });
  });
});

describe("blanks", () => {
  test("a cylinder not tested stays blank; blank options are not given", () => {
    for (const blank of BLANKS) {
      expect(ask(compressionAtStandard, blank, 95)).toBe("");
      expect(ask(compressionAtStandard, 1200, 101.325, blank, blank, blank)).toBe(1200);
    }
  });
});
