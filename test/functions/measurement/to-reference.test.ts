import fc from "fast-check";
import { coefficientOf, MATERIAL_NAMES, MATERIALS } from "../../../src/functions/measurement/materials.ts";
import { toReference } from "../../../src/functions/measurement/to-reference.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // D. Swyt, J. Res. NIST 99(1), 31, 1994: 100 mm of aluminium at +5 K is 11.55 µm longer; the reference temperature is 20 °C (ISO 1).
  test("100 mm of aluminium at 25 °C reads 100.01155", () => {
    expect(number(toReference, 100.01155, 25, "aluminium")).toBeCloseTo(100, 9);
  });

  // Callister & Rethwisch, table B.6: grey iron 11.4, alloy 356.0 21.5; an 80 mm bore at +10 K grows by 9.12 µm, a piston by 17.20 µm.
  test("80 mm of grey iron and of cast aluminium at 30 °C", () => {
    expect(number(toReference, 80.00912, 30, "grey iron")).toBeCloseTo(80, 9);
    expect(number(toReference, 80.0172, 30, "cast aluminium")).toBeCloseTo(80, 9);
  });

  // The same table and Swyt, row by row.
  test.each([
    ["grey iron", 11.4],
    ["ductile iron", 11.2],
    ["steel", 11.5],
    ["carbon steel", 11.7],
    ["alloy steel", 12.3],
    ["stainless steel", 17.2],
    ["aluminium", 23.1],
    ["cast aluminium", 21.5],
    ["wrought aluminium", 23.6],
    ["magnesium", 26],
    ["brass", 20.5],
    ["bronze", 18],
    ["copper", 17],
    ["titanium", 8.6],
  ])("%s expands by %p millionths per K", (name, millionths) => {
    expect(coefficientOf(name)).toBeCloseTo(millionths * 1e-6, 15);
  });
});

test("every material has a source, and a name that finds it whatever the case", () => {
  for (const { name, source, coefficient } of MATERIALS) {
    expect(source.length).toBeGreaterThan(10);
    expect(coefficientOf(` ${name.toUpperCase()} `)).toBe(coefficient * 1e-6);
  }
  expect(new Set(MATERIAL_NAMES).size).toBe(MATERIALS.length);
});

test("other spellings find the same row", () => {
  expect(coefficientOf("cast iron")).toBe(coefficientOf("grey iron"));
  expect(coefficientOf("gray  iron")).toBe(coefficientOf("grey iron"));
  expect(coefficientOf("aluminum")).toBe(coefficientOf("aluminium"));
  expect(coefficientOf("cast aluminum")).toBe(coefficientOf("cast aluminium"));
  expect(coefficientOf("wrought aluminum")).toBe(coefficientOf("wrought aluminium"));
  expect(coefficientOf("nodular iron")).toBe(coefficientOf("ductile iron"));
});

describe("identities", () => {
  const length = fc.integer({ min: 1000, max: 20_000 }).map((hundredths) => hundredths / 100);
  const warm = fc.integer({ min: 21, max: 60 });

  test("at the reference temperature nothing changes", () => {
    fc.assert(fc.property(length, fc.constantFrom(...MATERIAL_NAMES), (mm, material) => expect(ask(toReference, mm, 20, material)).toBe(mm)));
  });

  test("a warm part is shorter at 20 °C, a cold one longer, and twice the length changes by twice as much", () => {
    fc.assert(
      fc.property(length, warm, (mm, at) => {
        expect(number(toReference, mm, at, "steel")).toBeLessThan(mm);
        expect(number(toReference, mm, 40 - at, "steel")).toBeGreaterThan(mm);
        expect(number(toReference, 2 * mm, at, "steel")).toBeCloseTo(2 * number(toReference, mm, at, "steel"), 7);
      }),
    );
  });

  test("Fahrenheit and Celsius tell the same", () => {
    fc.assert(
      fc.property(length, warm, (mm, at) => {
        expect(number(toReference, mm, at * 1.8 + 32, "grey iron", undefined, "F")).toBeCloseTo(number(toReference, mm, at, "grey iron"), 8);
      }),
    );
  });

  test("a coefficient typed as a number is the material's own", () => {
    fc.assert(fc.property(length, warm, (mm, at) => expect(ask(toReference, mm, at, 11.5)).toBe(ask(toReference, mm, at, "steel"))));
  });

  test("there and back again is where it was", () => {
    fc.assert(
      fc.property(length, warm, (mm, at) => {
        const cold = number(toReference, mm, at, 23.1);
        expect(number(toReference, cold, 20, 23.1, at)).toBeCloseTo(mm, 8);
        expect(ask(toReference, mm, at, 23.1, at)).toBe(mm);
      }),
    );
  });
});

