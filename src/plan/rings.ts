import { broadcast, type CallResult } from "../core/broadcast.ts";
import type { Argument } from "../core/cell.ts";
import { decimal } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import { faultBody } from "../core/sentences.ts";
import { WorkbookCells } from "../formula/workbook-cells.ts";
import { boreSummary } from "../functions/cylinder/bore-summary.ts";
import { ringGapFile } from "../functions/rings/ring-gap-file.ts";
import { ringGapTarget } from "../functions/rings/ring-gap-target.ts";
import { type CellArea, placeName } from "../workbook/address.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { argumentOf, callOf, formulaOf, isArea, oneBore, type PlanInput, reference } from "./inputs.ts";
import { limitsInSheet } from "./limits-in-sheet.ts";
import { NOTHING_WRITTEN, type PlannedContent, type PlanTarget, planEdits, valueParts, type WrittenPlan } from "./placement.ts";

/** One ring: its gap as measured, and either the gap wanted or the bore that it is to run in. */
export interface RingInput {
  name: string;
  measured: PlanInput;
  /** The gap wanted; goes before what the bore asks for. */
  target?: PlanInput;
  /** The bore by its size or by its readings, of which the smallest counts: there the gap is least. */
  bore?: PlanInput;
  /** The limits of the gap: inside them it stays, below them it is filed into them. Without either, those by which the sheet judges the gap. */
  least?: PlanInput;
  most?: PlanInput;
}

export interface RingInputs {
  rings: readonly RingInput[];
  /** Gap for each unit of bore, where a bore stands for the target. */
  perBore?: PlanInput;
}

interface RingRow {
  name: string;
  measured: number | null;
  target: number | null;
  /** 0 for a ring that is open enough; `null` while something is missing, or where filing does not help. */
  toFile: number | null;
  says: string;
}

interface RingPlan extends WrittenPlan {
  rings: RingRow[];
  /** Of how many gaps the limits are the sheet's own. */
  limitsInSheet: number;
  notes: readonly string[];
}

/** How much to take off each ring, and how that is written into the sheet. */
export function planRings(snapshot: WorkbookSnapshot, inputs: RingInputs, place?: PlanTarget): RingPlan {
  const book = new WorkbookCells(snapshot);
  const limited = withLimits(book, inputs);
  const rings = limited.rings.map((ring) => ringRow(book, ring, inputs.perBore));
  const notes = [...(ringGapFile.notes ?? []), ...(ringGapTarget.notes ?? [])];
  const limitsFound = limited.rings.filter((ring, at) => ring !== inputs.rings[at]).length;
  return { ...(place && rings.length > 0 ? written(book, limited, place, rings) : NOTHING_WRITTEN), rings, limitsInSheet: limitsFound, notes };
}

/** What the sheet says of a gap and what the plan says of it go by one pair of limits. */
function withLimits(book: WorkbookCells, inputs: RingInputs): RingInputs {
  const inSheet = limitsInSheet(book);
  const rings = inputs.rings.map((ring) => {
    const found = ring.least === undefined && ring.most === undefined && isArea(ring.measured) ? inSheet.get(placeName(ring.measured)) : undefined;
    const isTyped = found && [found.least, found.most].some((limit) => lengthOr(argumentOf(book, limit)) !== null);
    return isTyped ? { ...ring, ...found } : ring;
  });
  return { ...inputs, rings };
}

function ringRow(book: WorkbookCells, ring: RingInput, perBore: PlanInput): RingRow {
  const measured = argumentOf(book, ring.measured);
  const target = targetOf(book, ring, perBore);
  const [least, most] = [ring.least, ring.most].map((limit) => (limit === undefined ? "" : argumentOf(book, limit)));
  const toFile = target instanceof Fault ? target : broadcast(ringGapFile, [measured, target, least, most]);
  const row = {
    name: ring.name,
    measured: typeof measured === "number" ? measured : null,
    target: lengthOr(target),
    toFile: typeof toFile === "number" ? toFile : null,
  };
  const limits = { least: lengthOr(least), most: lengthOr(most) };
  return { ...row, says: toFile instanceof Fault ? faultBody(toFile) : says(row, limits, String(toFile)) };
}

