import { type CharacteristicChange, type Comparison, compareReadings } from "../compare/compare.ts";
import type { Reading } from "../compare/readings.ts";
import { placeName } from "../workbook/address.ts";
import { readSides } from "./compare-files.ts";
import { printComparison } from "./compare-page.ts";
import { ALL_WELL, FINDINGS, Refusal, UNREADABLE } from "./exit-codes.ts";
import { decimalSignOf } from "./locale.ts";
import { complain, print } from "./output.ts";
import { jsonLine } from "./text.ts";

export interface CompareFlags {
  json?: boolean;
  locale?: string;
  hours?: string;
  engines?: string;
  uncertainty?: string;
}

const NOTHING = "nothing could be compared: no reading of the one is a reading of the other that can be judged";

/** `crosshatch compare BEFORE AFTER`: every change with what the gauge explains of it, the real ones first. */
export async function compare(before: string, after: string, { json = false, locale = "en", ...flags }: CompareFlags): Promise<number> {
  const options = { hours: positive("hours", flags.hours), engines: enginesIn(flags.engines) };
  const sides = await readSides([before, after], decimalSignOf(locale), positive("uncertainty", flags.uncertainty));
  if ("unread" in sides) {
    for (const { file, reason } of sides.unread) complain(`${file} ${reason}`);
    if (json) await print(jsonLine({ ...counts(), unread: sides.unread }));
    return UNREADABLE;
  }
  const comparison = compareReadings(sides.before, sides.after, options);
  if (json) await printLines(comparison);
  else await printComparison(comparison);
  if (comparison.changes.length === 0) {
    complain(NOTHING);
    return UNREADABLE;
  }
  return comparison.real > 0 ? FINDINGS : ALL_WELL;
}

/** A number above 0 as it was typed after an option. */
function positive(name: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (text.trim() === "" || !Number.isFinite(value) || value <= 0) throw new Refusal(`--${name} ${text} is no number above 0`);
  return value;
}

function enginesIn(text: string | undefined): { before: string; after: string } | undefined {
  if (text === undefined) return undefined;
  const [before = "", after = "", ...more] = text.split(",").map((name) => name.trim());
  if (before === "" || after === "" || more.length > 0) throw new Refusal(`--engines ${text} does not name two engines: wanted is A,B`);
  return { before, after };
}

async function printLines(comparison: Comparison): Promise<void> {
  for (const change of comparison.changes) await print(jsonLine(changeLine(change)));
  for (const { label, before, after, why } of comparison.refused) {
    await print(jsonLine({ kind: "refused", label, before: before.map(placed), after: after.map(placed), why }));
  }
  for (const group of comparison.groups) await print(jsonLine({ kind: "group", ...group }));
  await print(jsonLine({ ...counts(comparison), unread: [] }));
}

function changeLine({ before, after, ...change }: CharacteristicChange): object {
  const { label, verdict, engine, cylinder, characteristic, position, unit = null, ...rest } = change;
  const readings = { before: before.value, after: after.value };
  return {
    kind: "change",
    verdict,
    label,
    engine,
    cylinder,
    characteristic,
    position,
    unit,
    ...readings,
    ...rest,
    at: { before: whereOf(before), after: whereOf(after) },
  };
}

const placed = (reading: Reading): object => ({ value: reading.value, at: whereOf(reading) });
const whereOf = ({ line, cell }: Reading): string => (line === undefined ? placeName(cell) : `line ${line}`);

/** The closing line; of files that could not be read there is nothing to count. */
function counts(comparison?: Comparison): object {
  const { between = "", rowsIn = 0, rowsCompared = 0, rowsRefused = 0, changes = [], real = 0, groups = [], notes = [] } = comparison ?? {};
  return { between, rowsIn, compared: rowsCompared, refused: rowsRefused, changes: changes.length, real, groups: groups.length, notes };
}
