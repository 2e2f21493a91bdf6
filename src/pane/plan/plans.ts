import { counted } from "../../core/number-text.ts";
import { WorkbookCells } from "../../formula/workbook-cells.ts";
import { planPistons } from "../../plan/pistons.ts";
import type { PlanTarget, WrittenPlan } from "../../plan/placement.ts";
import { planRebore } from "../../plan/rebore.ts";
import { planRings } from "../../plan/rings.ts";
import { planShims } from "../../plan/shims.ts";
import type { WorkbookSnapshot } from "../../workbook/port.ts";
import { typedText } from "../parts/text.ts";
import { Answers, ringInputs, rowsOf } from "./answers.ts";
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
  rebore: reboring,
  rings: ringFiling,
  shims: shimming,
  pistons: matching,
};

const size = (value: number | null): string => (value === null ? "–" : typedText(value));

function reboring(answers: Answers) {
  const { form } = answers;
  const blocks = form.layout === "blocks" ? answers.areas("bores") : undefined;
  const rows = blocks ? undefined : answers.area("bores");
  const axes = blocks ? 1 : answers.given("axes");
  if (typeof axes !== "number") answers.refuse("axes", "a number is wanted here");
  const inputs = {
    bores: blocks ? { blocks } : { rows: rows ?? null, axes: axes as number },
    standard: answers.given("standard"),
    oversizes: answers.given("oversizes"),
    allowance: answers.given("allowance"),
    centring: form.centring ?? "worn",
    common: form.common === "yes",
    pistons: answers.given("pistons"),
    pistonClearance: answers.given("pistonClearance"),
  };
  const names = answers.names("names");
  return (snapshot: WorkbookSnapshot, place?: PlanTarget): ShownPlan => {
    const { bores, oversizes, remarks, fault, notes, ...written } = planRebore(snapshot, { ...inputs, ...(names ? { names } : {}) }, place);
    const every = oversizes.map((row) => [
      size(row.oversize),
      size(row.finish),
      { text: row.says, reasons: row.bores.map((bore) => `${bore.name} ${bore.says}`) },
    ]);
    const tables = [
      { caption: "What each bore gets", columns: ["bore", "needed", "plan"], rows: bores.map((bore) => [bore.name, size(bore.needed), bore.says]) },
      { caption: "Every oversize, and why", columns: ["oversize", "finish", "what it does"], rows: every },
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
  const names = answers.names("names");
  const inputs = { installed: installed!, clearance: clearance!, least: least!, most: most!, spares: spares!, step: step!, ...(names ? { names } : {}) };
  return (snapshot: WorkbookSnapshot, place?: PlanTarget): ShownPlan => {
    const { valves, buy, leftOver, badSpares, judgedOtherwise, fault, notes, ...written } = planShims(snapshot, inputs, place);
    const tables = [
      { caption: "What each valve gets", columns: ["valve", "clearance", "plan"], rows: valves.map((valve) => [valve.name, size(valve.measured), valve.says]) },
    ];
    const bought = buy.map(({ size: shim, count }) => `${typedText(shim)} (${counted(count, "shim")})`);
    const remarks = [
      valves.length > 0 ? `To buy: ${bought.join(", ") || "nothing"}.` : "",
      leftOver.length > 0 ? `Left over: ${leftOver.map(({ size: shim, from }) => `${typedText(shim)} from ${from}`).join(", ")}.` : "",
      ...badSpares,
      judgedOtherwise > 0
        ? `Careful: the sheet judges ${counted(judgedOtherwise, "of these clearances", "of these clearances")} by other limits than these.`
        : "",
    ];
    return { tables, remarks: remarks.filter(Boolean), fault, notes, written };
  };
}

function matching(answers: Answers) {
  const { layout } = answers.form;
  const areas = layout === "blocks" ? answers.areas("bores") : [answers.area("bores")].flatMap((area) => area ?? []);
  const bores = layout === "sizes" ? { sizes: areas[0] ?? null } : { blocks: layout === "rows" ? areas.flatMap(rowsOf) : areas };
  const inputs = { bores, pistons: answers.given("pistons"), target: answers.given("target") };
  const [boreNames, pistonNames] = [answers.names("names"), answers.names("pistonNames")];
  return (snapshot: WorkbookSnapshot, place?: PlanTarget): ShownPlan => {
    const named = { ...inputs, ...(boreNames ? { boreNames } : {}), ...(pistonNames ? { pistonNames } : {}) };
    const { matches, leftOver, worst, fault, notes, ...written } = planPistons(snapshot, named, place);
    const tables = [
      { caption: "Which piston each bore gets", columns: ["bore", "size", "plan"], rows: matches.map((row) => [row.bore, size(row.boreSize), row.says]) },
    ];
    const remarks = [
      worst === null ? "" : `Furthest from the clearance wanted: ${typedText(worst)}.`,
      leftOver.length > 0
        ? `Left over: ${leftOver.map(({ piston, size: skirt }) => `${piston}${skirt === null ? "" : ` (${typedText(skirt)})`}`).join(", ")}.`
        : "",
    ];
    return { tables, remarks: remarks.filter(Boolean), fault, notes, written };
  };
}
