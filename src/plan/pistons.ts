import { broadcast } from "../core/broadcast.ts";
import type { Block } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { CHECK_PREFIX, sentence } from "../core/sentences.ts";
import { WorkbookCells } from "../formula/workbook-cells.ts";
import { boreSummary } from "../functions/cylinder/bore-summary.ts";
import { pistonMatch } from "../functions/cylinder/piston-match.ts";
import type { CellArea } from "../workbook/address.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { argumentOf, blockOf, callOf, formulaOf, isArea, oneBore, type PlanInput } from "./inputs.ts";
import { NOTHING_WRITTEN, type PlanBlock, type PlannedContent, type PlanTarget, planEdits, valueParts, type WrittenPlan } from "./placement.ts";

/** The bores by one size each, or by their readings, of which the smallest then counts. */
type BoreSizes = { sizes: PlanInput } | { blocks: readonly PlanInput[] };

interface PistonInputs {
  bores: BoreSizes;
  /** One skirt size for each piston. */
  pistons: PlanInput;
  /** The clearance wanted. */
  target: PlanInput;
  boreNames?: readonly string[];
  pistonNames?: readonly string[];
}

interface MatchRow {
  bore: string;
  boreSize: number | null;
  /** `null` where no piston is left for the bore, or it cannot be matched yet. */
  piston: string | null;
  pistonSize: number | null;
  clearance: number | null;
  /** Clearance less the target. */
  offTarget: number | null;
  says: string;
}

interface PistonPlan extends WrittenPlan {
  matches: MatchRow[];
  leftOver: { piston: string; size: number | null; says: string }[];
  /** The clearance furthest from the target, by how much. */
  worst: number | null;
  fault: string | null;
  notes: readonly string[];
}

/** Which piston goes in which bore, and how that is written into the sheet. */
export function planPistons(snapshot: WorkbookSnapshot, inputs: PistonInputs, place?: PlanTarget): PistonPlan {
  const book = new WorkbookCells(snapshot);
  const nothing: PistonPlan = { ...NOTHING_WRITTEN, matches: [], leftOver: [], worst: null, fault: null, notes: pistonMatch.notes ?? [] };
  const { bores, pistons, target } = inputs;
  const sizes = "sizes" in bores ? blockOf(book, bores.sizes) : bores.blocks.map((block) => [smallestIn(book, block)]);
  const made = broadcast(pistonMatch, [sizes, argumentOf(book, pistons), argumentOf(book, target)]);
  if (made instanceof Fault) return { ...nothing, fault: sentence(made) };
  if (!Array.isArray(made)) return nothing;
  const rows = made.slice(1);
  const matches = rows.filter(([bore]) => typeof bore === "number").map((row) => matchRow(row, inputs));
  const leftOver = rows.filter(([bore]) => typeof bore !== "number").map(([, , number, size]) => leftOverRow(number as number, size!, inputs));
  const off = matches.flatMap(({ offTarget }) => (offTarget === null ? [] : [Math.abs(offTarget)]));
  const plan = { ...nothing, matches, leftOver, worst: off.length > 0 ? Math.max(...off) : null };
  return place ? { ...plan, ...written(book, inputs, place, plan, made[0]!) } : plan;
}

/** The smallest reading of a bore as BORESUMMARY gives it: blank while a reading is missing, text for one that is no good. */
function smallestIn(book: WorkbookCells, readings: PlanInput): Block[number][number] {
  const summary = broadcast(
    boreSummary,
    oneBore(book, readings).map((given) => argumentOf(book, given)),
  );
  if (summary instanceof Fault) return `${CHECK_PREFIX}${sentence(summary)}`;
  return Array.isArray(summary) ? summary[1]![0] : summary;
}

const numberOr = (cell: PlannedContent | undefined): number | null => (typeof cell === "number" ? cell : null);
const pistonName = (number: number, { pistonNames }: PistonInputs): string => pistonNames?.[number - 1] ?? `piston ${number}`;

function matchRow([number, boreSize, piston, size, gap, off]: readonly (number | string)[], inputs: PistonInputs): MatchRow {
  const bore = inputs.boreNames?.[(number as number) - 1] ?? `bore ${number}`;
  const mate = typeof piston === "number" ? pistonName(piston, inputs) : null;
  const row = { bore, boreSize: numberOr(boreSize), piston: mate, pistonSize: numberOr(size), clearance: numberOr(gap), offTarget: numberOr(off) };
  if (mate === null) return { ...row, says: typeof boreSize === "number" ? "no piston is left for it" : faultIn(boreSize!, "not measured yet") };
  if (row.clearance === null) return { ...row, says: faultIn(gap!, "") };
  const from = row.offTarget === 0 ? "on target" : `${Math.abs(row.offTarget!)} ${row.offTarget! > 0 ? "over" : "under"} the target`;
  return { ...row, says: `${mate}: clearance ${row.clearance}, ${from}` };
}

function leftOverRow(number: number, size: PlannedContent, inputs: PistonInputs): PistonPlan["leftOver"][number] {
  return { piston: pistonName(number, inputs), size: numberOr(size), says: typeof size === "number" ? "left over" : faultIn(size, "") };
}

const faultIn = (text: PlannedContent, otherwise: string): string =>
  typeof text === "string" && text.startsWith(CHECK_PREFIX) ? text.slice(CHECK_PREFIX.length) : otherwise;

function written(book: WorkbookCells, inputs: PistonInputs, place: PlanTarget, { matches, leftOver }: PistonPlan, header: PlannedContent[]): WrittenPlan {
  const { bores, pistons, target } = inputs;
  const given = "sizes" in bores ? [bores.sizes] : [...bores.blocks];
  const sources = [...given, pistons, target].filter((one): one is CellArea => isArea(one));
  const { sheet } = place.at;
  if (place.as === "values" || !given.every(isArea) || !isArea(pistons)) {
    const rows = matches.map((row) => [
      row.bore,
      row.boreSize ?? row.says,
      row.piston ?? "",
      row.pistonSize ?? "",
      row.clearance ?? (row.piston ? row.says : ""),
      row.offTarget ?? "",
    ]);
    const over = leftOver.map((row) => ["left over", "", row.piston, row.size ?? row.says, "", ""]);
    return planEdits(book, place, "values", valueParts([header, ...rows, ...over], place.date), sources);
  }
  const counts = { bores: "sizes" in bores ? blockOf(book, bores.sizes).flat().length : given.length, pistons: pistons.rows * pistons.columns };
  // Pistons can all come to be left over while no bore is measured.
  const fills = { rows: 1 + counts.bores + counts.pistons, columns: header.length };
  const matched = (sizes: PlanInput): PlanBlock => ({
    row: 0,
    column: 0,
    cells: [[{ formula: formulaOf(pistonMatch, [sizes, pistons, target], sheet) }]],
    fills,
  });
  if ("sizes" in bores) return planEdits(book, place, "formulas", [matched(bores.sizes)], sources);
  const beside = header.length + 1;
  const smallest = given.map((block): PlannedContent[] => [{ formula: `=INDEX(${callOf(boreSummary, oneBore(book, block), sheet)},2,1)` }]);
  const sizes: CellArea = { sheet, row: place.at.row + 1, column: place.at.column + beside, rows: given.length, columns: 1 };
  return planEdits(book, place, "formulas", [matched(sizes), { row: 0, column: beside, cells: [["smallest reading"], ...smallest] }], sources);
}
