import { counted } from "../../core/number-text.ts";
import { cellsOf, WorkbookCells } from "../../formula/workbook-cells.ts";
import { isArea, reference } from "../../plan/inputs.ts";
import { type LimitsInSheet, limitsInSheet } from "../../plan/limits-in-sheet.ts";
import { planMasses } from "../../plan/masses.ts";
import { planPistons } from "../../plan/pistons.ts";
import type { PlanTarget, WrittenPlan } from "../../plan/placement.ts";
import { planRebore } from "../../plan/rebore.ts";
import { planRegrind } from "../../plan/regrind.ts";
import { planRings } from "../../plan/rings.ts";
import { planShims } from "../../plan/shims.ts";
import { parseHeading } from "../../vocabulary/parse-heading.ts";
import { placeName } from "../../workbook/address.ts";
import type { WorkbookSnapshot } from "../../workbook/port.ts";
import { shownNumber } from "../parts/text.ts";
import { Answers, ringInputs, rowsOfArea } from "./answers.ts";
import { FIELDS, type Form, type PlanName } from "./fields.ts";

/** A cell of a table: its words, and what stands behind them. */
export type ShownCell = string | { text: string; reasons: readonly string[] };

export interface ShownTable {
  caption: string;
  columns: readonly string[];
  rows: readonly (readonly ShownCell[])[];
}

/** A plan as people read it, and as it is written into the sheet. */
export interface ShownPlan {
  tables: ShownTable[];
  remarks: string[];
  fault: string | null;
  notes: readonly string[];
  written: WrittenPlan;
}

type Planned = ShownPlan | { troubles: Record<string, string> };

/** Works a plan out from the workbook as it stands; with a place also what is to be written there. */
export function planFor(name: PlanName, snapshot: WorkbookSnapshot, form: Form, place?: PlanTarget): Planned {
  const answers = new Answers(new WorkbookCells(snapshot), form, FIELDS[name]);
  const make = PLANS[name](answers);
  return Object.keys(answers.troubles).length > 0 ? { troubles: answers.troubles } : make(snapshot, place);
}

/** Reads the form first, so that every field that cannot be read is known before anything is planned. */
const PLANS: Readonly<Record<PlanName, (answers: Answers) => (snapshot: WorkbookSnapshot, place?: PlanTarget) => ShownPlan>> = {
  rebore: (answers) => cutting(answers, ["bores", "oversizes"], ["pistons", "pistonClearance"], planRebore),
  rings: ringFiling,
  shims: shimming,
  pistons: matching,
  regrind: (answers) => cutting(answers, ["journals", "undersizes"], ["housing", "shells", "clearance"], planRegrind),
  masses: weighing,
};

const size = (value: number | null): string => (value === null ? "–" : shownNumber(value));

/** Bores by oversizes and journals by undersizes: the keys of their fields, and of those that only one of both has. */
function cutting(answers: Answers, [parts, sizes]: readonly [string, string], fitting: readonly string[], plan: typeof planRebore | typeof planRegrind) {
  const { form } = answers;
  const blocks = form.layout === "blocks" ? answers.areas(parts) : undefined;
  const rows = blocks ? undefined : answers.area(parts);
  const axes = blocks ? 1 : answers.given("axes");
  if (typeof axes !== "number") answers.refuse("axes", "a number is wanted here");
  const inputs = {
    parts: blocks ? { blocks } : { rows: rows ?? null, axes: axes as number },
    standard: answers.given("standard"),
    sizes: answers.given(sizes),
    allowance: answers.given("allowance"),
    centring: form.centring!,
    common: form.common === "yes",
    ...Object.fromEntries(fitting.map((key) => [key, answers.given(key)])),
  };
  const names = answers.names("names", rows, true);
  return (snapshot: WorkbookSnapshot, place?: PlanTarget): ShownPlan => {
    const planned = plan(snapshot, { ...inputs, ...(names ? { names } : {}) }, place);
    const { parts: rows, sizes: listed, remarks, fault, notes, ...written } = planned;
    const every = listed.map((row) => [size(row.size), size(row.finish), { text: row.says, reasons: row.parts.map((part) => `${part.name} ${part.says}`) }]);
    const [part, listing] = [parts, sizes].map((key) => key.slice(0, -1));
    const tables = [
      { caption: `What each ${part} gets`, columns: [part!, "needed", "plan"], rows: rows.map((row) => [row.name, size(row.needed), row.says]) },
      { caption: `Every ${listing}, and why`, columns: [listing!, "finish", "what it does"], rows: every },
    ];
    return { tables, remarks, fault, notes, written };
  };
}

function ringFiling(answers: Answers) {
  const inputs = ringInputs(answers);
  return (snapshot: WorkbookSnapshot, place?: PlanTarget): ShownPlan => {
    const { rings, limitsInSheet, notes, ...written } = planRings(snapshot, inputs, place);
    const tables = [
      { caption: "What to file off each ring", columns: ["ring", "gap", "plan"], rows: rings.map((ring) => [ring.name, size(ring.measured), ring.says]) },
    ];
    const remarks = limitsInSheet > 0 ? [`By the limits with which the sheet judges ${counted(limitsInSheet, "of the gaps", "of the gaps")}.`] : [];
    return { tables, remarks, fault: null, notes, written };
  };
}

