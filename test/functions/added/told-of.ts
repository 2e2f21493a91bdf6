/**
 * Prints what every part of the program makes of functions named on the command line, as JSON. Runs in
 * a copy of the project to which they have been added, so it knows nothing of them but their names.
 */
import * as engine from "@odoo/o-spreadsheet";
import { applyWorkLimits } from "../../../src/calc/grid/work-limits.ts";
import { Analysis } from "../../../src/check/analysis.ts";
import { checkWorkbook } from "../../../src/check/check-workbook.ts";
import { functionHelp, functionList } from "../../../src/cli/help-command.ts";
import { readingsOfWorkbook } from "../../../src/compare/from-workbook.ts";
import { specs } from "../../../src/functions/index.ts";
import { findSpecs } from "../../../src/pane/functions-view.tsx";
import { reportInput } from "../../../src/report/gather/workbook.ts";
import { functionsJson } from "../../../src/tools/functions-json.ts";
import { placeName } from "../../../src/workbook/address.ts";
import { type Typed, workbook } from "../../check/workbook.ts";

const [names, sheets, tooMuch] = JSON.parse(process.argv[2]!) as [string[], Record<string, Typed>, string];

const associated: string[] = [];
Object.assign(globalThis, { CustomFunctions: { associate: (id: string) => void associated.push(id) } });
await import("../../../src/addin/functions.ts");

const snapshot = workbook(sheets);
// The limits are put on last: they hold for whatever is calculated from here on.
const limited = applyWorkLimits(engine, { block: 500_000, live: 1_000_000, work: 1_000_000, seconds: 600, text: 1000 });
const model = new engine.Model({ version: "19.3.2", sheets: [{ id: "s", name: "S", colNumber: 26, rowNumber: 300, cells: { A1: tooMuch } }] } as never);
model.getters.getEvaluatedCell({ sheetId: "s", col: 0, row: 0 } as never);
const { content } = reportInput(snapshot);

const told = {
  functionsJson: functionsJson().functions.filter(({ id }) => names.includes(id)),
  associated: associated.filter((id) => names.includes(id)),
  help: names.map((name) => functionHelp(name).split("\n")[0]),
  list: names.filter((name) => functionList().includes(`  ${name} `)),
  pane: names.filter((name) =>
    [...findSpecs(specs, name.toLowerCase()).values()]
      .flat()
      .map((spec) => spec.name)
      .includes(name),
  ),
  values: snapshot.sheets.map(({ values }) => values),
  refused: limited.refused,
  calls: new Analysis(snapshot).calls.map(({ spec }) => spec.name),
  findings: checkWorkbook(snapshot).findings.map(({ kind, cell, lower, upper, sentence }) => ({ kind, cell: placeName(cell), lower, upper, sentence })),
  readings: readingsOfWorkbook(snapshot).readings.map(({ cell, characteristic, value }) => [placeName(cell), characteristic, value]),
  drawn: content.bores.map(({ what, place }) => ({ place, readings: what.readings, standard: what.standard, limit: what.limit })),
};
process.stdout.write(`\n${JSON.stringify(told)}\n`);
