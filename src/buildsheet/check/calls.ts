import type { Spec } from "../../core/define.ts";
import { specByName } from "../../functions/index.ts";
import type { CellAddress } from "../../sheet/address.ts";
import type { Book } from "../formula/book.ts";
import type { FormulaContext } from "../formula/evaluate.ts";
import { type AstExpression, type CallExpression, ownCalls, ownName, parseFormula } from "../formula/parse.ts";

/** One call of a function of ours, where it stands. */
export interface OwnCall {
  at: CellAddress;
  formula: string;
  spec: Spec;
  args: readonly (AstExpression | null)[];
  /** The call is the whole formula, so its results stand in the formula's cells. */
  isWhole: boolean;
  context: FormulaContext;
}

const MENTIONS_US = /HATCH/i;

/** Every call of our functions in the workbook, sheet by sheet in reading order. */
export function* callsIn(book: Book): Generator<OwnCall> {
  for (const sheet of book.sheets) {
    for (const [r, line] of sheet.formulas.entries()) {
      for (const [c, formula] of line.entries()) {
        if (formula !== null) yield* callsOf(book, { sheet: sheet.name, row: sheet.row + r, column: sheet.column + c }, formula);
      }
    }
  }
}

/** The calls of our functions in one formula, the outer ones first. */
export function callsOf(book: Book, at: CellAddress, formula: string): OwnCall[] {
  if (!MENTIONS_US.test(formula)) return [];
  const tree = parseFormula(formula);
  return ownCalls(tree).flatMap((node: CallExpression) => {
    const spec = specByName.get(ownName(node)!);
    if (!spec) return [];
    return [{ at, formula, spec, args: node.arguments as (AstExpression | null)[], isWhole: node === tree, context: { book, sheet: at.sheet, cell: at } }];
  });
}
