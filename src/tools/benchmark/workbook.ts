import * as engine from "@odoo/o-spreadsheet";
import { specs } from "../../functions/index.ts";
import { registerFunctions } from "../../sheet/engine.ts";
import { type Line, ratioLine, time } from "./measure.ts";

/** A workbook with 10 000 of our formulas against the same sheet in native formulas, same engine. */
const FORMULAS = 10_000;

function workbook(formula: (row: number) => string): object {
  const cells: Record<string, string> = {};
  for (let row = 1; row <= FORMULAS; row++) {
    cells[`A${row}`] = (73 + (row % 90) / 1000).toFixed(3);
    cells[`B${row}`] = (72.9 + (row % 70) / 1000).toFixed(3);
    cells[`C${row}`] = formula(row);
  }
  return { version: "19.3.2", sheets: [{ id: "s", name: "Sheet1", colNumber: 4, rowNumber: FORMULAS + 1, cells }] };
}

function calculated(data: object): unknown {
  const model = new engine.Model(structuredClone(data) as never);
  return model.getters.getEvaluatedCell({ sheetId: "s", col: 2, row: FORMULAS - 1 }).value;
}

export function tenThousandFormulas(): Line[] {
  registerFunctions(specs, engine);
  const chatter = console.debug;
  console.debug = () => {};
  const pairs: [string, (row: number) => string, (row: number) => string][] = [
    ["CLEARANCE", (row) => `=HATCH.CLEARANCE(A${row}, B${row})`, (row) => `=A${row}-B${row}`],
    ["VERDICT", (row) => `=HATCH.VERDICT(A${row}, 73, 73.05)`, (row) => `=IF(A${row}>73.05,"over",IF(A${row}<73,"under","within"))`],
  ];
  const lines = pairs.map(([name, ours, native]) => {
    const [a, b] = [workbook(ours), workbook(native)];
    return ratioLine(
      `10 000 × ${name} opened and calculated headless`,
      time(() => calculated(a), 5),
      time(() => calculated(b), 5),
      1.3,
    );
  });
  console.debug = chatter;
  return lines;
}
