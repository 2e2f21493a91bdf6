import type { Cell } from "../src/core/cell.ts";
import { compareDecimals } from "../src/core/decimal.ts";
import { GROUP_TITLES, GROUPS, type TradeGroup } from "../src/core/define.ts";
import { evaluateFormula } from "../src/formula/evaluate.ts";
import { specs } from "../src/functions/index.ts";
import { openWorkbook } from "../src/hosts/file.ts";
import { cellName } from "../src/workbook/address.ts";
import { allowed, type Check } from "../test/reference/checks/check.ts";
import { CHECKS } from "../test/reference/checks/index.ts";
import { type SampleCell, type SampleSheet, writeWorkbook } from "./sample-workbook.ts";

/**
 * A workbook that checks the installation it is opened in: every group of functions has a sheet with
 * formula, result, expected value and verdict, and the first sheet adds the verdicts up. Its rows are
 * the checks against outside values and the functions' own examples that give one value.
 */
export const FIRST_SHEET = "Self-check";
export const MASTER = "A4";
const FIRST_ROW = 4;
const FIRST_LINE = 7;
/** A longer formula holds a data set, which nobody would read in a cell. */
const LONGEST = 170;
const HEAD = ["Function", "Formula", "Result", "Expected", "Allowed difference", "Source", "Verdict"];

export async function selfCheckWorkbook(): Promise<Uint8Array> {
  const sheets = selfCheckSheets();
  const title = "Self-check of the functions";
  const values = await calculated(writeWorkbook(sheets, title, () => ""));
  return writeWorkbook(sheets, title, values);
}

/** What the formulas of a workbook come to, by sheet and address. */
async function calculated(bytes: Uint8Array): Promise<(sheet: string, address: string) => Cell> {
  const found = new Map<string, Cell>();
  for (const { name, row, column, values } of (await (await openWorkbook(bytes, "self-check.xlsx")).read()).sheets) {
    for (const [r, line] of values.entries())
      for (const [c, cell] of line.entries()) found.set(`${name}!${cellName({ row: row + r, column: column + c })}`, cell);
  }
  return (sheet, address) => found.get(`${sheet}!${address}`);
}

export function selfCheckSheets(): SampleSheet[] {
  const groups = GROUPS.map((group) => ({ group, checks: rowsOf(group) }));
  return [summary(groups), ...groups.map(({ group, checks }) => groupSheet(group, checks))];
}

/** The checks of a group that fit into a cell, function by function, each followed by its own examples. */
function rowsOf(group: TradeGroup): Check[] {
  return specs
    .filter((spec) => spec.group === group)
    .flatMap(({ name, source, examples }) => {
      const outside = CHECKS[group].filter((check) => check.function === name && check.formula.length <= LONGEST);
      const own = examples.flatMap(({ formula, gives }) => (Array.isArray(gives) ? [] : [exampleCheck(name, formula, gives as number | string, source)]));
      const seen = new Set(outside.map(({ formula }) => formula));
      return [...outside, ...own.filter(({ formula }) => !seen.has(formula))];
    });
}

/** An example as a check: exact where the written number is the whole of it, otherwise to the decimals written. */
function exampleCheck(name: string, formula: string, expect: number | string, source: string): Check {
  const check: Check = { function: name, formula, expect, source: `own example; ${source}`, seen: "computed" };
  const result = evaluateFormula(formula);
  if (typeof expect === "string" || (typeof result === "number" && compareDecimals(result, expect) === 0)) return check;
  return { ...check, within: 0.5 * 10 ** -decimals(expect) };
}

const decimals = (number: number): number => {
  const [digits, exponent = "0"] = String(number).split("e");
  return Math.max(0, (digits!.split(".")[1]?.length ?? 0) - Number(exponent));
};

function groupSheet(group: TradeGroup, checks: readonly Check[]): SampleSheet {
  const cells: SampleCell[] = [
    { address: "A1", content: GROUP_TITLES[group], look: "title" },
    { address: "A2", content: "The result is calculated here and now; the expected value and what it may differ by are what the source says.", look: "note" },
    ...HEAD.map((content, i): SampleCell => ({ address: `${"ABCDEFG"[i]}3`, content, look: "head" })),
    ...checks.flatMap((check, i) => checkRow(check, FIRST_ROW + i)),
  ];
  const last = FIRST_ROW + checks.length - 1;
  return { name: sheetName(group), widths: [19, 56, 26, 26, 13, 62, 10], frozen: 3, cells, flagged: { cells: `G${FIRST_ROW}:G${last}`, unless: "agrees" } };
}

