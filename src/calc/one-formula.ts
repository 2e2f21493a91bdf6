import { type Cell, isErrorCode, type Result } from "../core/cell.ts";
import { fromStoredFormula } from "../xlsx/formula-text.ts";
import type { WorkbookFile } from "../xlsx/model.ts";
import { type Model, type ModelData, modelOf, omissionNote, signatures, startCalculation } from "./grid-model.ts";
import { GridSheets, Untranslatable } from "./references.ts";
import { Translator } from "./translate.ts";

export type FormulaAnswer = { value: Result | boolean | (Result | boolean)[][] } | { fault: string };

/** A workbook of one empty sheet, on which a formula stands that holds its numbers itself. */
const EMPTY: WorkbookFile = {
  sheets: [{ name: "Sheet1", hidden: false, cells: [], hiddenRows: [] }],
  names: [],
  tables: [],
  from1904: false,
  storedTexts: new Map(),
};
const SHEET = "s0";
/** Larger than what a reference of a formula is let through to. */
const SIZE = { rowNumber: 2100, colNumber: 120 };
/** The grid keeps every formula that it has read; now and then it gets a fresh start. */
const FORMULAS_A_MODEL = 20_000;

let model: Model | undefined;
let worked = 0;

/** What a formula comes to, calculated by the same grid as a workbook's. The leading `=` may be left out. */
export function evaluateOne(formula: string): FormulaAnswer {
  const text = fromStoredFormula(formula.trim().replace(/^=/, ""));
  if (text.trim() === "") return { fault: "there is no formula" };
  startCalculation();
  try {
    const translator = new Translator(EMPTY, new GridSheets(EMPTY), signatures());
    const translated = translator.translate(text, { sheet: 0, row: 0, column: 0 }, true);
    const result = engine().getters.evaluateFormulaResult(SHEET, translated) as EngineResult;
    const refused = Array.isArray(result) ? undefined : translator.refusedBranches.find(({ sentence }) => sentence === result.message);
    if (refused) throw refused;
    const answer = answerOf(result);
    const beyond = omissionNote();
    return beyond && !("fault" in answer) ? { fault: `the formula cannot be worked out: ${beyond.replace(/\.$/, "")}` } : answer;
  } catch (error) {
    if (error instanceof Untranslatable) return { fault: `the formula ${error.message}` };
    return { fault: `the formula cannot be worked out: ${error instanceof Error ? error.message : error}` };
  }
}

function engine(): Model {
  if (!model || worked++ >= FORMULAS_A_MODEL) {
    model = modelOf({ version: "19.3.2", sheets: [{ id: SHEET, name: "Sheet1", ...SIZE, cells: {} }] } as unknown as ModelData).model;
    worked = 0;
  }
  return model;
}

interface Payload {
  value: Cell;
  message?: unknown;
}

/** One value, or a block column by column. */
type EngineResult = Payload | Payload[][];

function answerOf(result: EngineResult): FormulaAnswer {
  if (!Array.isArray(result)) return faultOf(result) ?? { value: plainOf(result) };
  const rows = result[0]?.length ?? 0;
  if (rows === 1 && result.length === 1) return answerOf(result[0]![0]!);
  return { value: Array.from({ length: rows }, (_, row) => result.map((column) => plainOf(column[row]!))) };
}

const OUR_SENTENCE = /^[A-Z]{3,}: /;

function faultOf({ value, message }: Payload): FormulaAnswer | undefined {
  if (typeof value !== "string" || !isErrorCode(value)) return undefined;
  const said = message ? String(message).replace(/\.$/, "") : "";
  // A fault of ours is a sentence that names its function; the grid's own remarks need the code beside them.
  return { fault: OUR_SENTENCE.test(said) ? said : `the formula gives ${value}${said ? `: ${said}` : ""}` };
}

const plainOf = ({ value }: Payload): number | string | boolean => (typeof value === "object" || value === undefined ? "" : value);
