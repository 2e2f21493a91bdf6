import { nodeTypes, parseA1Ref } from "@borgar/fx";
import { broadcast } from "../core/broadcast.ts";
import { type Argument, type Block, type Cell, type CellError, isCellError } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { sentence } from "../core/sentences.ts";
import { specByName } from "../functions/index.ts";
import { type CellArea, placeName } from "../workbook/address.ts";
import { CannotTell, type FormulaContext, inTable, type NamedPart, NOWHERE, named } from "./names.ts";
import { type Binary, binary, type Unary, unary } from "./operators.ts";
import { type AstExpression, type CallExpression, ownName, parseFormula, references } from "./parse.ts";
import type { Edges } from "./template.ts";
import type { WorkbookCells } from "./workbook-cells.ts";

export { CannotTell, type FormulaContext };

type Evaluated = Cell | Block | CannotTell;

/** Levels of nesting; a formula typed by a person has few, and more could only exhaust the stack. */
const DEEPEST = 100;
/** Cells in one reference. A larger one is not looked at. */
const LARGEST = 2_000_000;

/**
 * What a formula comes to: references, literals, a sheet's operators, IF and our own functions. Cells
 * that it refers to are taken as they stand in the snapshot. Any other function gives `CannotTell`.
 */
export function evaluateFormula(formula: string, context: FormulaContext = NOWHERE): Evaluated {
  const tree = parseFormula(formula);
  return tree ? evaluateNode(tree, context) : new CannotTell("the formula cannot be read");
}

export function evaluateNode(node: AstExpression, context: FormulaContext, depth = 0): Evaluated {
  if (depth > DEEPEST) return new CannotTell("the formula is nested too deeply");
  switch (node.type) {
    case nodeTypes.LITERAL:
      return (node as { value: Cell }).value === Number.POSITIVE_INFINITY ? { error: "#NUM!" } : (node as { value: Cell }).value;
    case nodeTypes.ERROR:
      return { error: (node as { value: string }).value };
    case nodeTypes.ARRAY:
      return arrayOf(node as { elements: AstExpression[][] }, context, depth);
    case nodeTypes.REFERENCE:
      return referenceOf(node as Reference, context, depth);
    case nodeTypes.UNARY:
      return unaryOf(node as Operation, context, depth);
    case nodeTypes.BINARY:
      return binaryOf(node as Operation, context, depth);
    case nodeTypes.CALL:
      return callOf(node as CallExpression, context, depth);
    default:
      return new CannotTell(`${node.type} is not looked into`);
  }
}

interface Operation {
  type: string;
  operator: string;
  arguments: AstExpression[];
}

function arrayOf({ elements }: { elements: AstExpression[][] }, context: FormulaContext, depth: number): Evaluated {
  const block: Block = [];
  for (const line of elements) {
    const row: Cell[] = [];
    for (const element of line) {
      const cell = evaluateNode(element, context, depth + 1);
      if (cell instanceof CannotTell || Array.isArray(cell)) return new CannotTell("the array holds more than literals");
      row.push(cell);
    }
    block.push(row);
  }
  return block.every((row) => row.length === block[0]!.length) ? block : new CannotTell("the rows of the array differ in length");
}

function unaryOf(node: Operation, context: FormulaContext, depth: number): Evaluated {
  if (node.operator === "#") return content(referencedArea(node as AstExpression, context, depth), context);
  const operand = evaluateNode(node.arguments[0]!, context, depth + 1);
  if (operand instanceof CannotTell) return operand;
  if (node.operator === "@") return Array.isArray(operand) ? content(ownCell(referencedArea(node.arguments[0]!, context, depth), context), context) : operand;
  return unary(node.operator as Unary, operand);
}

const COMBINING = new Set(["+", "-", "*", "/", "^", "&", "=", "<>", "<", ">", "<=", ">="]);

function binaryOf(node: Operation, context: FormulaContext, depth: number): Evaluated {
  if (!COMBINING.has(node.operator)) return new CannotTell("references combined into another reference are not followed");
  const left = evaluateNode(node.arguments[0]!, context, depth + 1);
  if (left instanceof CannotTell) return left;
  const right = evaluateNode(node.arguments[1]!, context, depth + 1);
  return right instanceof CannotTell ? right : binary(node.operator as Binary, left, right);
}

