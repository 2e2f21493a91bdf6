/** Writes the invented sample files: `npm run samples`. The same files come out every time. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import * as engine from "@odoo/o-spreadsheet";
import { registerFunctions } from "../src/calc/grid/register-functions.ts";
import type { Cell } from "../src/core/cell.ts";
import { specs } from "../src/functions/index.ts";
import { root } from "../src/tools/paths.ts";
import { buildSheet } from "./build-sheet.ts";
import { compareSamples } from "./compare/compare.ts";
import { engineSample } from "./engine/engine.ts";
import { layoutSamples } from "./layouts/layouts.ts";
import { readingsCsv } from "./readings.ts";
import { type CalculatedCell, type SampleSheet, writeWorkbook } from "./sample-workbook.ts";
import { selfCheckWorkbook } from "./self-check.ts";
import { trialSample } from "./trial/trial.ts";

/** Calculates the sheets headless, so that the file also holds what its formulas come to. */
function calculate(sheets: readonly SampleSheet[]): CalculatedCell {
  registerFunctions(specs, engine);
  const chatter = console.debug;
  console.debug = () => {};
  const model = new engine.Model({
    version: "19.3.2",
    sheets: sheets.map(({ name, cells }) => ({
      id: name,
      name,
      colNumber: 26,
      rowNumber: 100,
      cells: Object.fromEntries(cells.map(({ address, content }) => [address, String(content)])),
    })),
  } as never);
  console.debug = chatter;
  return (sheet, address) => {
    const row = Number(address.slice(1)) - 1;
    const cell = model.getters.getEvaluatedCell({ sheetId: sheet, col: address.charCodeAt(0) - 65, row });
    if (cell.type === "error") throw new Error(`${sheet}!${address} comes to ${cell.value}: ${cell.message}`);
    return cell.value as Cell;
  };
}

const folder = join(root, "samples");
mkdirSync(folder, { recursive: true });
const sheets = buildSheet();
writeFileSync(join(folder, "build-sheet.xlsx"), writeWorkbook(sheets, "Build sheet of engine A (invented)", calculate(sheets)));
writeFileSync(join(folder, "readings.csv"), readingsCsv());
writeFileSync(join(folder, "self-check.xlsx"), await selfCheckWorkbook());
mkdirSync(join(folder, "compare"), { recursive: true });
for (const [name, text] of Object.entries(compareSamples())) writeFileSync(join(folder, "compare", name), text);
mkdirSync(join(folder, "trial"), { recursive: true });
for (const [name, text] of Object.entries(trialSample())) writeFileSync(join(folder, "trial", name), text);
mkdirSync(join(folder, "engine"), { recursive: true });
writeFileSync(join(folder, "engine", "crankshaft-head-oil.xlsx"), engineSample());
mkdirSync(join(folder, "layouts"), { recursive: true });
for (const [name, bytes] of await layoutSamples()) writeFileSync(join(folder, "layouts", name), bytes);
