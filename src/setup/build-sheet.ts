import { pistonMatch } from "../functions/cylinder/piston-match.ts";
import { reborePlan } from "../functions/cylinder/rebore-plan.ts";
import { ringGapFile } from "../functions/rings/ring-gap-file.ts";
import { regrindPlan } from "../functions/shafts/regrind-plan.ts";
import { shimPlan } from "../functions/valves/shim-plan.ts";
import type { NameSpec } from "../workbook/sheet-spec.ts";
import { camshaftSheet } from "./camshaft-sheet.ts";
import type { BuildSheetChoices } from "./choices.ts";
import { boreHeadings, type SetupContext } from "./columns.ts";
import { crankshaftPage } from "./crankshaft-sheet.ts";
import { boresPage, pistonsPage, ringsPage, volumesPage } from "./cylinder-sheets.ts";
import { ENGINE_TABLE, enginePage } from "./engine-sheet.ts";
import { facesSheet } from "./faces-sheet.ts";
import { LIMITS_TABLE, limitsPage, summaryPage } from "./limit-and-summary-sheets.ts";
import type { BuildSheet, PlanSource, SheetPart, VerdictColumn } from "./model.ts";
import { oilSheet } from "./oil-sheet.ts";
import type { TableAt } from "./page.ts";
import { notesPage, partsPage, shopPage, torquesPage } from "./record-sheets.ts";
import { rodsSheet } from "./rods-sheet.ts";
import { hasSheet, SHEETS, type SheetWord } from "./sheets.ts";
import { surfaceSheet } from "./surface-sheet.ts";
import { secondReadingPages, testsPage } from "./test-and-second-reading-sheets.ts";
import { runInPage, valvesPage } from "./valve-and-run-in-sheets.ts";
import { guidesSheet, springsSheet } from "./valve-gear-sheets.ts";

const PARTS: readonly SheetPart[] = [rodsSheet, camshaftSheet, guidesSheet, springsSheet, facesSheet, surfaceSheet, oilSheet];

/**
 * An ordinary workbook for one engine: tables to type into, our functions beside them, no macros.
 * Every limit is blank until the shop types it.
 */
