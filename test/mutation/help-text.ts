/** A place in the syntax tree with what stands around it, as far as the rule looks at it. */
export interface SyntaxPlace {
  node: { type: string; [field: string]: unknown };
  /** The field of the parent that it stands in, or its number in the parent's list. */
  key?: string | number | null;
  listKey?: string | null | undefined;
  parentPath: SyntaxPlace | null;
}

/** Fields of a declared function that only explain it. */
export const EXPLAINING = new Set(["summary", "definition", "source", "notes"]);

/** Which argument explains, for everything that declares an input or a result. */
export const HELP_ARGUMENT: Readonly<Record<string, number>> = {
  ...Object.fromEntries(["length", "volume", "area", "ratio", "pressure", "force", "mass", "angle", "temperature", "speed", "number"].map((name) => [name, 0])),
  ...Object.fromEntries(["count", "text", "truth", "choice", "readings", "labels", "value", "table"].map((name) => [name, 0])),
  ...Object.fromEntries(["list", "grid", "cells", "row", "Param"].map((name) => [name, 1])),
};

/** How constants end that hold such words: notes that several functions share, headings of the function list. */
export const HELP_CONSTANT = ["NOTE", "NOTES", "TITLES"];
const IS_HELP_CONSTANT = new RegExp(`_(?:${HELP_CONSTANT.join("|")})$`);

const nameOf = (node: unknown): string => {
  const { name, value } = (node ?? {}) as { name?: unknown; value?: unknown };
  return String(name ?? value ?? "");
};

/**
 * Why a place is left as it is when the sources are mutated; nothing where it is not. Left are words that
 * explain a function to a person, for no test can say that one wording of them is the right one. Names,
 * groups, bounds, defaults, choices, column labels, examples and the sentences of faults are no such words.
 */
export function helpText(place: SyntaxPlace): string | undefined {
  const { node, parentPath: parent } = place;
  if (!parent) return undefined;
  if (parent.node.type === "ObjectProperty" && place.key === "value" && EXPLAINING.has(nameOf(parent.node.key)) && isDeclaration(parent.parentPath)) {
    return "words that explain a function";
  }
  const called = ["CallExpression", "NewExpression"].includes(parent.node.type) && place.listKey === "arguments" ? nameOf(parent.node.callee) : "";
  if (["StringLiteral", "TemplateLiteral"].includes(node.type) && HELP_ARGUMENT[called] === place.key) return "words that explain an input or a result";
  if (parent.node.type === "AssignmentPattern" && nameOf(parent.node.left) === "help") return "words that explain an input or a result";
  return parent.node.type === "VariableDeclarator" && IS_HELP_CONSTANT.test(nameOf(parent.node.id)) ? "words for the list of functions" : undefined;
}

/** True for the object that `define` is called with. */
function isDeclaration(object: SyntaxPlace | null): boolean {
  return object?.parentPath?.node.type === "CallExpression" && nameOf(object.parentPath.node.callee) === "define";
}
