import { broadcast } from "../core/broadcast.ts";
import { decimal } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import { CHECK_PREFIX, sentence } from "../core/sentences.ts";
import { WorkbookCells } from "../formula/workbook-cells.ts";
import { massMatch } from "../functions/balance/mass-match.ts";
import type { CellArea } from "../workbook/address.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { argumentOf, blockOf, formulaOf, inputLengths, isArea, type PlanInput, referencesTo } from "./inputs.ts";
import { NOTHING_WRITTEN, type PlanBlock, type PlannedContent, type PlanTarget, planEdits, valueParts, type WrittenPlan } from "./placement.ts";

/** Inputs as MASSMATCH takes them. */
interface MassInputs {
  /** Each set is matched by itself: the pistons, the big ends, the small ends. */
  sets: readonly PlanInput[];
  tolerance?: PlanInput;
  /** What the sheet calls the parts of each set, as far as it does. */
  names?: readonly (readonly string[] | undefined)[];
}

interface MassRow {
  name: string;
  mass: number | null;
  /** What to take off; `null` where the part is not weighed, or is no part of this set. */
  off: number | null;
  says: string;
}

interface MassSet {
  parts: MassRow[];
  /** The lightest, or several that are, to which the others come, and how much heavier the heaviest is. */
  lightest: string | null;
  spread: number | null;
}

interface MassPlan extends WrittenPlan {
  sets: MassSet[];
  fault: string | null;
  notes: readonly string[];
}

/** What each part of each set must lose, and how that is written into the sheet. */
export function planMasses(snapshot: WorkbookSnapshot, inputs: MassInputs, place?: PlanTarget): MassPlan {
  const book = new WorkbookCells(snapshot);
  const plan: MassPlan = { ...NOTHING_WRITTEN, sets: [], fault: null, notes: massMatch.notes ?? [] };
  for (const [at, set] of inputs.sets.entries()) {
    // One line, whatever the shape of the range: a plan has a row for each part.
    const line = blockOf(book, set)
      .flat()
      .map((cell) => [cell]);
    const made = broadcast(massMatch, [line, argumentOf(book, inputs.tolerance ?? null)]);
    if (made instanceof Fault) return { ...plan, sets: [], fault: sentence(made) };
    if (Array.isArray(made)) plan.sets.push(setOf(made.flat(), inputLengths(book, set), inputs.names?.[at]));
  }
  return place && plan.sets.length > 0 ? { ...plan, ...written(book, inputs, place, plan.sets) } : plan;
}

function setOf(off: readonly (number | string)[], masses: readonly (number | null)[], names: readonly string[] | undefined): MassSet {
  const parts = off.map((cell, at): MassRow => {
    const mass = masses[at] ?? null;
    const row = { name: names?.[at] ?? `part ${at + 1}`, mass, off: typeof cell === "number" ? cell : null };
    return { ...row, says: says(row, String(cell)) };
  });
  const counted = parts.flatMap(({ name, mass, off }) => (mass === null || off === null ? [] : [{ name, mass }]));
  if (counted.length === 0) return { parts, lightest: null, spread: null };
  const [least, most] = [Math.min, Math.max].map((pick) => pick(...counted.map(({ mass }) => mass))) as [number, number];
  const lightest = counted.filter(({ mass }) => mass === least).map(({ name }) => name);
  return { parts, lightest: lightest.join(", "), spread: decimal(most - least) };
}

function says({ mass, off }: Omit<MassRow, "says">, shown: string): string {
  if (off === null) return shown.startsWith(CHECK_PREFIX) ? shown.slice(CHECK_PREFIX.length) : "not weighed yet";
  return off === 0 ? "stays as it is" : `take ${off} off, from ${mass} to ${decimal(mass! - off)}`;
}

const HEADER = ["part", "mass", "take off"];

function written(book: WorkbookCells, { sets: given, tolerance = null }: MassInputs, place: PlanTarget, sets: readonly MassSet[]): WrittenPlan {
  const sources = [...given, tolerance].filter((one): one is CellArea => isArea(one));
  if (place.as === "values" || !given.every(isArea)) {
    const table = sets.flatMap(({ parts }) => [HEADER, ...parts.map((part): PlannedContent[] => [part.name, part.mass ?? "", part.off ?? part.says])]);
    return planEdits(book, place, "values", valueParts(table, place.date), sources);
  }
  const { sheet } = place.at;
  let row = 0;
  const blocks = sets.flatMap(({ parts }, at): PlanBlock[] => {
    const start = row;
    row += parts.length + 1;
    // Masses stand below one another here, so that MASSMATCH fills one column, whatever the shape of the range.
    const masses = referencesTo(given[at] as CellArea, sheet);
    const column = { sheet, row: place.at.row + start + 1, column: place.at.column + 1, rows: parts.length, columns: 1 };
    return [
      { row: start, column: 0, cells: [HEADER.slice(), ...parts.map(({ name }, part): PlannedContent[] => [name, masses[part]!])] },
      {
        row: start + 1,
        column: 2,
        cells: [[{ formula: formulaOf(massMatch, [column, tolerance], sheet) }]],
        fills: { rows: parts.length, columns: 1 },
      },
    ];
  });
  return planEdits(book, place, "formulas", blocks, sources);
}