describe("with the gauge's own temperature and material", () => {
  // Linear expansion of both, by hand: the scale of a gauge 2 K warm reads 23e-6 short, the part is 6 K warm.
  test("what the gauge has grown by is put back", () => {
    expect(number(toReference, 73.02, 26, "grey iron", undefined, "C", 22, "steel")).toBeCloseTo((73.02 * (1 + 11.5e-6 * 2)) / (1 + 11.4e-6 * 6), 9);
    expect(number(toReference, 73.02, 78.8, "grey iron", undefined, "F", 71.6, 11.5)).toBeCloseTo((73.02 * (1 + 11.5e-6 * 2)) / (1 + 11.4e-6 * 6), 9);
  });

  test("a gauge of the part's material and temperature reads the length at 20 °C straight away", () => {
    fc.assert(
      fc.property(fc.integer({ min: -5, max: 60 }), fc.constantFrom(...MATERIAL_NAMES), (at, material) => {
        expect(number(toReference, 73.02, at, material, undefined, "C", at, material)).toBe(73.02);
        // Without a temperature of its own it has that of the part.
        expect(number(toReference, 73.02, at, material, undefined, "C", undefined, material)).toBe(73.02);
      }),
    );
  });

  test("a gauge that does not expand changes nothing, nor do blank cells handed over as 0", () => {
    expect(number(toReference, 73.02, 26, "steel", undefined, "C", 40, 0.1)).toBeCloseTo(number(toReference, 73.02, 26, "steel"), 3);
    expect(number(toReference, 73.02, 26, "steel", 20, "C", 0, 0)).toBe(number(toReference, 73.02, 26, "steel"));
  });
});

describe("faults", () => {
  test("an unknown material is answered with the known ones", () => {
    expect(ask(toReference, 100, 25, "unobtainium")).toEqual({
      code: "not-a-choice",
      sentence: `TOREFERENCE: material "unobtainium" is not known: it must be one of ${MATERIAL_NAMES.join(", ")}, or a coefficient in millionths per K, such as 11.5`,
    });
  });

  test("a coefficient typed per K instead of in millionths is refused", () => {
    expect(ask(toReference, 100, 25, 0.0000115)).toEqual({
      code: "too-small",
      sentence: "TOREFERENCE: material 0.0000115 is too small: it must be a coefficient in millionths per K, such as 11.5",
    });
  });

  test("a coefficient of 0.1 or 200 is still one of a solid", () => {
    expect(number(toReference, 100, 30, 0.1)).toBe(99.9999);
    expect(number(toReference, 100, 20, 200)).toBe(100);
  });

  test("a material that is only a blank is answered with the known ones", () => {
    expect(coefficientOf(" ")).toMatchObject({ code: "not-a-choice", param: "material" });
  });

  test("a coefficient of no solid is refused", () => {
    expect(ask(toReference, 100, 25, 1150)).toEqual({
      code: "too-large",
      sentence: "TOREFERENCE: material 1150 is too large: it must be a coefficient in millionths per K, such as 11.5",
    });
  });

  test("a temperature far below anything is refused", () => {
    // At 1 − 200e-6 × 5000 nothing is left of it.
    expect(ask(toReference, 100, -4980, 200)).toMatchObject({ code: "unfit" });
    expect(ask(toReference, 100, -100_000, 100)).toEqual({ code: "unfit", sentence: "TOREFERENCE: temperature -100000: no part is as cold as that" });
  });

  test("a temperature wanted far below anything is refused", () => {
    expect(ask(toReference, 100, 20, 200, -4980)).toMatchObject({ code: "unfit" });
    expect(ask(toReference, 100, 20, 100, -100_000)).toEqual({ code: "unfit", sentence: "TOREFERENCE: reference -100000: no part is as cold as that" });
  });

  test("a temperature that nobody measures at is taken for one in °F", () => {
    expect(ask(toReference, 73.02, 68, "steel")).toEqual({
      code: "unfit",
      sentence: "TOREFERENCE: temperature 68: nobody measures by hand above 60 °C, is it in °F?",
    });
    expect(ask(toReference, 73.02, 68, "steel", undefined, "F")).toBe(73.02);
    expect(ask(toReference, 73.02, 141, "steel", undefined, "F")).toEqual({
      code: "unfit",
      sentence: "TOREFERENCE: temperature 141: nobody measures by hand above 140 °F",
    });
  });

  test("a gauge's temperature without its material is refused, and a gauge as cold as nothing is", () => {
    expect(ask(toReference, 73.02, 26, "steel", undefined, "C", 22)).toEqual({
      code: "missing",
      sentence: "TOREFERENCE: gaugeMaterial is not given: it must be the material of the gauge whose temperature is given, such as steel",
    });
    expect(ask(toReference, 73.02, 26, "steel", undefined, "C", 22, "stone")).toMatchObject({ code: "not-a-choice" });
    expect(ask(toReference, 73.02, 26, "steel", undefined, "C", -100_000, 100)).toEqual({
      code: "unfit",
      sentence: "TOREFERENCE: gaugeTemperature -100000: no gauge is as cold as that",
    });
  });

  test("a scale that is neither C nor F is refused", () => {
    expect(ask(toReference, 100, 25, "steel", 20, "K")).toEqual({
      code: "not-a-choice",
      sentence: 'TOREFERENCE: unit "K" is not known: it must be one of C, F',
    });
  });

  test("in a batch the one bad element says so and the others compute", () => {
    expect(ask(toReference, [[100], [100]], 20, [["steel"], ["steal"]])).toEqual([[100], [expect.stringMatching(/^check: material "steal" is not known/)]]);
  });
});

describe("blanks", () => {
  test("a blank length, temperature or material leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) expect(ask(toReference, blank, 25, "steel")).toBe("");
    for (const blank of BLANKS) expect(ask(toReference, 100, blank, "steel")).toBe("");
    for (const blank of BLANKS_AND_ZERO) expect(ask(toReference, 100, 25, blank)).toBe("");
  });

  test("a temperature of 0 is a cold day and not a blank", () => {
    expect(number(toReference, 100, 0, "steel")).toBeCloseTo(100.023, 4);
  });
});