function shimming(answers: Answers) {
  const [installed, clearance, least, most, spares, step] = ["installed", "clearance", "least", "most", "spares", "step"].map((key) => answers.given(key));
  const names = isArea(installed!) ? answers.names("names", installed) : undefined;
  const limits = valveLimits(answers, names);
  const inputs = {
    ...{ installed: installed!, clearance: clearance!, least: least!, most: most!, spares: spares!, step: step! },
    ...(names ? { names } : {}),
    ...(limits ? { limits } : {}),
  };
  return (snapshot: WorkbookSnapshot, place?: PlanTarget): ShownPlan => {
    const { valves, buy, leftOver, badSpares, judgedOtherwise, fault, notes, ...written } = planShims(snapshot, inputs, place);
    const tables = [
      { caption: "What each valve gets", columns: ["valve", "clearance", "plan"], rows: valves.map((valve) => [valve.name, size(valve.measured), valve.says]) },
    ];
    const bought = buy.map(({ size: shim, count }) => `${shownNumber(shim)} (${counted(count, "shim")})`);
    const remarks = [
      valves.length > 0 ? `To buy: ${bought.join(", ") || "nothing"}.` : "",
      leftOver.length > 0 ? `Left over: ${leftOver.map(({ size: shim, from }) => `${shownNumber(shim)} from ${from}`).join(", ")}.` : "",
      ...badSpares,
      judgedOtherwise > 0
        ? `Careful: the sheet judges ${counted(judgedOtherwise, "of these clearances", "of these clearances")} by other limits than these.`
        : "",
    ];
    return { tables, remarks: remarks.filter(Boolean), fault, notes, written };
  };
}

/** The limits of each valve, where they are not the same for all or given cell by cell. */
function valveLimits(answers: Answers, names: readonly string[] | undefined): LimitsInSheet[] | undefined {
  const { limits } = answers.form;
  const clearance = answers.given("clearance");
  if (limits === "all" || !isArea(clearance)) return undefined;
  if (limits === "sheet") {
    const judged = limitsInSheet(answers.book);
    const found = [...cellsOf(clearance)].map((cell) => judged.get(placeName(cell)));
    if (found.every((one) => one === undefined)) answers.refuse("clearance", "the sheet judges none of these by limits: say the limits yourself");
    return found.map((one) => one ?? { least: null, most: null });
  }
  const sides = {
    inlet: { least: answers.given("leastInlet"), most: answers.given("mostInlet") },
    exhaust: { least: answers.given("leastExhaust"), most: answers.given("mostExhaust") },
  };
  return [...cellsOf(clearance)].map((cell, at) => {
    const side =
      names?.[at] === undefined ? undefined : parseHeading(names[at]!, ["position"]).places.find(({ word }) => word === "inlet" || word === "exhaust");
    if (!side)
      answers.refuse("clearance", `nothing beside ${placeName(cell)} says whether it is an inlet or an exhaust valve: say it there, or name the valves`);
    return side?.word === "inlet" ? sides.inlet : sides.exhaust;
  });
}

function matching(answers: Answers) {
  const { layout } = answers.form;
  const areas = layout === "blocks" ? answers.areas("bores") : [answers.area("bores")].flatMap((area) => area ?? []);
  const bores = layout === "sizes" ? { sizes: areas[0] ?? null } : { blocks: layout === "rows" ? areas.flatMap(rowsOfArea) : areas };
  const inputs = { bores, pistons: answers.given("pistons"), target: answers.given("target") };
  const boreNames = answers.names("names", layout === "blocks" ? undefined : areas[0], layout === "rows");
  const pistonNames = isArea(inputs.pistons) ? answers.names("pistonNames", inputs.pistons) : undefined;
  return (snapshot: WorkbookSnapshot, place?: PlanTarget): ShownPlan => {
    const named = { ...inputs, ...(boreNames ? { boreNames } : {}), ...(pistonNames ? { pistonNames } : {}) };
    const { matches, leftOver, worst, fault, notes, ...written } = planPistons(snapshot, named, place);
    const tables = [
      { caption: "Which piston each bore gets", columns: ["bore", "size", "plan"], rows: matches.map((row) => [row.bore, size(row.boreSize), row.says]) },
    ];
    const remarks = [
      worst === null ? "" : `Furthest from the clearance wanted: ${shownNumber(worst)}.`,
      leftOver.length > 0
        ? `Left over: ${leftOver.map(({ piston, size: skirt }) => `${piston}${skirt === null ? "" : ` (${shownNumber(skirt)})`}`).join(", ")}.`
        : "",
    ];
    return { tables, remarks: remarks.filter(Boolean), fault, notes, written };
  };
}

function weighing(answers: Answers) {
  const sets = answers.areas("masses");
  const tolerance = answers.given("tolerance");
  const names = sets.map((set) => answers.names("names", set));
  return (snapshot: WorkbookSnapshot, place?: PlanTarget): ShownPlan => {
    const { sets: matched, fault, notes, ...written } = planMasses(snapshot, { sets, tolerance, names }, place);
    const ofSet = (at: number) => (sets.length > 1 ? `, ${reference(sets[at]!, "")}` : "");
    const tables = matched.map(({ parts }, at) => ({
      caption: `What to take off each part${ofSet(at)}`,
      columns: ["part", "mass", "plan"],
      rows: parts.map((row) => [row.name, size(row.mass), row.says]),
    }));
    const remarks = matched.flatMap(({ lightest, spread }, at) =>
      spread === null ? [] : [`Lightest${ofSet(at)}: ${lightest}; the heaviest is ${shownNumber(spread)} above it.`],
    );
    return { tables, remarks, fault, notes, written };
  };
}
