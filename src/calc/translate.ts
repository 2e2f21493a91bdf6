import { type AstExpression, type CallExpression, nodeTypes, parse, tokenize } from "@borgar/fx/xlsx";
import { cellName, MOST_COLUMNS, MOST_ROWS } from "../workbook/address.ts";
import { shiftFormula } from "../xlsx/formula-text.ts";
import type { WorkbookFile } from "../xlsx/model.ts";
import { errorText, gridName, quoted, type Signatures, worksOverArrays } from "./grid-terms.ts";
import type { GridSheets } from "./references.ts";
import {
  areaAround,
  areaOfReference,
  areaOfTable,
  commonArea,
  intersectWith,
  isOneCell,
  type SheetRectangle,
  type Site,
  sheetOf,
  Untranslatable,
} from "./references.ts";

/** Longer than any formula of a sheet, deeper than any that a person wrote: not taken apart. */
const LONGEST = 8192;
const DEEPEST = 150;
/** Parts of one formula with its names written out: names that name names can grow without end. */
const MOST_PARTS = 20_000;

/** How a part of a formula is calculated. */
interface Mode {
  /** Ranges are worked through cell by cell. */
  array: boolean;
  /** One value is wanted here: a range stands for one of its cells. */
  one: boolean;
  /** Where the cells stand is wanted, not what is in them. */
  place?: boolean;
  /** What this part comes to is what its cell shows: nothing around it can turn an error into something else. */
  shown?: boolean;
}

/** What a name of LET stands for, and the names that could be used where it was written. */
interface Meaning {
  node: AstExpression;
  scope: Scope;
}
type Scope = ReadonlyMap<string, Meaning>;
type Declarations = AstExpression & { declarations: { id: { name: string }; init: AstExpression }[]; body: AstExpression };

type Operation = AstExpression & { operator: string; arguments: AstExpression[] };
type Reference = AstExpression & { value: string; kind: string };

const IS_ERROR = /#REF!/;
/** Their first input is a cell whose place alone they ask for. */
const FROM_PLACES = new Set(["OFFSET", "ROW", "COLUMN"]);
/** What comes out otherwise each time it is asked: written out, a name of LET would not stand for one value. */
const RESTLESS = /^RAND(?:BETWEEN|ARRAY)?$/i;
/** Ranges and criteria in turn, in which blanks at the end of the sheet may count. */
const COUNTED_BY_CRITERIA = new Set(["COUNTIF", "COUNTIFS"]);
const BY_CRITERIA = new Set([...COUNTED_BY_CRITERIA, "SUMIF", "SUMIFS", "AVERAGEIF", "AVERAGEIFS", "MAXIFS", "MINIFS"]);
/** The range to work on starts where it says, and is as large as that of the criterion. */
const RESIZING = new Set(["SUMIF", "AVERAGEIF"]);
/** They go to cells that they are told in text or numbers. */
const ROVING = new Set(["INDIRECT", "OFFSET"]);
/** They come to a block, unless they are asked for the place of a single cell. */
const GIVING_BLOCKS = new Set(["ROW", "COLUMN", "SEQUENCE", "FILTER", "SORT", "SORTBY", "UNIQUE", "TRANSPOSE"]);
/** What they come to can be a range. */
const GIVING_RANGES = new Set(["INDEX", "OFFSET", "INDIRECT"]);
const PLACES = new Set(["ROW", "ROWS", "COLUMN", "COLUMNS"]);
const OF_PLACES = new Set(["ROWS", "COLUMNS", "COUNTBLANK", "ROW", "COLUMN"]);

/**
 * Formulas as other sheets understand them, written so that the grid comes to the same value:
 * names and tables become ranges, a minus sign binds before a power, a range where one value is
 * wanted stands for one cell, quotes in text become CHAR(34). What cannot be said in the grid's
 * terms throws `Untranslatable`; nothing is left to come out differently. In a branch of IF it is an
 * error of that branch alone, which a sheet does not look at when it takes the other one.
 */
export class Translator {
  /** What could not be said in the branches of the formula that was translated last. */
  refusedBranches: Untranslatable[] = [];
  #parts = 0;
  #scope: Scope = new Map();

  constructor(
    private readonly book: WorkbookFile,
    private readonly grids: GridSheets,
    private readonly signatures: Signatures,
  ) {}

  /** The grid's formula, with its `=`. */
  translate(formula: string, site: Site, isArray: boolean): string {
    this.#parts = 0;
    this.#scope = new Map();
    this.refusedBranches = [];
    return `=${this.#emit(treeOf(formula), site, { array: isArray, one: !isArray, shown: true }, 0)}`;
  }

