import * as engine from "@odoo/o-spreadsheet";
import { toGridFormula } from "../../../src/calc/grid/grid-text.ts";
import { registerFunctions } from "../../../src/calc/grid/register-functions.ts";
import { broadcast } from "../../../src/core/broadcast.ts";
import type { Cell } from "../../../src/core/cell.ts";
import { specByName, specs } from "../../../src/functions/index.ts";
import { asWritten, EXAMPLES } from "../examples.ts";

type Shown = { value: unknown; message?: string };

let sheet: engine.Model;
const readings: Record<string, string> = {
  A1: "73.01",
  B1: "73.02",
  A2: "73",
  B2: "73.01",
  A4: "73,02",
  A5: "=1/0",
  B5: "#N/A",
  A6: '=""',
  A7: "0",
  B7: "TRUE",
};

beforeAll(() => {
  registerFunctions(specs, engine);
  const { debug } = console;
  console.debug = () => {};
  sheet = new engine.Model({ version: "19.3.2", sheets: [{ id: "s", name: "Sheet1", colNumber: 20, rowNumber: 60, cells: readings }] });
  console.debug = debug;
});

/** What a cell shows that holds the formula, and what it spills. */
function shown(formula: string): Shown[][] {
  const result = sheet.getters.evaluateFormulaResult("s", formula) as Shown | Shown[][];
  if (!Array.isArray(result)) return [[result]];
  return result[0]!.map((_, row) => result.map((column) => column[row]!));
}

const one = (formula: string): Shown => shown(formula)[0]![0]!;
describe("every example of every function gives in the engine's hands what it says", () => {
  test.each(EXAMPLES)("%s", (formula, gives) => {
    // The engine has no quote inside text; adapters write it so.
    const found = shown(toGridFormula(formula)).map((row) => row.map(({ value }) => value as Cell));
    expect(asWritten(found, gives)).toEqual(gives);
  });
});

describe("arguments", () => {
  test("a block arrives row by row", () => {
    expect(one("=HATCH.TAPER(A1:B2)").value).toBe(0.01);
    expect(shown("=HATCH.TAPER({73.03,73.02,73.01,73;73,73,73,73},2)").map(([cell]) => cell!.value)).toEqual([0.02, 0]);
  });

  test("a skipped argument is not given, and a missing one is named", () => {
    expect(one("=HATCH.VERDICT(0.038,0.02,0.04,,0.003)").value).toBe("near limit");
    expect(one("=HATCH.PISTONCLEARANCE(73.04)")).toMatchObject({
      value: "#VALUE!",
      message: "PISTONCLEARANCE: skirt is not given: it must be a length above 0",
    });
  });

  test("one left out at the very end is not given at all, as where there is no comma", () => {
    const missing = { value: "#VALUE!", message: "PISTONCLEARANCE: skirt is not given: it must be a length above 0" };
    expect(one("=HATCH.PISTONCLEARANCE(73.04,)")).toMatchObject(missing);
    expect(one("=HATCH.PISTONCLEARANCE(73.04,,)")).toMatchObject(missing);
  });

  test("the engine's own codes are quoted as other sheets write them", () => {
    expect(one('=HATCH.CLEARANCE("worn"+1,1)').message).toContain("hole holds the error #VALUE!");
    expect(one("=HATCH.CLEARANCE(#REF,1)").message).toContain("hole holds the error #REF!");
  });

  test("an error cell is named by its code, whether the engine or the file put it there", () => {
    expect(one("=HATCH.CLEARANCE(A5,1)").message).toContain("holds the error #DIV/0!");
    expect(one("=HATCH.CLEARANCE(B5,1)").message).toContain("holds the error #N/A");
  });

  test("small letters call the same function", () => {
    expect(one("=hatch.taper(a1:b2)").value).toBe(0.01);
  });
});

describe("blanks are the same in the engine's hands as in ours", () => {
  const BLANK_CELLS = [
    ["a blank cell", "A3", null],
    ["empty text", "A6", ""],
    ["zero", "A7", 0],
  ] as const;

  for (const spec of specs.filter(({ inputs }) => inputs.length > 0)) {
    test.each(BLANK_CELLS)(`${spec.name} of %s`, (_, cell, ours) => {
      const args = spec.inputs.map(() => cell).join(",");
      const expected = broadcast(
        spec,
        spec.inputs.map(() => ours),
      );
      const found = shown(`=HATCH.${spec.name}(${args})`);
      if (Array.isArray(expected)) expect(found.map((row) => row.map(({ value }) => value))).toEqual(expected);
      else if (typeof expected === "object") expect(found[0]![0]).toMatchObject({ value: "#VALUE!" });
      else expect(found).toEqual([[{ value: expected }]]);
    });
  }
});

describe("results", () => {
  test("a fault is #VALUE! with its sentence, and IFERROR catches it", () => {
    expect(one("=HATCH.PISTONCLEARANCE(73.02,73.06)")).toMatchObject({
      value: "#VALUE!",
      message: "PISTONCLEARANCE: skirt 73.06 is larger than bore 73.02: are they swapped?",
    });
    expect(one('=IFERROR(HATCH.PISTONCLEARANCE(73.02,73.06),"swap")').value).toBe("swap");
  });

  test("in a block a bad element is text and the others are computed", () => {
    const found = shown("=HATCH.CLEARANCE({73.04;0;73.02},{73;73;73.06})").map(([cell]) => cell!.value);
    expect(found).toEqual([0.04, "", expect.stringMatching(/^check: /)]);
  });

  test("registering again changes nothing", () => {
    registerFunctions(specs, engine);
    expect(one("=HATCH.TAPER(A1:B2)").value).toBe(0.01);
    expect(specByName.size).toBe(specs.length);
  });

  test("a function that fails by itself is not hidden", () => {
    const broken = { ...specs[0]!, name: "BROKEN", inputs: [], returns: { kind: "value", help: "" } as const, compute: () => JSON.parse("{") };
    registerFunctions([broken], engine);
    const { error } = console;
    console.error = () => {};
    expect(one("=HATCH.BROKEN()").value).toBe("#ERROR");
    console.error = error;
  });
});
