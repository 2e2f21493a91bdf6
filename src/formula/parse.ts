import { type AstExpression, type CallExpression, nodeTypes, parse, parseA1Ref, tokenize } from "@borgar/fx";
import { NAMESPACE } from "../core/define.ts";
import type { Edges } from "./template.ts";
import { formulaTemplate } from "./template.ts";
import type { WorkbookCells } from "./workbook-cells.ts";

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

/** Where the references of a tree lead in one of the formulas that share it. */
export interface Places {
  /** Which of the boxes each reference has, and the sheet that it names. */
  of: ReadonlyMap<AstExpression, { index: number; sheet: string | undefined }>;
  boxes: readonly Edges[];
}

/** A formula's tree. With `places` its references read as those of another formula, and lead there. */
interface Read {
  tree: AstExpression | undefined;
  places?: Places;
}

type Shared = Pick<Places, "of"> & { tree: AstExpression };

/** Templates that are kept; where nearly every formula has one of its own, keeping them gains nothing. */
const MOST_KEPT = 1000;

/** Larger areas are not looked at, which is said in words that name them. */
const MOST_CELLS = 2_000_000;

const known = new WeakMap<WorkbookCells, Map<string, Shared | null>>();

/** Takes a formula of a workbook apart; formulas that differ only in the cells that they name share one tree. */
export function readFormula(book: WorkbookCells, formula: string): Read {
  // What a part of a table is depends on the row, also where nothing in the formula's text does.
  const template = formula.includes("[") ? undefined : formulaTemplate(formula);
  if (!template?.areas.every(isSmall)) return { tree: parseFormula(formula) };
  const templates = known.get(book) ?? new Map<string, Shared | null>();
  known.set(book, templates);
  const shared = templates.get(template.key);
  if (shared && shared.of.size === template.areas.length) return { tree: shared.tree, places: { of: shared.of, boxes: template.areas } };
  const tree = parseFormula(formula);
  if (shared === undefined && templates.size < MOST_KEPT) templates.set(template.key, tree ? sharedBy(tree, template.areas) : null);
  return { tree };
}

const isSmall = ({ top, left, bottom, right }: Edges): boolean => (bottom - top + 1) * (right - left + 1) <= MOST_CELLS;

/** The tree as others can use it: only if its references are the very cells that the template was told by. */
function sharedBy(tree: AstExpression, boxes: readonly Edges[]): Shared | null {
  const of = new Map<AstExpression, { index: number; sheet: string | undefined }>();
  for (const node of references(tree)) {
    const { kind, value } = node as AstExpression & { kind: string; value: string };
    if (kind !== "range") continue;
    const parsed = parseA1Ref(value);
    const box = boxes[of.size];
    if (!box || !parsed || !("range" in parsed) || !isBox(parsed.range, box) || (parsed.context?.length ?? 0) > 1) return null;
    of.set(node, { index: of.size, sheet: parsed.context?.[0] });
  }
  return of.size === boxes.length ? { tree, of } : null;
}

const isBox = (range: Partial<Record<keyof Edges, number | null>>, box: Edges): boolean =>
  range.top === box.top && range.left === box.left && range.bottom === box.bottom && range.right === box.right;