function checkRow(check: Check, row: number): SampleCell[] {
  const { formula, at, expect, source } = check;
  const isText = typeof expect === "string";
  const live = at ? `=INDEX(${formula.slice(1)}, ${at[0]}, ${at[1]})` : formula;
  const places = isText ? 0 : placesOf(check);
  const number = (more: number): Pick<SampleCell, "look" | "format"> => (isText ? { look: "wrapped" } : { look: "number", format: formatOf(places + more) });
  return [
    { address: `A${row}`, content: check.function, look: "wrapped" },
    { address: `B${row}`, content: live, look: "wrapped", isText: true },
    // An element is taken out of a block, so the cell holds an array formula of one cell.
    { address: `C${row}`, content: live, ...number(allowed(check) === 0 ? 0 : 2), ...(at ? { spill: `C${row}:C${row}` } : {}) },
    { address: `D${row}`, content: expect, ...number(0), isText },
    { address: `E${row}`, content: isText ? "to the letter" : allowed(check), look: isText ? "wrapped" : "number" },
    { address: `F${row}`, content: source, look: "wrapped" },
    {
      address: `G${row}`,
      // Joined with nothing, because LibreOffice takes no text for equal that comes out of a function which also gives numbers.
      content: isText ? `=IF(EXACT(C${row}&"",D${row}),"agrees","differs")` : `=IF(ABS(C${row}-D${row})<=E${row},"agrees","differs")`,
      look: "verdict",
    },
  ];
}

/** Decimals that show the expected number as its source prints it. */
function placesOf({ expect, prints }: Check): number {
  const written = decimals(expect as number);
  if (prints === undefined || expect === 0) return written;
  return Math.max(written, prints - 1 - Math.floor(Math.log10(Math.abs(expect as number)) + 1e-12));
}

const formatOf = (places: number): string => (places > 0 ? `0.${"0".repeat(places)}` : "0");

/** Sheets are named after their group, in the letters that every sheet takes. */
const sheetName = (group: TradeGroup): string => GROUP_TITLES[group];

function summary(groups: readonly { group: TradeGroup; checks: readonly Check[] }[]): SampleSheet {
  const last = FIRST_LINE + groups.length - 1;
  const lines = groups.flatMap(({ group, checks }, i): SampleCell[] => {
    const row = FIRST_LINE + i;
    const verdicts = `'${sheetName(group)}'!$G$${FIRST_ROW}:$G$${FIRST_ROW + checks.length - 1}`;
    return [
      { address: `A${row}`, content: GROUP_TITLES[group], look: "label" },
      { address: `B${row}`, content: `=ROWS(${verdicts})`, look: "result" },
      { address: `C${row}`, content: `=COUNTIF(${verdicts},"agrees")`, look: "result" },
      { address: `D${row}`, content: `=B${row}-C${row}`, look: "result" },
    ];
  });
  const names = groups.map((_, i) => `IF(D${FIRST_LINE + i}>0,", "&A${FIRST_LINE + i},"")`).join("&");
  const [all, agreeing] = [`SUM(B${FIRST_LINE}:B${last})`, `SUM(C${FIRST_LINE}:C${last})`];
  const master = `=IF(${agreeing}=${all},"all "&${all}&" checks agree",(${all}-${agreeing})&" of "&${all}&" differ: see "&MID(${names},3,999))`;
  return {
    name: FIRST_SHEET,
    widths: [34, 10, 10, 10, 40],
    frozen: 6,
    cells: [
      { address: "A1", content: "Self-check: does this installation calculate right?", look: "title" },
      {
        address: "A2",
        content: "Each sheet calculates its formulas anew and holds the results against values from outside the project. It proves no engine.",
        look: "note",
      },
      { address: MASTER, content: master, look: "master" },
      ...["Group", "Checks", "Agree", "Differ"].map((content, i): SampleCell => ({ address: `${"ABCD"[i]}6`, content, look: "head" })),
      ...lines,
      {
        address: `A${last + 2}`,
        content: "#NAME? in the results: the functions are not there. An old result: calculate the workbook anew (Ctrl+Alt+F9 in Excel).",
        look: "note",
      },
    ],
    flagged: { cells: `D${FIRST_LINE}:D${last}`, unless: 0 },
  };
}