export function buildSheetSpec(choices: BuildSheetChoices): BuildSheet {
  const parts = PARTS.filter(({ word }) => hasSheet(choices, word));
  const { page: enginesPage, engine } = enginePage(choices, parts);
  const { page: limitPage, limits } = limitsPage(choices, parts);
  const given: SetupContext = { choices, engine, limits };
  const on = <T>(word: SheetWord, page: () => T): T | undefined => (hasSheet(choices, word) ? page() : undefined);
  const bores = on("bores", () => boresPage(given));
  const pistons = on("pistons", () => pistonsPage(given, bores?.bores));
  const rings = on("rings", () => ringsPage(given));
  const crank = on("crankshaft", () => crankshaftPage(given));
  const valves = on("valves", () => valvesPage(given));
  const volumes = on("volumes", () => volumesPage(given, bores?.bores));
  const tests = on("tests", () => testsPage(given));
  const runIn = on("run-in", () => runInPage(given, valves?.valves));
  const torques = on("torques", () => torquesPage(choices));
  const partsList = on("parts", partsPage);
  const ownSheets = parts.map((part) => part.page(given));
  const notes = on("notes", notesPage);
  const shop = on("shop", shopPage);
  const second = choices.secondReadings && (bores || pistons) ? secondReadingPages(given, bores?.bores, pistons?.pistons) : undefined;
  const judgedOn = (table: TableAt | undefined, ...columns: readonly [name: string, heading: string, isSentence?: true][]): VerdictColumn[] =>
    table ? columns.map(([name, heading, isSentence = false]) => ({ name, table, heading, isSentence })) : [];
  const judged = [
    ...judgedOn(bores?.bores, ["Taper", "Taper verdict"], ["Out-of-round", "Out-of-round verdict"], ["Bore wear", "Wear verdict"]),
    ...judgedOn(bores && pistons?.pistons, ["Piston clearance", "Piston clearance verdict"]),
    ...judgedOn(pistons?.pistons, ["Pin clearance", "Pin clearance verdict"]),
    ...judgedOn(rings?.rings, ["Ring end gap", "End gap verdict"], ["Ring side clearance", "Side clearance verdict"]),
    ...judgedOn(crank?.mains, ["Main bearing clearance", "Main bearing clearance verdict"], ["Main journal wear", "Main journal wear verdict"]),
    ...judgedOn(crank?.bigEnds, ["Big end clearance", "Big end clearance verdict"], ["Crankpin wear", "Crankpin wear verdict"]),
    ...judgedOn(crank?.alignment, ["Main bore alignment", "Main bore alignment verdict"]),
    ...judgedOn(crank?.crush, ["Bearing crush", "Crush verdict"]),
    ...judgedOn(crank?.runOut, ["Crankshaft run-out", "Crankshaft run-out verdict"]),
    ...judgedOn(crank?.endFloat, ["Crankshaft end float", "End float verdict"]),
    ...judgedOn(valves?.valves, ["Valve clearance", "Clearance verdict"]),
    ...judgedOn(volumes?.volumes, ["Compression ratio", "Ratio verdict"], ["Squish", "Squish verdict"]),
    ...judgedOn(tests?.tests, ["Compression pressure", "Dry verdict"]),
    ...judgedOn(limits.rule && tests?.tests, ["Compression, by the rule", "By the rule", true]),
    ...judgedOn(tests?.standard, ["Compression at standard air", "At standard air verdict"]),
    ...judgedOn(tests?.spread, ["Compression spread", "Spread verdict"]),
    ...judgedOn(tests?.tests, ["Leak-down", "Leak-down verdict"]),
    ...judgedOn(tests?.spread, ["Leak-down spread", "Leak-down spread verdict"]),
    ...ownSheets.flatMap(({ judged }) => judged),
    ...judgedOn(runIn?.recheck, ["Valve clearance, re-checked", "Re-checked verdict"]),
    ...judgedOn(second?.bores, ["Second readings, bores", "Disagreement verdict"]),
    ...judgedOn(second?.skirts, ["Second readings, skirts", "Disagreement verdict"]),
  ];
  const summary = summaryPage(given, judged);
  const order: readonly string[] = Object.values(SHEETS);
  const pages = [
    ...[enginesPage, limitPage],
    ...[bores, pistons, rings, crank, ...ownSheets, valves, volumes, tests, runIn]
      .flatMap((one) => one?.page ?? [])
      .sort((a, b) => order.indexOf(a.name) - order.indexOf(b.name)),
    ...[second?.page, second?.both, torques, partsList, notes, shop, summary],
  ].filter((page) => page !== undefined);
  const headings = boreHeadings(choices.heights, choices.axes);
  const named: [name: string, formula: string | undefined][] = [
    ["Bore_readings", bores?.bores.body(headings[0]!, headings.at(-1)!)],
    ["Compression_pressures", tests?.tests.body("Dry")],
    ["Gauge_ids", engine.gauges.body("Gauge id")],
    ["Piston_skirts", pistons?.pistons.body("Skirt")],
    ["Ring_end_gaps", rings?.rings.body("End gap")],
    ["Standard_bore", bores && engine.item("Standard bore")],
    ["Valve_clearances", valves?.valves.body("Clearance")],
  ];
  const boreRange = bores?.bores.body(headings[0]!, headings.at(-1)!);
  const source = (of: { name: string }, about: string, table: TableAt | undefined, inputs: (table: TableAt) => PlanSource["inputs"], ...others: string[]) =>
    table ? [{ of: of.name, about, inputs: inputs(table), tables: [table.table.name, ...others] }] : [];
  const journals = (about: string, table: TableAt | undefined, journal: string, standard: string) =>
    source(
      regrindPlan,
      about,
      table,
      (at) => ({ journals: at.body(`${journal} upright`, `${journal} across`), axes: "2", standard: engine.item(standard) }),
      ENGINE_TABLE,
    );
  const plans: PlanSource[] = [
    ...source(
      reborePlan,
      "bores",
      bores?.bores,
      () => ({ bores: boreRange!, axes: String(choices.axes), standard: engine.item("Standard bore") }),
      ENGINE_TABLE,
    ),
    ...journals("main journals", crank?.mains, "Main journal", "Standard main journal"),
    ...journals("crankpins", crank?.bigEnds, "Crankpin", "Standard crankpin"),
    ...source(ringGapFile, "ring end gaps", rings?.rings, (at) => ({ measured: at.body("End gap") })),
    ...source(
      shimPlan,
      "valves",
      valves?.valves,
      (at) => ({ installed: at.body("Shim"), clearance: at.body("Clearance"), step: engine.item("Shim step") }),
      ENGINE_TABLE,
    ),
    ...source(pistonMatch, "pistons", bores && pistons?.pistons, (at) => ({ bores: boreRange!, pistons: at.body("Skirt") }), "BoreReadings", LIMITS_TABLE).map(
      (one) => ({ ...one, middles: { target: [limits.cell("Lower", "Piston clearance"), limits.cell("Upper", "Piston clearance")] as const } }),
    ),
    ...ownSheets.flatMap(({ plans: own = [] }) => own),
  ];
  return {
    title: "Build sheet",
    plans,
    sheets: pages.map((page) => page.described(choices)),
    names: named.flatMap(([name, formula]): NameSpec[] => (formula === undefined ? [] : [{ name, formula }])),
  };
}
