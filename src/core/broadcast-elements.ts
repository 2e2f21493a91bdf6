import type { Argument, Cell } from "./cell.ts";
import type { Spec } from "./define.ts";
import { Fault, unlike } from "./fault.ts";
import { MOST_AXES } from "./inputs.ts";
import { BLANK, type Bore, type Cells, type NumberGrid, type Param, type Taken } from "./param.ts";

/** One argument as the loop sees it: so many rows and columns of elements, each taken on demand. */
export interface Elements {
  name: string;
  rows: number;
  columns: number;
  take(row: number, column: number): Taken<unknown>;
}

/** The value of `axes`, for functions that have it: `undefined` when not given or blank. */
export function axesOf(spec: Spec, args: readonly Argument[]): number | undefined | Fault {
  const index = spec.inputs.findIndex(({ param }) => param.broadcastKind === "axes");
  if (index < 0) return undefined;
  const { name, param } = spec.inputs[index]!;
  const given = args[index];
  const cells = Array.isArray(given) ? given.flat() : [given];
  if (cells.length === 0) return new Fault("empty", name, undefined, param.want);
  if (cells.length > 1) return new Fault("unfit", name, given, "one number is wanted for the whole call");
  const taken = param.take(cells[0], name);
  return taken === BLANK ? undefined : (taken as number | Fault);
}

/**
 * Readings that cannot be one bore as they stand, or stand beside one value for each of their rows, while
 * `axes` is not given. Taken as one bore they would give one plausible number, and a wrong one.
 */
export function axesMissing(spec: Spec, args: readonly Argument[]): Fault | undefined {
  const axes = spec.inputs.find(({ param }) => param.broadcastKind === "axes");
  const at = spec.inputs.findIndex(({ param }) => param.broadcastKind === "bore");
  if (!axes || at < 0) return undefined;
  const [rows, columns] = sizeOf(args[at]);
  const { name } = spec.inputs[at]!;
  const tooWide = columns > MOST_AXES ? axesFault(axes.name, `${name} of ${columns} columns are no bore measured on so many axes`) : undefined;
  if (tooWide || rows === 1) return tooWide;
  const each = spec.inputs.findIndex(({ param }, i) => param.broadcastKind === "element" && sizeOf(args[i])[0] * sizeOf(args[i])[1] === rows);
  return each < 0 ? undefined : axesFault(axes.name, `there are ${rows} rows of ${name} and ${rows} cells of ${spec.inputs[each]!.name}`);
}

/** For functions that take the readings of several bores as a whole; says what is wanted when `axes` is not given. */
export const axesFault = (name: string, because: string): Fault =>
  new Fault("missing", name, undefined, `the number of axes measured at each height, as ${because}: is each row one bore?`);

const sizeOf = (given: Argument): [rows: number, columns: number] => (Array.isArray(given) ? [given.length, given[0]?.length ?? 0] : [1, 1]);

const oneElement = (name: string, setting: unknown): Elements => ({ name, rows: 1, columns: 1, take: () => setting });

/** One argument as its elements, or the fault of a range that no element could be taken from. */
export function elementsOf(name: string, param: Param<unknown>, given: Argument, axes: number | undefined): Elements | Fault {
  if (param.broadcastKind === "axes") return oneElement(name, axes);
  const block = Array.isArray(given) ? given : undefined;
  const rows = block ? block.length : 1;
  const columns = block ? (block[0]?.length ?? 0) : 1;
  if (rows === 0 || columns === 0) return new Fault("empty", name, undefined, param.want);
  const at = (row: number, column: number): Cell => (block ? block[row]![column] : (given as Cell));
  switch (param.broadcastKind) {
    case "bore":
      return boreElements(name, param, rows, columns, at, axes);
    case "list":
      return oneElement(name, listOf(name, param, rows, columns, at));
    case "grid":
      return oneElement(name, gridOf(name, param, rows, columns, at));
    case "cells":
      return oneElement(name, cellsOf(name, param, rows, columns, at));
    default:
      return {
        name,
        rows,
        columns,
        take: (row, column) => orDefault(param, param.take(at(row, column), name)),
      };
  }
}

function orDefault(param: Param<unknown>, taken: Taken<unknown>): Taken<unknown> {
  return taken === BLANK && param.isOptional ? param.fallback : taken;
}

type CellAt = (row: number, column: number) => Cell;

function boreElements(name: string, param: Param<unknown>, rows: number, columns: number, at: CellAt, axes: number | undefined): Elements | Fault {
  if (axes === undefined) {
    return oneElement(
      name,
      boreOf(name, param, rows, columns, at, (height, axis) => placeIn(rows, columns, height, axis)),
    );
  }
  if (columns % axes !== 0) return new Fault("axes", name, axes, `${columns} columns of ${name}`);
  return {
    name,
    rows,
    columns: 1,
    take: (row) =>
      boreOf(
        name,
        param,
        columns / axes,
        axes,
        (height, axis) => at(row, height * axes + axis),
        (height, axis) => placeIn(rows, columns, row, height * axes + axis),
      ),
  };
}

