import ts from "typescript";

/** A function's name that stands in code by itself. */
export interface NameByHand {
  line: number;
  text: string;
}

/**
 * Names of functions written by hand where code would act on them: a text that is nothing but names
 * (`"TAPER"`, `"HATCH.TAPER"`, `"TAPER.readings"`, `"TAPER,SLIP"`), a key of an object, a search pattern
 * with a name in it, a sentence that counts several up. Examples and formulas name functions too and list nothing.
 */
export function namesByHand(file: string, text: string, names: ReadonlySet<string>): NameByHand[] {
  const found: NameByHand[] = [];
  // Most files name no function at all, not even in a comment.
  if (!wordsIn(text).some((word) => names.has(word))) return found;
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const look = (node: ts.Node): void => {
    const words = nameIn(node, names);
    if (words !== undefined) found.push({ line: source.getLineAndCharacterOfPosition(node.getStart()).line + 1, text: words });
    ts.forEachChild(node, look);
  };
  look(source);
  return found;
}

const wordsIn = (text: string): readonly string[] => text.match(/[A-Za-z0-9]+/g) ?? [];

/** What is written at this place, where it is a name. */
function nameIn(node: ts.Node, names: ReadonlySet<string>): string | undefined {
  if (ts.isStringLiteralLike(node) || ts.isJsxText(node)) return isNothingElse(node.text, names) || isList(node.text, names) ? node.getText() : undefined;
  if (ts.isRegularExpressionLiteral(node)) return wordsIn(node.text).some((word) => names.has(word)) ? node.text : undefined;
  if (!ts.isPropertyAssignment(node) && !ts.isMethodDeclaration(node)) return undefined;
  return ts.isIdentifier(node.name) && names.has(node.name.text) ? node.name.text : undefined;
}

const NAMED = /^(?:HATCH\.)?([A-Z]+)(?:\.\w+)?$/;

const isNothingElse = (text: string, names: ReadonlySet<string>): boolean =>
  text
    .trim()
    .split(/[\s,;|]+/)
    .every((word) => names.has(NAMED.exec(word)?.[1] ?? ""));

/** `TAPER, OUTOFROUND and the like` */
const isList = (text: string, names: ReadonlySet<string>): boolean =>
  [...text.matchAll(/\b([A-Z]+)(?:,| and| or)\s+(?=([A-Z]+)\b)/g)].some(([, one, other]) => names.has(one!) && names.has(other!));
