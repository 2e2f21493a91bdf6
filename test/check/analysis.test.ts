import { Analysis } from "../../src/check/analysis.ts";
import { checkAnalysed, checkWorkbook } from "../../src/check/check-workbook.ts";
import { JudgedRows } from "../../src/check/finding.ts";
import type { Mapping } from "../../src/layout/mapping.ts";
import { gather, reportInput } from "../../src/report/gather/workbook.ts";
import { everything } from "../report/page.ts";

class Counted extends Analysis {
  walks = 0;

  override *readCalls() {
    this.walks++;
    yield* super.readCalls();
  }
}

const MAPPING: Mapping = {
  version: 1,
  ranges: [
    {
      ...{ sheet: "Bores", row: 3, column: 2, rows: 2, columns: 2, rowHeads: [], columnHeads: [], signature: [] },
      ...{ fixed: { characteristic: "bore" }, otherwise: {}, records: "cell", without: { rows: [], columns: [] }, grows: false },
    },
  ],
};

test("check and report go through the formulas of a workbook once between them, and find what each finds alone", () => {
  const analysis = new Counted(everything());
  const judged = new JudgedRows();
  const result = checkAnalysed(analysis, undefined, judged.take);
  const content = gather(analysis, judged.rows);
  expect(analysis.walks).toBe(1);
  expect(result).toEqual(checkWorkbook(everything()));
  expect(content).toEqual(gather(new Analysis(everything()), judged.rows));
  expect({ result, content }).toMatchObject({ result: reportInput(everything()).result, content: reportInput(everything()).content });
});

test("calls are the same whether they are read at once or row by row", () => {
  const atOnce = new Analysis(everything()).calls;
  const byRow = [...new Analysis(everything()).readCalls()].flat();
  expect(atOnce.length).toBeGreaterThan(10);
  const shown = (calls: typeof atOnce) => calls.map(({ spec, at, formula, place }) => ({ name: spec.name, at, formula, place }));
  expect(shown(byRow)).toEqual(shown(atOnce));
});

test("what a layout makes of a workbook is worked out once for each layout", () => {
  const analysis = new Analysis(everything());
  expect(analysis.mapped(MAPPING)).toBe(analysis.mapped(MAPPING));
  expect(analysis.mapped({ ...MAPPING, ranges: [] })).toEqual({ readings: [], limits: [], lost: [] });
});