  #branch(node: AstExpression | null, site: Site, mode: Mode, depth: number): string {
    try {
      return this.#emit(node, site, { ...mode, shown: true }, depth);
    } catch (reason) {
      if (!(reason instanceof Untranslatable)) throw reason;
      this.refusedBranches.push(reason);
      return errorText(reason.code, reason.sentence);
    }
  }

  #emit(node: AstExpression | null, site: Site, mode: Mode, depth: number): string {
    if (!node) return "";
    if (++this.#parts > MOST_PARTS) throw new Untranslatable("#NAME?", "grows too long when its names are written out");
    if (depth > DEEPEST) throw new Untranslatable("#NAME?", "is nested too deeply to be read");
    switch (node.type) {
      case nodeTypes.LITERAL:
        return literal(node as { value: unknown; raw: string });
      case nodeTypes.ERROR:
        return errorText(node.value as string);
      case nodeTypes.ARRAY:
        return `{${(node.elements as AstExpression[][]).map((row) => row.map((cell) => this.#emit(cell, site, mode, depth + 1)).join(",")).join(";")}}`;
      case nodeTypes.REFERENCE:
        return this.#reference(node as Reference, site, mode, depth);
      case nodeTypes.UNARY:
        return this.#unary(node as Operation, site, mode, depth);
      case nodeTypes.BINARY:
        return this.#binary(node as Operation, site, mode, depth);
      case nodeTypes.CALL:
        return this.#call(node as CallExpression, site, mode, depth);
      case nodeTypes.LET:
        return this.#let(node as Declarations, site, mode, depth);
      default:
        throw new Untranslatable("#NAME?", "uses LAMBDA, which is not calculated here");
    }
  }

  /** Each name is written out where it is used. */
  #let({ declarations, body }: Declarations, site: Site, mode: Mode, depth: number): string {
    const before = this.#scope;
    for (const { id, init } of declarations) {
      if (holdsCall(init, RESTLESS)) throw new Untranslatable("#NAME?", "gives a random value a name in LET, which is not calculated here");
      this.#scope = new Map(this.#scope).set(id.name.toLowerCase(), { node: init, scope: this.#scope });
    }
    try {
      return this.#emit(body, site, mode, depth + 1);
    } finally {
      this.#scope = before;
    }
  }

  #reference(node: Reference, site: Site, mode: Mode, depth: number): string {
    const meaning = node.kind === "name" ? this.#scope.get(node.value.toLowerCase()) : undefined;
    if (meaning) {
      const before = this.#scope;
      this.#scope = meaning.scope;
      try {
        return `(${this.#emit(meaning.node, site, mode, depth + 1)})`;
      } finally {
        this.#scope = before;
      }
    }
    if (node.kind === "name") return this.#name(node.value, site, mode, depth);
    return this.#area(this.#areaOf(node, site)!, site, mode);
  }

  #area(area: SheetRectangle, site: Site, { array, one, place = false }: Mode): string {
    if (array || !one || isOneCell(area)) return this.grids.name(area, site.sheet, place);
    const cell = intersectWith(area, site);
    return cell
      ? this.grids.name(cell, site.sheet)
      : errorText("#VALUE!", "A range stands where one value is wanted, and no cell of it is in this row or column.");
  }

  /** A defined name stands for its formula, whose relative references count from A1. */
  #name(text: string, site: Site, mode: Mode, depth: number): string {
    const mark = text.lastIndexOf("!");
    const label = text.slice(mark + 1).toLowerCase();
    const scope = mark < 0 ? site.sheet : this.#sheetNamed(text.slice(0, mark), site);
    const fitting = this.book.names.filter(({ name }) => name.toLowerCase() === label);
    const found = fitting.find(({ sheet }) => sheet === scope) ?? fitting.find(({ sheet }) => sheet === undefined);
    if (found) {
      const scope = this.#scope;
      this.#scope = new Map();
      try {
        return `(${this.#emit(treeOf(shiftFormula(found.formula, "A1", cellName(site))), site, mode, depth + 1)})`;
      } finally {
        this.#scope = scope;
      }
    }
    if (this.book.tables.some(({ name }) => name.toLowerCase() === label)) return this.#area(areaOfTable(`${text}[]`, site, this.book), site, mode);
    throw new Untranslatable("#NAME?", `uses a name that the workbook does not have (${text})`);
  }

  #sheetNamed(prefix: string, site: Site): number {
    const bare = prefix.startsWith("'") ? prefix.slice(1, -1).replaceAll("''", "'") : prefix;
    const [, workbook, name] = /^(?:\[([^\]]*)\])?(.*)$/.exec(bare) ?? [];
    return sheetOf(workbook, name, site, this.book);
  }

  /** A reference, or two joined by the operators that work on references, as one area. */
  #areaOf(node: AstExpression | null, site: Site): SheetRectangle | undefined {
    if (node?.type === nodeTypes.REFERENCE) {
      const { value, kind } = node as Reference;
      const meaning = kind === "name" ? this.#scope.get(value.toLowerCase()) : undefined;
      if (meaning?.node.type === nodeTypes.REFERENCE && (meaning.node as Reference).kind !== "name") return this.#areaOf(meaning.node, site);
      if (kind === "table") return areaOfTable(value, site, this.book);
      return kind === "name" ? undefined : areaOfReference(value, site, this.book);
    }
    if (node?.type !== nodeTypes.BINARY) return undefined;
    const { operator, arguments: sides } = node as Operation;
    if (operator !== ":" && operator !== " ") return undefined;
    const [a, b] = sides.map((side) => this.#areaOf(side, site));
    if (!a || !b) return undefined;
    return operator === ":" ? areaAround(a, b) : commonArea(a, b);
  }

  #unary(node: Operation, site: Site, mode: Mode, depth: number): string {
    const [operand] = node.arguments;
    if (node.operator === "#") return `${this.#emit(operand!, site, { array: true, one: false }, depth + 1)}#`;
    if (node.operator === "@") {
      const one = this.#emit(operand!, site, { array: false, one: true }, depth + 1);
      return operand!.type === nodeTypes.CALL ? `${FILL}(${one},1,1)` : one;
    }
    const inner = this.#emit(operand!, site, { ...mode, one: true, shown: false }, depth + 1);
    return node.operator === "%" ? `(${inner}%)` : `(${node.operator}${inner})`;
  }

  #binary(node: Operation, site: Site, mode: Mode, depth: number): string {
    const { operator, arguments: sides } = node;
    if (operator === ":" || operator === " ") {
      const area = this.#areaOf(node, site);
      if (area) return this.#area(area, site, mode);
      throw new Untranslatable("#REF!", "builds a range in a way that is not calculated here");
    }
    if (operator === ",") throw new Untranslatable("#REF!", "joins ranges with a comma in brackets, which is not calculated here");
    const [left, right] = sides.map((side) => this.#emit(side, site, { ...mode, one: true, shown: false }, depth + 1));
    return `(${left}${operator}${right})`;
  }

  #call(node: CallExpression, site: Site, mode: Mode, depth: number): string {
    // A call of what a part in brackets comes to has no name.
    if (node.callee.name === undefined) throw new Untranslatable("#VALUE!", "calls what is no function");
    const name = gridName(node.callee.name.toUpperCase());
    const args = node.arguments as (AstExpression | null)[];
    if (!this.signatures.has(name)) throw new Untranslatable("#NAME?", `uses the function ${name}, which is not known here`);
    const place = this.#place(name, args, site, mode, depth);
    if (place !== undefined) return place;
    const size = this.#size(name, args, site);
    if (size !== undefined) return size;
    if (mode.array && ROVING.has(name) && args.some((arg, index) => !(index === 0 && FROM_PLACES.has(name)) && this.#mayBeMany(arg, site)))
      throw new Untranslatable("#VALUE!", `refers to several ranges at once (${name}), which is not calculated here`);
    const resized = RESIZING.has(name) ? this.#resized(args, site) : undefined;
    const over = worksOverArrays(name);
    const parts = args.map((arg, index) => {
      if (index === 2 && resized) return this.grids.name(resized, site.sheet);
      const array = mode.array || over;
      const one = !array && !this.signatures.takesRange(name, index);
      if (name === "IF" && mode.shown && index > 0) return this.#branch(arg, site, { array, one }, depth + 1);
      return this.#emit(arg, site, { array, one, place: index === 0 && FROM_PLACES.has(name) }, depth + 1);
    });
    // Without the third argument the grid gives 0 where other sheets give FALSE.
    if (name === "IF" && parts.length === 2) parts.push("FALSE");
    const call = this.#one(name, `${name}(${parts.join(",")})`, mode);
    return BY_CRITERIA.has(name) ? this.#withBlanks(name, call, args, parts, site) : call;
  }

  /** Whether a part of an array formula comes to more than one value, as far as its text tells. */
  #mayBeMany(node: AstExpression | null, site: Site): boolean {
    if (!node) return false;
    if (node.type === nodeTypes.ARRAY) return true;
    const area = this.#areaOf(node, site);
    if (area) return !isOneCell(area);
    const { arguments: args } = node as Partial<Operation>;
    if (node.type !== nodeTypes.CALL) return args?.some((side) => this.#mayBeMany(side, site)) ?? false;
    const name = gridName((node as CallExpression).callee.name?.toUpperCase() ?? "");
    if (GIVING_BLOCKS.has(name)) {
      const of = this.#areaOf(args![0] ?? null, site);
      return args!.length > 0 && !(of && isOneCell(of));
    }
    return args!.some((arg, index) => !this.signatures.takesRange(name, index) && this.#mayBeMany(arg, site));
  }

  /** Where one value is wanted, a range that a function gives back would stand for the cell of it beside the formula, which is not told here. */
  #one(name: string, call: string, { array, one, place }: Mode): string {
    return GIVING_RANGES.has(name) && one && !array && !place ? `${ONE}(${call})` : call;
  }

  /** `ROW(INDIRECT(…))`: where the cells stand, which rests on nothing in them. */
  #place(name: string, [of, ...more]: (AstExpression | null)[], site: Site, mode: Mode, depth: number): string | undefined {
    if (!PLACES.has(name) || more.length > 0 || of?.type !== nodeTypes.CALL) return undefined;
    const { callee, arguments: given } = of as CallExpression;
    if (callee.name?.toUpperCase() !== "INDIRECT" || given.length !== 1) return undefined;
    return `SHEET.PLACE("${name}",${this.#emit(given[0]!, site, { array: mode.array, one: true }, depth + 1)})`;
  }

  /** The range that SUMIF adds up, as large as that of its criterion, which it need not say. */
  #resized([of = null, , summed = null]: (AstExpression | null)[], site: Site): SheetRectangle | undefined {
    const [range, start] = [this.#areaOf(of, site), this.#areaOf(summed, site)];
    if (!range || !start) return undefined;
    const [rows, columns] = [range.bottom - range.top, range.right - range.left];
    if (start.bottom - start.top === rows && start.right - start.left === columns) return undefined;
    const { sheet, top, left } = start;
    return { sheet, top, left, bottom: Math.min(top + rows, MOST_ROWS - 1), right: Math.min(left + columns, MOST_COLUMNS - 1) };
  }

  /** Ranges that go on to the end of the sheet are cut where its cells end: what is left out are blanks, which a criterion may ask for. */
  #withBlanks(name: string, call: string, args: (AstExpression | null)[], parts: readonly string[], site: Site): string {
    const areas = args.map((arg) => this.#areaOf(arg, site)).filter((area) => area !== undefined && !isOneCell(area)) as SheetRectangle[];
    if (areas.every((area) => this.grids.holds(area))) return call;
    const sizes = areas.map((area) => [sizeOf(area), sizeOf(this.grids.cutTo(area))] as const);
    const [[whole, left]] = sizes as [readonly [number, number]];
    if (sizes.some((size) => size[0] === whole && size[1] !== left))
      throw new Untranslatable("#VALUE!", `compares whole columns or rows of sheets that end in different places (${name}), which is not calculated here`);
    if (!COUNTED_BY_CRITERIA.has(name)) return call;
    const criteria = parts.filter((_, i) => i % 2 === 1);
    return `(${call}+SHEET.BLANKS(${[whole - left, ...criteria].join(",")}))`;
  }

  /**
   * What depends on how far a range goes, which the grid would count only to the end of its own, smaller
   * sheet, and on where a cell stands, which rests on nothing in that cell: it may be the formula's own.
   */
  #size(name: string, [range, ...more]: (AstExpression | null)[], site: Site): string | undefined {
    if (!OF_PLACES.has(name) || more.length > 0) return undefined;
    const area = this.#areaOf(range ?? null, site);
    if (!area) return undefined;
    if (name === "ROW" || name === "COLUMN") return isOneCell(area) ? String(1 + (name === "ROW" ? area.top : area.left)) : undefined;
    if (name === "COUNTBLANK") {
      if (this.grids.holds(area)) return undefined;
      return `(COUNTBLANK(${this.grids.name(area, site.sheet)})+${sizeOf(area) - sizeOf(this.grids.cutTo(area))})`;
    }
    return String(name === "ROWS" ? area.bottom - area.top + 1 : area.right - area.left + 1);
  }
}

const sizeOf = ({ top, left, bottom, right }: SheetRectangle): number => (bottom - top + 1) * (right - left + 1);

/** A function of this name is called somewhere in a part of a formula. */
function holdsCall(part: unknown, name: RegExp): boolean {
  if (typeof part !== "object" || part === null) return false;
  const callee = (part as { callee?: { name?: string } }).callee?.name;
  return (callee !== undefined && name.test(callee)) || Object.values(part).some((inner) => holdsCall(inner, name));
}

/** The grid's helpers: one that fits a block into so many rows and columns, and one that takes no more than one value. */
export const FILL = "SHEET.FILL";
export const ONE = "SHEET.ONE";

function treeOf(formula: string): AstExpression {
  if (formula.length > LONGEST) throw new Untranslatable("#NAME?", "is longer than a formula can be");
  try {
    return parse(tokenize(formula));
  } catch {
    if (IS_ERROR.test(formula)) throw new Untranslatable("#REF!", "has lost a cell that it referred to");
    throw new Untranslatable("#NAME?", "cannot be read");
  }
}

function literal({ value, raw }: { value: unknown; raw: string }): string {
  if (typeof value === "string") return quoted(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return raw.startsWith("-") ? `(${raw})` : raw;
}
