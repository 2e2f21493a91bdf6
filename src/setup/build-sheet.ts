import type { NameSpec } from "../workbook/sheet-spec.ts";
import { camshaftSheet } from "./camshaft-sheet.ts";
import type { BuildSheetChoices } from "./choices.ts";
import { boreHeadings, type SetupContext } from "./columns.ts";
import { crankshaftPage } from "./crankshaft-sheet.ts";
import { boresPage, pistonsPage, ringsPage, volumesPage } from "./cylinder-sheets.ts";
import { enginePage } from "./engine-sheet.ts";
import { facesSheet } from "./faces-sheet.ts";
import { limitsPage, summaryPage } from "./limit-and-summary-sheets.ts";
import type { BuildSheet, SheetPart, VerdictColumn } from "./model.ts";
import { rodsSheet } from "./rods-sheet.ts";
import { secondReadingPages, testsPage } from "./test-and-second-reading-sheets.ts";
import { runInPage, valvesPage } from "./valve-and-run-in-sheets.ts";
import { guidesSheet, springsSheet } from "./valve-gear-sheets.ts";

const PARTS: readonly SheetPart[] = [rodsSheet, camshaftSheet, guidesSheet, springsSheet, facesSheet];

/**
 * An ordinary workbook for one engine: tables to type into, our functions beside them, no macros.
 * Every limit is blank until the shop types it.
 */
export function buildSheetSpec(choices: BuildSheetChoices): BuildSheet {
  const { page: enginesPage, engine } = enginePage(choices, PARTS);
  const { page: limitPage, limits } = limitsPage(choices, PARTS);
  const given: SetupContext = { choices, engine, limits };
  const { page: borePage, bores } = boresPage(given);
  const { page: pistonPage, pistons } = pistonsPage(given, bores);
  const { page: ringPage, rings } = ringsPage(given);
  const { page: crankPage, mains, bigEnds, endFloat } = crankshaftPage(given);
  const { page: valvePage, valves } = valvesPage(given);
  const { page: volumePage, volumes } = volumesPage(given, bores);
  const { page: testPage, tests, spread } = testsPage(given);
  const { page: logPage, recheck } = runInPage(given, valves);
  const parts = PARTS.map((part) => part.page(given));
  const second = choices.secondReadings ? secondReadingPages(given, bores, pistons) : undefined;
  const judged: VerdictColumn[] = [
    { name: "Taper", table: bores, heading: "Taper verdict" },
    { name: "Out-of-round", table: bores, heading: "Out-of-round verdict" },
    { name: "Bore wear", table: bores, heading: "Wear verdict" },
    { name: "Piston clearance", table: pistons, heading: "Piston clearance verdict" },
    { name: "Pin clearance", table: pistons, heading: "Pin clearance verdict" },
    { name: "Ring end gap", table: rings, heading: "End gap verdict" },
    { name: "Ring side clearance", table: rings, heading: "Side clearance verdict" },
    { name: "Main bearing clearance", table: mains, heading: "Main bearing clearance verdict" },
    { name: "Main journal wear", table: mains, heading: "Main journal wear verdict" },
    { name: "Big end clearance", table: bigEnds, heading: "Big end clearance verdict" },
    { name: "Crankpin wear", table: bigEnds, heading: "Crankpin wear verdict" },
    { name: "Crankshaft end float", table: endFloat, heading: "End float verdict" },
    { name: "Valve clearance", table: valves, heading: "Clearance verdict" },
    { name: "Compression ratio", table: volumes, heading: "Ratio verdict" },
    { name: "Squish", table: volumes, heading: "Squish verdict" },
    { name: "Compression pressure", table: tests, heading: "Dry verdict" },
    ...(limits.rule ? [{ name: "Compression, by the rule", table: tests, heading: "By the rule", isSentence: true }] : []),
    ...(spread ? [{ name: "Compression spread", table: spread, heading: "Spread verdict" }] : []),
    { name: "Leak-down", table: tests, heading: "Leak-down verdict" },
    ...parts.flatMap(({ judged }) => judged),
    { name: "Valve clearance, re-checked", table: recheck, heading: "Re-checked verdict" },
    ...(second
      ? [
          { name: "Second readings, bores", table: second.bores, heading: "Disagreement verdict" },
          { name: "Second readings, skirts", table: second.skirts, heading: "Disagreement verdict" },
        ]
      : []),
  ];
  const pages = [
    enginesPage,
    limitPage,
    borePage,
    pistonPage,
    ringPage,
    crankPage,
    ...parts.map(({ page }) => page),
    valvePage,
    volumePage,
    testPage,
    logPage,
    ...(second ? [second.page, second.both] : []),
  ];
  const headings = boreHeadings(choices.heights, choices.axes);
  const names: NameSpec[] = [
    { name: "Bore_readings", formula: bores.body(headings[0]!, headings.at(-1)!) },
    { name: "Compression_pressures", formula: tests.body("Dry") },
    { name: "Gauge_ids", formula: engine.gauges.body("Gauge id") },
    { name: "Piston_skirts", formula: pistons.body("Skirt") },
    { name: "Ring_end_gaps", formula: rings.body("End gap") },
    { name: "Standard_bore", formula: engine.item("Standard bore") },
    { name: "Valve_clearances", formula: valves.body("Clearance") },
  ];
  return { title: "Build sheet", sheets: [...pages, summaryPage(given, judged)].map((page) => page.described(choices)), names };
}
