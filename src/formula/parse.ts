import { type AstExpression, type CallExpression, nodeTypes, parse, tokenize } from "@borgar/fx";
import { NAMESPACE } from "../core/define.ts";

export type { AstExpression, CallExpression };

/** A cell holds no longer formula; longer text is not one, and could only exhaust the parser. */
const LONGEST = 8192;

/** The formula as a tree, or `undefined` for text that is not a formula. The leading `=` may be left out. */
export function parseFormula(formula: string): AstExpression | undefined {
  if (formula.length > LONGEST) return undefined;
  try {
    return parse(tokenize(formula, { withLocation: true }));
  } catch {
    // The parser's only way to say that it cannot read the text; deep nesting ends here too.
    return undefined;
  }
}

const OURS = new RegExp(`^(?:_xldudf_)?${NAMESPACE}[._](\\w+)$`, "i");

/** `TAPER` for a call of `HATCH.TAPER`, also as a file stores it; `undefined` for a function that is not ours. */
export function ownName(node: CallExpression): string | undefined {
  return OURS.exec(node.callee.name)?.[1]?.toUpperCase();
}

/** Every call of one of our functions in the tree, the outer ones first. */
export function ownCalls(tree: AstExpression | undefined): CallExpression[] {
  return partsOf(tree).filter((node): node is CallExpression => node.type === nodeTypes.CALL && ownName(node as CallExpression) !== undefined);
}

/** Every reference in the tree, in reading order. */
export function references(tree: AstExpression | undefined): AstExpression[] {
  return partsOf(tree).filter((node) => node.type === nodeTypes.REFERENCE);
}

/** Every node of the tree, a parent before its children, in reading order. */
function partsOf(tree: AstExpression | undefined): AstExpression[] {
  const parts: AstExpression[] = [];
  const open: unknown[] = [tree];
  while (open.length > 0) {
    const node = open.pop();
    if (Array.isArray(node)) for (let i = node.length - 1; i >= 0; i--) open.push(node[i]);
    else if (typeof node === "object" && node !== null) {
      parts.push(node as AstExpression);
      const { arguments: args, body, declarations, init, elements } = node as Record<string, unknown>;
      open.push(elements, body, init, declarations, args);
    }
  }
  return parts;
}
