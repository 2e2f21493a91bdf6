import type { Spec } from "../core/define.ts";
import { specByName } from "../functions/index.ts";
import type { CellAddress } from "../workbook/address.ts";
import type { FormulaContext } from "./evaluate.ts";
import { type AstExpression, ownCalls, ownName, parseFormula, readFormula, references } from "./parse.ts";
import type { WorkbookCells } from "./workbook-cells.ts";

/** A call as it stands in a tree, which several formulas can share. */
interface Called {
  spec: Spec;
  args: readonly (AstExpression | null)[];
  /** Whether there is a reference in each of the arguments. */
  refers: readonly boolean[];
  /** The call is the whole formula, so its results stand in the formula's cells. */
  isWhole: boolean;
  /** Which of the calls of ours it is, from 0. */
  place: number;
}

/** One call of a function of ours, where it stands. */
export interface OwnCall extends Called {
  at: CellAddress;
  formula: string;
  context: FormulaContext;
}

export const MENTIONS_US = /HATCH/i;

/** The calls of our functions in one formula, the outer ones first. */
export function callsOf(book: WorkbookCells, at: CellAddress, formula: string): OwnCall[] {
  if (!MENTIONS_US.test(formula)) return [];
  const { tree, places } = readFormula(book, formula);
  const context = { book, sheet: at.sheet, cell: at, places };
  return calledIn(tree).map(({ spec, args, refers, isWhole, place }) => ({ spec, args, refers, isWhole, place, at, formula, context }));
}

const known = new WeakMap<AstExpression, readonly Called[]>();

function calledIn(tree: AstExpression | undefined): readonly Called[] {
  if (!tree) return [];
  const before = known.get(tree);
  if (before) return before;
  const called = ownCalls(tree).flatMap((node, place) => {
    const spec = specByName.get(ownName(node)!);
    const args = node.arguments as (AstExpression | null)[];
    return spec ? [{ spec, args, refers: args.map((arg) => arg !== null && references(arg).length > 0), isWhole: node === tree, place }] : [];
  });
  known.set(tree, called);
  return called;
}

/** An argument as it is written, in one spelling. */
export function wordsOf({ args, formula, context, place }: OwnCall, index: number): string {
  // Where it is written in this formula, a tree of another one does not say.
  const own = context.places ? (ownCalls(parseFormula(formula))[place]!.arguments as typeof args) : args;
  const [from, to] = (own[index] as { loc?: number[] } | null | undefined)?.loc ?? [0, 0];
  return formula.slice(from, to).replace(/[\s$]/g, "").toUpperCase();
}
