import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { isCellError } from "../../src/core/cell.ts";
import type { Made } from "./made.ts";

/** What Check finds outside its limits or not proven, as label and sentence; nothing is refused, and no cell shows an error. */
export async function outside(made: Made): Promise<string[]> {
  const snapshot = await made.host.read();
  expect(made.host.notes()).toEqual([]);
  expect(snapshot.sheets.flatMap(({ values }) => values.flat().filter(isCellError))).toEqual([]);
  const { findings, refused } = checkWorkbook(snapshot);
  expect(refused).toBe(0);
  expect(findings.filter(({ kind }) => ["refused", "likely slip", "overwritten formula"].includes(kind))).toEqual([]);
  return findings
    .filter(({ kind }) => kind === "outside limit" || kind === "not proven")
    .map(({ label, sentence }) => `${label} | ${sentence}`)
    .sort();
}

/** Types down several columns of a table, each from its first row on. */
export async function fill(made: Made, table: string, columns: Readonly<Record<string, readonly number[]>>): Promise<void> {
  for (const [heading, contents] of Object.entries(columns)) await made.fill(table, heading, contents);
}

/** One gauge of this U, with which all of that was measured. */
export async function gauge(made: Made, u: number, ...measured: string[]): Promise<void> {
  await made.type("Gauges", "Gauge id", 0, "G1");
  await made.type("Gauges", "U of the gauge", 0, u);
  for (const what of measured) await made.type("Measurements", "Gauge", made.rowOf("Measurements", what), "G1");
}