function callOf(node: CallExpression, context: FormulaContext, depth: number): Evaluated {
  if (isIf(node)) return branchOf(node, context, depth);
  const spec = specByName.get(ownName(node) ?? "");
  if (!spec) return new CannotTell(`${node.callee.name ?? "what is called"} is not looked into`);
  const args: Argument[] = [];
  const written = node.arguments as (AstExpression | null)[];
  // What is left out at the end, as in F(5,,), is not given at all; left out in between it is a blank.
  for (const [i, given] of written.slice(0, written.findLastIndex(Boolean) + 1).entries()) {
    const argument = given ? evaluateNode(given, context, depth + 1) : undefined;
    if (argument instanceof CannotTell) return argument;
    args.push(isOpen(given) && spec.inputs[i]?.param.broadcastKind === "bore" ? goingOn(argument) : argument);
  }
  const outcome = broadcast(spec, args);
  return outcome instanceof Fault ? { error: "#VALUE!", message: sentence(outcome) } : outcome;
}

const isOpen = (node: AstExpression | null | undefined): boolean => node?.type === nodeTypes.REFERENCE && (node as Reference).kind === "beam";

/** A whole column goes on behind what stands in it: as one bore it is unfinished, in every host. */
const goingOn = (argument: Argument): Argument => {
  const block = Array.isArray(argument) ? argument : [[argument]];
  return [...block, block[0]!.map(() => null)];
};

/**
 * The one function of a sheet that is followed: it hands a blank cell over as a blank where the host would make a 0 of it. What is called
 * may also be an expression, as in `LAMBDA(…)(…)`, and has no name then.
 */
const isIf = (node: AstExpression): boolean => node.type === nodeTypes.CALL && (node as CallExpression).callee.name?.toUpperCase() === "IF";

const branchesOf = (node: CallExpression) => node.arguments as (AstExpression | null | undefined)[];

function branchOf(node: CallExpression, context: FormulaContext, depth: number): Evaluated {
  const [test, then, otherwise, ...more] = branchesOf(node);
  if (!test || then === undefined || more.length > 0) return new CannotTell("IF is not given what it needs");
  const holds = evaluateNode(test, context, depth + 1);
  if (holds instanceof CannotTell || isCellError(holds)) return holds;
  if (Array.isArray(holds)) return new CannotTell("IF over a range is not looked into");
  if (typeof holds === "string") return { error: "#VALUE!" };
  const branch = holds ? then : otherwise;
  if (branch === undefined) return false;
  return branch ? evaluateNode(branch, context, depth + 1) : 0;
}

interface Reference {
  type: string;
  value: string;
  kind: string;
}

const isPlainRange = ({ kind }: Reference): boolean => kind === "range" || kind === "beam";

/** A name may stand for a number or a formula as well as for cells. */
function referenceOf(node: Reference, context: FormulaContext, depth: number): Evaluated {
  if (node.kind === "name") {
    const part = named(node.value, context);
    if ("tree" in part) return namedValue(part, depth);
  }
  return content(referencedArea(node as AstExpression, context, depth), context);
}

const namedValues = new WeakMap<WorkbookCells, Map<string, Evaluated>>();

/** Worked out once: names made of names would otherwise grow without end, and one made of itself has no value. */
function namedValue({ key, tree, context }: NamedPart, depth: number): Evaluated {
  const known = namedValues.get(context.book) ?? new Map<string, Evaluated>();
  namedValues.set(context.book, known);
  if (known.has(key)) return known.get(key);
  known.set(key, new CannotTell("a name stands for itself"));
  const value = evaluateNode(tree, context, depth + 1);
  known.set(key, value);
  return value;
}

/** The cell of one column in the formula's own row, or of one row in its own column, which is what `@` takes of a range. */
function ownCell(area: Spill, { cell }: FormulaContext): Spill {
  if (area === undefined || !("rows" in area)) return area;
  const { row, column, rows, columns } = area;
  if (cell && columns === 1 && cell.row >= row && cell.row < row + rows) return { ...area, row: cell.row, rows: 1 };
  if (cell && rows === 1 && cell.column >= column && cell.column < column + columns) return { ...area, column: cell.column, columns: 1 };
  return new CannotTell("@ before a range depends on where the formula stands");
}

function content(area: CellArea | CellError | CannotTell | undefined, { book }: FormulaContext): Evaluated {
  if (area === undefined) return new CannotTell("a reference cannot be followed");
  if (!("rows" in area)) return area;
  return area.rows === 1 && area.columns === 1 ? book.value(area) : book.block(area);
}

