import * as engine from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { fromGridFormula, toGridFormula, typedText } from "../../../src/calc/grid/grid-text.ts";

console.debug = () => {};

let model: engine.Model;
beforeAll(() => {
  model = new engine.Model();
});

/** What a cell holds after this has been typed into it. */
function typed(content: string) {
  const cell = { sheetId: model.getters.getActiveSheetId(), col: 0, row: 0 };
  model.dispatch("UPDATE_CELL", { ...cell, content: "", format: "" });
  model.dispatch("UPDATE_CELL", { ...cell, content });
  return model.getters.getEvaluatedCell(cell).value;
}

/** Text made of what numbers, dates, formulas and errors are made of, which any text is more likely to be mistaken for. */
const risky = fc.string({ unit: fc.constantFrom(..."0123456789.,:/-+$€%()eEapmAPM =#'!TRUE ".split("")), minLength: 1, maxLength: 8 });
// The engine takes codes of errors for errors however they come, and keeps no carriage return.
const isKept = (text: string) => !text.startsWith("#") && !text.includes("\r");

test("text is text in the engine, whatever it looks like", () => {
  fc.assert(
    fc.property(fc.oneof(risky, fc.string({ unit: "grapheme", minLength: 1 })).filter(isKept), (text) => {
      expect(typed(typedText(text))).toBe(text);
    }),
    { numRuns: 500 },
  );
});

/** The largest and the smallest number that a sheet can hold (Excel specifications and limits). */
const LARGEST = 9.99999999999999e307;
const SMALLEST = 2.2251e-307;

test("numbers come back digit for digit", () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, min: -LARGEST, max: LARGEST }), (number) => {
      fc.pre(Math.abs(number) >= SMALLEST || number === 0);
      expect(typed(typedText(number))).toBe(number === 0 ? 0 : number);
    }),
  );
});

test.each(["73,02", "1/2", "2026-01-05", "12:30", "12:30 pm", "5%", "$5", "1e3", "true", "FALSE", "'a", "=1+1", " 7 "])("%j is kept as text", (text) => {
  expect(typed(typedText(text))).toBe(text);
});

test("words are typed as they are, without a sign in front", () => {
  expect(["top", "2 7/8 in", "bore 3", "-", "⌀"].map(typedText)).toEqual(["top", "2 7/8 in", "bore 3", "-", "⌀"]);
});

test("a quote inside text is spliced in for the engine, and back for people", () => {
  expect(toGridFormula('=A1="2 7/8"""')).toBe('=A1=("2 7/8"&CHAR(34)&"")');
  expect(toGridFormula('=""&"plain"')).toBe('=""&"plain"');
  fc.assert(
    fc.property(fc.array(fc.string({ unit: fc.constantFrom('""', "a", " ", "#REF", "!", "(", "&") }), { minLength: 1, maxLength: 3 }), (texts) => {
      const formula = `=CONCAT(${texts.map((text) => `"${text}"`).join(",")})`;
      expect(fromGridFormula(toGridFormula(formula))).toBe(formula);
    }),
  );
});

test("a lost reference has its sign of exclamation for people alone", () => {
  expect([toGridFormula("=#REF!+1"), fromGridFormula("=#REF+1")]).toEqual(["=#REF+1", "=#REF!+1"]);
});
