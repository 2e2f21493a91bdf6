import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { Result } from "../../src/core/cell.ts";
import { excelHost } from "../../src/hosts/excel/host.ts";
import type { BenchmarkGroup } from "./benchmark-group.ts";
import { type BenchmarkLine, show, together } from "./measure.ts";

type HostFunction = (...given: unknown[]) => Result[][];

/** The add-in's functions, called as Excel calls them: blocks of cells, and an object about the call behind them. */
async function functionsOfAddin(): Promise<Map<string, HostFunction>> {
  const functions = new Map<string, HostFunction>();
  Object.assign(globalThis, { CustomFunctions: { associate: (id: string, run: HostFunction) => functions.set(id, run) } });
  await import("../../src/addin/functions.ts");
  return functions;
}

const CALLS = 10_000;
const ROWS = 1_048_576;
const FILLED = 1000;
const SHEETS = 100;

/** What Excel's objects hold once they are synced; they wait for nothing here. */
function workbookOf(sheets: number): Parameters<typeof excelHost>[0] {
  const content = (sheet: number) => {
    const row = (r: number) => [
      `Bore ${r}`,
      73.06 + sheet / 1e4,
      73,
      `=HATCH.CLEARANCE(B${r + 1},C${r + 1})`,
      `=HATCH.VERDICT(D${r + 1},$F$1,$G$1)`,
      0.02,
      0.04,
    ];
    const formulas = Array.from({ length: 100 }, (_, r) => row(r));
    const values = formulas.map((line) => line.map((cell, c) => (c === 3 ? 0.06 + sheet / 1e4 : c === 4 ? "over" : cell)));
    return {
      rowIndex: 0,
      columnIndex: 0,
      formulas,
      values,
      valueTypes: values.map((line) => line.map((cell) => (typeof cell === "number" ? "Double" : "String"))),
    };
  };
  const list = (items: unknown[]) => ({ items, load() {} });
  const items = Array.from({ length: sheets }, (_, i) => {
    const range = { load() {}, isNullObject: false, ...content(i) };
    return { name: `Engine ${i + 1}`, names: list([]), load() {}, getUsedRangeOrNullObject: () => range };
  });
  const context = { sync: async () => {}, workbook: { name: "engines.xlsx", load() {}, worksheets: list(items), names: list([]), tables: list([]) } };
  return (batch) => batch(context as never);
}

const line = (what: string, took: Awaited<ReturnType<typeof together>>[number], value: number, aim?: number): BenchmarkLine => ({
  ...{ what, measured: show(took), yardstick: "–", value, unit: "ms" },
  ...(aim === undefined ? {} : { aim }),
});

/** What Excel adds of its own, a queue and a process apart, is not in it. */
export async function excel(): Promise<BenchmarkGroup> {
  const functions = await functionsOfAddin();
  const clearance = functions.get("CLEARANCE")!;
  const call = { functionName: "CLEARANCE", address: "Bores!D2" };
  const column = (from: number) => Array.from({ length: ROWS }, (_, r) => [r < FILLED ? from + r / 1e6 : null]);
  const [holes, shafts] = [column(73.06), column(73)];
  const host = excelHost(workbookOf(SHEETS));
  const [single, whole, reading, checking] = await together([
    () => {
      for (let i = 0; i < CALLS; i++) clearance([[73.06 + i / 1e6]], [[73]], call);
    },
    () => clearance(holes, shafts, call),
    () => host.read(),
    async () => checkWorkbook(await host.read()),
  ]);
  const rows = clearance(holes, shafts, call).length;
  if (rows !== FILLED + 1) throw new Error(`A:A gives ${rows} rows`);
  return {
    lines: [
      line("Excel: 10,000 single calls of CLEARANCE, by what our side takes of each (aim 10 µs)", single!, single!.median, (CALLS * 10) / 1000),
      line("Excel: CLEARANCE(A:A, B:B), a million rows each of which a thousand are filled", whole!, whole!.median, 1000),
      line(`Excel: ${SHEETS} sheets of 100 rows read through the adapter`, reading!, reading!.median),
      line(`Excel: the same read and checked, ${SHEETS * 200} formulas of ours worked out once more`, checking!, checking!.median),
    ],
    profiles: [],
  };
}
