import { readFileSync } from "node:fs";
import * as engine from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { applyCompatibility } from "../../../src/calc/grid/compatibility.ts";
import { toPlaces } from "../../../src/calc/grid/rounding.ts";
import { KNOWN, roundingCases } from "../../reference/rounding/cases.ts";

console.debug = () => {};

let model: engine.Model;
beforeAll(() => {
  applyCompatibility(engine);
  model = new engine.Model({ version: "19.3.2", sheets: [{ id: "s", name: "S", colNumber: 3, rowNumber: 9, cells: { A1: "1.005", A2: "'1.005" } }] });
});

const shown = (formula: string) => (model.getters.evaluateFormulaResult("s", `=${formula}`) as { value: unknown }).value;

// LibreOffice 7.4.7.2 (Debian 12), by test/reference/rounding/make.ts; a line is a function and what it gives for each of its cases,
// with the 15 digits that its files keep.
const LIBREOFFICE = new Map(
  readFileSync(new URL("../../reference/rounding/libreoffice.csv", import.meta.url), "utf8")
    .trim()
    .split("\n")
    .map((line) => line.split(","))
    .map(([name, ...values]) => [name!, values.map(Number)]),
);

/** It takes this for 0.00211, from which it is further away than the 15th digit. */
const OTHERWISE = ["ROUNDDOWN(0.0021099999999999453,5)"];

/** What is left over by MOD has the digits behind those of its number, in which nothing is known. */
const isSame = (value: number, wanted: number, size: number): boolean =>
  Number(value.toPrecision(15)) === wanted + 0 || Math.abs(value - wanted) <= 4e-14 * size;
const sizeIn = (formula: string): number => Math.abs(Number(/\((-?[\d.]+)/.exec(formula)![1]));

test.each(roundingCases())("$name gives on 1000 decimals what LibreOffice gives", ({ name, formulas }) => {
  const wanted = LIBREOFFICE.get(name)!;
  expect(wanted).toHaveLength(formulas.length);
  const other = formulas.filter((formula, i) => !isSame(shown(formula) as number, wanted[i]!, name === "MOD" ? sizeIn(formula) : 0));
  expect(other).toEqual(OTHERWISE.filter((formula) => formula.startsWith(`${name}(`)));
});

// By the decimals as they are written: no binary number comes into it.
test("decimals that binary numbers hold badly are rounded as they are written", () => {
  expect(KNOWN.map(shown)).toEqual([1.01, 0.07, 1.15, 2.8, 1.15, 0.04]);
});

test("text and truth values are read as the grid reads them, a blank is 0, and what is no number is a fault", () => {
  expect([shown("ROUND(A2,2)"), shown("ROUND(TRUE)"), shown("ROUND(B1,2)"), shown('ROUND("x",2)'), shown("ROUND(NA(),2)")]).toEqual([
    1.01,
    1,
    0,
    "#VALUE!",
    "#N/A",
  ]);
});

test("steps of 0, and of another sign than the value, are answered as before", () => {
  expect([shown("CEILING(2.5,0)"), shown("MOD(2.5,0)"), shown("CEILING(2.5,-1)")]).toEqual([0, "#DIV/0!", "#NUM!"]);
});

test("the number is within half a unit of the last place, and rounding again changes nothing", () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, min: -1e9, max: 1e9 }), fc.integer({ min: -3, max: 9 }), (value, places) => {
      const rounded = toPlaces(value, places, "nearest");
      expect(Math.abs(rounded - value)).toBeLessThanOrEqual(0.500001 * 10 ** -places + Math.abs(value) * 1e-14);
      expect(toPlaces(rounded, places, "nearest")).toBe(rounded);
      expect(toPlaces(-value, places, "nearest")).toBe(0 - rounded);
    }),
  );
});