/** The cells that a part of a formula refers to; `undefined` when it is not a reference. */
export function referencedArea(node: AstExpression, context: FormulaContext, depth = 0): Spill {
  if (node.type === nodeTypes.UNARY && (node as Operation).operator === "#") return spillOf((node as Operation).arguments[0]!, context, depth);
  if (node.type !== nodeTypes.REFERENCE) return isIf(node) ? guardedArea(node as CallExpression, context, depth) : undefined;
  const { places } = context;
  const place = places?.of.get(node);
  if (place) return areaOn(place.sheet, places!.boxes[place.index]!, context);
  const { value: text, kind } = node as Reference;
  if (kind === "name") return namedArea(text, context, depth);
  if (kind === "table") return inTable(text, context);
  if (!isPlainRange(node as Reference)) return new CannotTell(`the reference ${text} is not followed`);
  const reference = text.startsWith("[") || text.startsWith("'[") ? undefined : parseA1Ref(text);
  if (!reference || !("range" in reference)) return new CannotTell(`the reference ${text} leads out of the workbook`);
  const sheet = reference.context?.[0] ?? context.sheet;
  const page = context.book.sheet(sheet);
  if (!page && (reference.context?.length ?? 0) > 0) return { error: "#REF!" };
  const { top, left, bottom, right } = reference.range;
  // An open end, as in C:C, stops where the sheet's content does.
  const lastRow = bottom ?? (page ? page.row + page.values.length - 1 : 0);
  const lastColumn = right ?? (page ? page.column + (page.values[0]?.length ?? 0) - 1 : 0);
  const area = { sheet: page?.name ?? sheet, row: top ?? 0, column: left ?? 0 };
  const rows = Math.max(1, lastRow - area.row + 1);
  const columns = Math.max(1, lastColumn - area.column + 1);
  return rows * columns > LARGEST ? new CannotTell(`the reference ${text} is too large`) : { ...area, rows, columns };
}

/** `IF(C4="","",C4)` is C4, handed over as a blank where it is one: the condition asks nothing but that cell. */
function guardedArea(node: CallExpression, context: FormulaContext, depth: number): Spill {
  const [test, then, otherwise] = branchesOf(node);
  const isNothing = (branch: AstExpression | null | undefined) => branch?.type === nodeTypes.LITERAL && (branch as { value: unknown }).value === "";
  const kept = isNothing(then) ? otherwise : isNothing(otherwise) ? then : undefined;
  if (!test || kept?.type !== nodeTypes.REFERENCE || depth > DEEPEST) return undefined;
  const area = referencedArea(kept, context, depth + 1);
  if (area === undefined || !("rows" in area)) return area;
  const asked = references(test).map((reference) => referencedArea(reference, context, depth + 1));
  return asked.length > 0 && asked.every((one) => one !== undefined && "rows" in one && isSame(one, area)) ? area : undefined;
}

const isSame = (a: CellArea, b: CellArea): boolean => placeName(a) === placeName(b) && a.rows === b.rows && a.columns === b.columns;

/** An area known from the formula's shape, on the sheet that the reference names. */
function areaOn(named: string | undefined, { top, left, bottom, right }: Edges, { book, sheet: own }: FormulaContext): Spill {
  const sheet = named ?? own;
  const page = book.sheet(sheet);
  if (!page && named !== undefined) return { error: "#REF!" };
  return { sheet: page?.name ?? sheet, row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

/** Where a name stands for cells, those; one that stands for something else refers to nothing. */
function namedArea(text: string, context: FormulaContext, depth: number): Spill {
  if (depth > DEEPEST) return new CannotTell("the names lead to names without end");
  const part = named(text, context);
  return "tree" in part ? referencedArea(part.tree, part.context, depth + 1) : part;
}

type Spill = CellArea | CellError | CannotTell | undefined;
const spills = new WeakMap<WorkbookCells, Map<string, Spill>>();

/** `D4#`: the block that the formula in D4 comes to, from D4 on. Worked out once; one that needs itself has no end. */
function spillOf(node: AstExpression, context: FormulaContext, depth: number): Spill {
  const anchor = referencedArea(node, context, depth);
  if (anchor === undefined || !("rows" in anchor)) return anchor;
  const known = spills.get(context.book) ?? new Map<string, Spill>();
  spills.set(context.book, known);
  const place = placeName(anchor);
  if (known.has(place)) return known.get(place);
  known.set(place, new CannotTell("a spilled block depends on itself"));
  const spill = spillFrom(anchor, context, depth);
  known.set(place, spill);
  return spill;
}

function spillFrom(anchor: CellArea, context: FormulaContext, depth: number): Spill {
  const formula = context.book.formula(anchor);
  const tree = formula ? parseFormula(formula) : undefined;
  if (!tree) return { error: "#REF!" };
  const spilled = evaluateNode(tree, { book: context.book, sheet: anchor.sheet, cell: anchor }, depth + 1);
  if (spilled instanceof CannotTell) return spilled;
  return Array.isArray(spilled) ? { ...anchor, rows: spilled.length, columns: spilled[0]?.length ?? 1 } : anchor;
}