function targetOf(book: WorkbookCells, { target, bore }: RingInput, perBore: PlanInput): Argument | Fault {
  if (target !== undefined) return argumentOf(book, target);
  if (bore === undefined) return "";
  const size = isSeveral(book, bore)
    ? smallestOf(
        broadcast(
          boreSummary,
          oneBore(book, bore).map((given) => argumentOf(book, given)),
        ),
      )
    : argumentOf(book, bore);
  return size instanceof Fault ? size : broadcast(ringGapTarget, [size, argumentOf(book, perBore)]);
}

const isSeveral = (book: WorkbookCells, given: PlanInput): boolean => Array.isArray(argumentOf(book, given));
const smallestOf = (summary: CallResult): Argument | Fault => (Array.isArray(summary) ? summary[1]![0]! : summary);
/** 0 stands for a blank cell, as it does for every length. */
const lengthOr = (cell: unknown): number | null => (typeof cell === "number" && cell !== 0 ? cell : null);

type GapLimits = Record<"least" | "most", number | null>;

function says({ measured, target, toFile }: Omit<RingRow, "says">, limits: GapLimits, shown: string): string {
  const { least, most } = limits;
  if (measured === null) return "the gap is not measured yet";
  if (toFile === null && shown !== "") return `${shown}; fit another ring`;
  if (toFile) return `file ${toFile} off, from ${measured} to ${decimal(measured + toFile)}${goalWords(decimal(measured + toFile), target, limits)}`;
  if (toFile === null) return "no target: a gap wanted, a least gap, or a bore with all its readings, is missing";
  if (least !== null) return `stays: ${measured} is ${most === null ? `not under ${least}` : `within ${least} to ${most}`}`;
  const wider = decimal(measured - target!);
  return wider > 0 ? `open enough: ${wider} wider than the target ${target}` : `exactly the target ${target}`;
}

/** Why a ring is filed to this gap, where there are limits. */
function goalWords(goal: number, target: number | null, { least, most }: GapLimits): string {
  if (least === null) return "";
  const passedOver = target !== null && target !== goal ? `; the target ${target} is outside the limits` : "";
  if (goal === target) return `, the target, as ${least} is the least`;
  return most === null ? `, the least${passedOver}` : `, the middle of ${least} to ${most}${passedOver}`;
}

function written(book: WorkbookCells, { rings, perBore }: RingInputs, place: PlanTarget, rows: readonly RingRow[]): WrittenPlan {
  const sources = [perBore, ...rings.flatMap(({ measured, target, bore, least, most }) => [measured, target, bore, least, most])].filter(
    (one): one is CellArea => isArea(one),
  );
  if (place.as === "values" || !rings.every(({ measured }) => isArea(measured))) {
    const table = rows.map((row): PlannedContent[] => [row.name, row.measured ?? "", row.target ?? "", row.toFile ?? row.says]);
    return planEdits(book, place, "values", valueParts([["ring", "measured", "target", "to file"], ...table], place.date), sources);
  }
  const { sheet, row, column } = place.at;
  const lines = rings.map((ring, at): PlannedContent[] => {
    const target = { sheet, row: row + 1 + at, column: column + 1, rows: 1, columns: 1 };
    return [
      ring.name,
      targetContent(book, ring, perBore, sheet),
      { formula: formulaOf(ringGapFile, [ring.measured, hasTarget(ring) ? target : null, ring.least ?? null, ring.most ?? null], sheet) },
    ];
  });
  return planEdits(book, place, "formulas", [{ row: 0, column: 0, cells: [["ring", "target", "to file"], ...lines] }], sources);
}

const hasTarget = ({ target, bore }: RingInput): boolean => target !== undefined || bore !== undefined;

function targetContent(book: WorkbookCells, { target, bore }: RingInput, perBore: PlanInput, sheet: string): PlannedContent {
  if (target !== undefined) return isArea(target) ? { formula: `=${reference(target, sheet)}` } : ((argumentOf(book, target) as PlannedContent) ?? "");
  if (bore === undefined) return "";
  const size = isSeveral(book, bore) ? `INDEX(${callOf(boreSummary, oneBore(book, bore), sheet)},2,1)` : undefined;
  return { formula: formulaOf(ringGapTarget, [size === undefined ? bore : { formula: size }, perBore], sheet) };
}
