import type { Block, Cell } from "../core/cell.ts";
import { CannotTell, evaluateNode } from "../formula/evaluate.ts";
import type { OwnCall } from "../formula/own-calls.ts";
import { type AstExpression, parseFormula, references } from "../formula/parse.ts";
import { argumentArea, type SpillSource, type SpillSources } from "../formula/precedents.ts";

import { cellsOf, WorkbookCells } from "../formula/workbook-cells.ts";
import { propagated } from "../math/propagation.ts";
import { isLengthUnit } from "../vocabulary/units.ts";
import { type CellAddress, type CellArea, placeName } from "../workbook/address.ts";
import type { Reading } from "./readings.ts";

/** Results times inputs of one formula that are looked at; more would take longer than anybody waits. */
const MOST = 4_000_000;
/** Formulas that lead to formulas; a chain in a build sheet is short. */
const LONGEST_CHAIN = 20;

/** Expanded uncertainty of what a workbook works out from readings: each cell that a formula looks at is moved by its U. */
export class Uncertainties {
  readonly #given = new Map<string, number>();
  readonly #settings = new Set<string>();
  readonly #lengths = new Set<string>();
  readonly #worked = new Map<string, (number | undefined)[][] | undefined>();

  /** `single` is the U of one typed length for which the workbook gives none. */
  constructor(
    readonly origins: SpillSources,
    calls: readonly OwnCall[],
    readings: readonly Reading[],
    readonly single: number | undefined,
  ) {
    for (const { cell, uncertainty, unit } of readings) {
      if (uncertainty !== undefined) this.#given.set(placeName(cell), uncertainty);
      if (unit !== undefined && isLengthUnit(unit)) this.#lengths.add(placeName(cell));
    }
    for (const { spec, args, context } of calls) {
      for (const [i, { param }] of spec.inputs.entries()) {
        const known = param.role === "chosen" ? this.#settings : param.quantity === "length" ? this.#lengths : undefined;
        const area = known && argumentArea(args[i], context);
        for (const cell of area ? cellsOf(area) : []) known!.add(placeName(cell));
      }
    }
  }

  /** U of what stands in the cell; `undefined` where nothing says. */
  of(cell: CellAddress, chain = 0): number | undefined {
    const place = placeName(cell);
    const given = this.#given.get(place);
    if (given !== undefined) return given;
    if (this.#settings.has(place)) return 0;
    const origin = this.origins.of(cell);
    if (!origin) return this.#lengths.has(place) ? this.single : undefined;
    if (chain > LONGEST_CHAIN) return undefined;
    const at = placeName(origin.at);
    if (!this.#worked.has(at)) {
      // A formula that leads back to itself must not be worked out again on the way.
      this.#worked.set(at, undefined);
      this.#worked.set(at, this.#workOut(origin, chain));
    }
    return this.#worked.get(at)?.[origin.row]?.[origin.column];
  }

  /** U of every result of a formula. */
  #workOut({ at, formula }: SpillSource, chain: number): (number | undefined)[][] | undefined {
    const tree = parseFormula(formula);
    const areas = references(tree).map((node) => argumentArea(node, { book: this.origins.book, sheet: at.sheet, cell: at }));
    if (!tree || areas.length === 0 || areas.some((area) => area === undefined)) return undefined;
    const inputs = this.#numbersIn(areas as CellArea[]);
    const results = resultIn(this.origins.book, at, tree);
    if (!results || inputs.length * results.length * results[0]!.length > MOST) return undefined;
    const own = inputs.map(({ cell }) => this.of(cell, chain + 1));
    if (own.includes(undefined)) return undefined;
    const found = propagated(
      inputs.map(({ value }) => value),
      own as number[],
      (values) => resultIn(new Moved(this.origins.book, inputs, values), at, tree)?.flatMap((line) => line.map(numberOr)),
    );
    const columns = results[0]!.length;
    return found && results.map((line, r) => line.map((_, c) => found[r * columns + c]! || undefined));
  }

  #numbersIn(areas: readonly CellArea[]): { cell: CellAddress; value: number }[] {
    const found = new Map<string, { cell: CellAddress; value: number }>();
    for (const area of areas) {
      for (const cell of cellsOf(area)) {
        const value = this.origins.book.value(cell);
        if (typeof value === "number") found.set(placeName(cell), { cell, value });
      }
    }
    return [...found.values()];
  }
}

function resultIn(book: WorkbookCells, at: CellAddress, tree: AstExpression): Block | undefined {
  const result = evaluateNode(tree, { book, sheet: at.sheet, cell: at });
  if (result instanceof CannotTell) return undefined;
  return Array.isArray(result) ? result : [[result]];
}

const numberOr = (cell: Cell): number => (typeof cell === "number" ? cell : Number.NaN);

/** A workbook with other numbers in some cells. */
class Moved extends WorkbookCells {
  readonly #moved: readonly { cell: CellAddress; value: number }[];

  constructor(
    readonly book: WorkbookCells,
    inputs: readonly { cell: CellAddress; value: number }[],
    values: readonly number[],
  ) {
    super({ sheets: [...book.sheets] });
    this.#moved = inputs.flatMap(({ cell, value }, i) => (values[i] === value ? [] : [{ cell, value: values[i]! }]));
  }

  override value(cell: CellAddress): Cell {
    const own = this.#moved.find(({ cell: { sheet, row, column } }) => cell.row === row && cell.column === column && cell.sheet === sheet);
    return own ? own.value : super.value(cell);
  }

  override block(area: CellArea): Block {
    const block = super.block(area);
    for (const { cell, value } of this.#moved) {
      const row = cell.row - area.row;
      const column = cell.column - area.column;
      if (area.sheet === cell.sheet && block[row]?.[column] !== undefined) block[row]![column] = value;
    }
    return block;
  }
}
