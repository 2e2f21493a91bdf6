import { broadcast } from "../../src/core/broadcast.ts";
import type { Argument } from "../../src/core/cell.ts";
import type { Spec } from "../../src/core/define.ts";
import { Fault } from "../../src/core/fault.ts";
import { evaluateNode } from "../../src/formula/evaluate.ts";
import { type AstExpression, parseFormula } from "../../src/formula/parse.ts";
import { NO_CELLS } from "../../src/formula/workbook-cells.ts";

/** The arguments of an example's formula, as a sheet would hand them over. */
export function argumentsOf(formula: string): Argument[] {
  const tree = parseFormula(formula) as unknown as { arguments: (AstExpression | null)[] };
  return tree.arguments.map((node) => (node ? (evaluateNode(node, { book: NO_CELLS, sheet: "" }) as Argument) : undefined));
}

/** True for an input that is taken cell by cell and whose value can be any number within its bounds. */
export const isMeasured = (spec: Spec, index: number): boolean => {
  const { param } = spec.inputs[index]!;
  return param.broadcastKind === "element" && param.takesAnyNumber;
};

/** The first example of a function with each input that is taken cell by cell brought down to one cell. */
export function scalarExample(spec: Spec): Argument[] {
  for (const { formula } of spec.examples) {
    const args = argumentsOf(formula).map((given, i) => (Array.isArray(given) && spec.inputs[i]!.param.broadcastKind === "element" ? given[0]![0] : given));
    const outcome = broadcast(spec, args);
    if (!(outcome instanceof Fault) && (spec.returns.kind !== "value" || !Array.isArray(outcome))) return args;
  }
  throw new Error(`${spec.name} has no example that gives one value`);
}
