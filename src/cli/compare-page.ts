import { type CharacteristicChange, type Comparison, type GroupChange, isReal, type RefusedRow } from "../compare/compare.ts";

import { print } from "./output.ts";
import { aligned, counted, plain } from "./text.ts";

/** Labels of four parts stand in one column. */
const WIDEST = 56;

/** The comparison as a person reads it: verdicts in words first, the real changes before the others. */
export async function printComparison(comparison: Comparison): Promise<void> {
  const { between, changes, refused, groups, notes } = comparison;
  await print(plain(between));
  await printTable("really changed", changes.filter(isReal).map(changeRow));
  await printTable("what the gauge may explain", changes.filter((change) => !isReal(change)).map(changeRow));
  await printTable("not compared", refused.map(refusedRow));
  await printTable("wear", wearRows(changes));
  await printTable("cylinders taken together", groups.map(groupRow));
  for (const note of notes) await print(`  note: ${plain(note)}`);
  await print(`  ${sums(comparison)}`);
}

async function printTable(title: string, rows: readonly (readonly string[])[]): Promise<void> {
  if (rows.length === 0) return;
  await print(`  ${title}`);
  for (const line of aligned(
    rows.map((row) => row.map(plain)),
    WIDEST,
  ))
    await print(`    ${line}`);
}

const changeRow = ({ verdict, label, before, after, unit, says }: CharacteristicChange): string[] => [
  verdict,
  label,
  `${before.value} → ${after.value}${unit ? ` ${unit}` : ""}`,
  says,
];

/** What comes to its limit soonest goes first. */
function wearRows(changes: readonly CharacteristicChange[]): string[][] {
  const worn = changes.flatMap(({ label, wear }) => (wear?.isReal ? [{ label, wear, soonest: wear.life?.earliest ?? Number.POSITIVE_INFINITY }] : []));
  return worn.sort((a, b) => (a.soonest === b.soonest ? 0 : a.soonest - b.soonest)).map(({ label, wear }) => [label, wear.says]);
}

const groupRow = ({ differs, engine, characteristic, says }: GroupChange): string[] => [
  differs ? "differ" : "not shown to differ",
  [engine, characteristic].filter(Boolean).join(", "),
  says,
];

const refusedRow = ({ label, before, after, why }: RefusedRow): string[] => [
  "refused",
  label,
  [before, after].map((side) => side.map(({ value }) => value ?? "?").join(", ") || "none").join(" → "),
  why,
];

function sums({ rowsIn, rowsCompared, rowsRefused, changes, real }: Comparison): string {
  const rows = `${counted(rowsIn, "row")} in = ${rowsCompared.toLocaleString("en")} compared + ${rowsRefused.toLocaleString("en")} refused`;
  return `${rows}, ${counted(changes.length, "characteristic")}, ${real.toLocaleString("en")} really changed`;
}