/**
 * One bore. A blank among its readings leaves it blank: an unfinished bore must not look round.
 * A reading too far from the others of its bore is a fault, at the one that is off.
 */
function boreOf(
  name: string,
  param: Param<unknown>,
  heights: number,
  axes: number,
  at: CellAt,
  where: (height: number, axis: number) => string | undefined,
): Taken<Bore> {
  const values = new Array<number>(heights * axes);
  let blank = false;
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let h = 0; h < heights; h++) {
    for (let a = 0; a < axes; a++) {
      const taken = param.take(at(h, a), name);
      if (taken instanceof Fault) return taken.placed("", where(h, a));
      if (taken === BLANK) {
        blank = true;
        continue;
      }
      const reading = taken as number;
      if (reading < least) least = reading;
      if (reading > most) most = reading;
      values[h * axes + a] = reading;
    }
  }
  const odd = least < most ? unlike(name, most, "reading", least) && oddReading(name, values) : undefined;
  if (odd) return odd.fault.placed("", where(Math.floor(odd.at / axes), odd.at % axes));
  return blank ? BLANK : { heights, axes, values };
}

/** The reading that is too far from the middle one, so that the one blamed is the one that is off wherever it stands; of two the second. */
function oddReading(name: string, values: readonly (number | undefined)[]): { at: number; fault: Fault } | undefined {
  const filled = values.filter((value) => value !== undefined);
  const isPair = filled.length === 2;
  const middle = isPair ? filled[0]! : [...filled].sort((a, b) => a - b)[filled.length >> 1]!;
  const blame = (bound: number, other: string) => {
    const at = values.findIndex((value) => value !== undefined && unlike(name, value, other, bound));
    return at < 0 ? undefined : { at, fault: unlike(name, values[at]!, other, bound)! };
  };
  // Where all lie near the middle one, the smallest and the largest still lie too far apart.
  return blame(middle, isPair ? "reading" : "the middle reading") ?? blame(Math.min(...filled), "the smallest reading");
}

/** For compute functions: the fault of a reading in a whole range that is too far from the others to be a size of the same thing. */
export function oddCell(name: string, { rows, columns, values }: NumberGrid): Fault | undefined {
  const filled = values.filter((value) => value !== null);
  if (!unlike(name, Math.max(...filled), "reading", Math.min(...filled))) return undefined;
  const odd = oddReading(
    name,
    values.map((value) => value ?? undefined),
  );
  return odd?.fault.placed("", placeIn(rows, columns, Math.floor(odd.at / columns), odd.at % columns));
}

const place = (row: number, column: number): string => `row ${row + 1}, column ${column + 1}`;

/** Where a cell stands in its range, as faults and results say it; nothing for a lone cell. */
export function placeIn(rows: number, columns: number, row: number, column: number): string | undefined {
  if (rows === 1 && columns === 1) return undefined;
  return columns === 1 ? `row ${row + 1}` : rows === 1 ? `column ${column + 1}` : place(row, column);
}

function gridOf(name: string, param: Param<unknown>, rows: number, columns: number, at: CellAt): Taken<NumberGrid> {
  const values: (number | null)[] = [];
  let filled = 0;
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const taken = param.take(at(r, c), name);
      if (taken instanceof Fault) return taken.placed("", placeIn(rows, columns, r, c));
      values.push(taken === BLANK ? null : (taken as number));
      if (taken !== BLANK) filled++;
    }
  }
  return filled === 0 ? blankOr(param) : { rows, columns, values };
}

function listOf(name: string, param: Param<unknown>, rows: number, columns: number, at: CellAt): Taken<readonly number[]> {
  const whole = gridOf(name, param, rows, columns, at);
  if (whole instanceof Fault || whole === BLANK || whole === undefined) return whole as Taken<readonly number[]>;
  return whole.values.filter((value): value is number => value !== null);
}

/** A whole range in which each bad cell keeps its fault; the fault of a lone cell is the call's. */
function cellsOf(name: string, param: Param<unknown>, rows: number, columns: number, at: CellAt): Taken<Cells> {
  const values: (number | null | Fault)[] = [];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const taken = param.take(at(r, c), name);
      if (taken instanceof Fault && rows * columns === 1) return taken;
      values.push(taken === BLANK ? null : taken instanceof Fault ? taken.placed("", placeIn(rows, columns, r, c)) : (taken as number));
    }
  }
  return values.every((value) => value === null) ? blankOr(param) : { rows, columns, values };
}

/** An optional range left blank is "not given"; a needed one leaves the result blank. */
function blankOr(param: Param<unknown>): Taken<never> {
  return (param.isOptional ? param.fallback : BLANK) as Taken<never>;
}
