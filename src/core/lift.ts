import { BATCH_FROM, type BatchLane, runBatch } from "./batch.ts";
import type { Argument, Cell, Result } from "./cell.ts";
import type { Spec } from "./define.ts";
import { Fault, unlike } from "./fault.ts";
import { BLANK, type Bore, type Cells, type Grid, type Param, type Taken } from "./param.ts";
import { checkText } from "./sentences.ts";

/** What a call comes to: one value, a block that spills, or a fault for a call that gives one value. */
export type Outcome = Result | Result[][] | Fault;

const NOTHING = "";
/** A whole column beside a whole row would ask for more results than any host has room for. */
const MOST_RESULTS = 5_000_000;

/** One argument as the loop sees it: so many rows and columns of elements, each taken on demand. */
interface Lane extends BatchLane {
  take(row: number, column: number): Taken<unknown>;
}

/**
 * Applies a spec's compute to whatever a sheet hands over: broadcasts as the sheet's own array
 * arithmetic does (n×1 with 1×m gives n×m), leaves blank what has a blank input, and keeps a bad
 * element to itself: in a batch it becomes text starting `check: `, alone it is the fault.
 */
export function call(spec: Spec, args: readonly Argument[]): Outcome {
  if (args.length > spec.inputs.length) return surplus(spec, args.length);
  const lanes: Lane[] = [];
  const axes = axesOf(spec, args);
  if (axes instanceof Fault) return axes.placed(spec.name);
  for (let i = 0; i < spec.inputs.length; i++) {
    const { name, param } = spec.inputs[i]!;
    const given = i < args.length ? args[i] : undefined;
    if (i >= args.length && !param.isOptional) return new Fault("missing", name, undefined, param.want, undefined, spec.name);
    const lane = param.lifting === "axes" ? settingLane(name, axes) : laneOf(name, param, given, axes);
    if (lane instanceof Fault) return lane.placed(spec.name);
    lanes.push(lane);
  }
  return run(spec, lanes);
}

function surplus({ name, inputs }: Spec, given: number): Fault {
  const takes = inputs.length === 0 ? "no inputs" : `${inputs.length} input${inputs.length === 1 ? "" : "s"} (${inputs.map((input) => input.name).join(", ")})`;
  return new Fault("surplus", inputs.at(-1)?.name ?? "", given, takes, undefined, name);
}

function run(spec: Spec, lanes: readonly Lane[]): Outcome {
  let rows = 1;
  let columns = 1;
  for (const lane of lanes) {
    if (lane.rows > rows) rows = lane.rows;
    if (lane.columns > columns) columns = lane.columns;
  }
  for (const lane of lanes) {
    if ((lane.rows !== 1 && lane.rows !== rows) || (lane.columns !== 1 && lane.columns !== columns)) return shapeFault(spec, lanes, lane, rows, columns);
  }
  if (rows * columns > MOST_RESULTS) return crowd(spec, lanes, rows, columns);
  const inputs: Record<string, unknown> = {};
  if (spec.returns.kind === "value") {
    if (rows === 1 && columns === 1) return one(spec, lanes, inputs, 0, 0) as Outcome;
    return spread(spec, lanes, inputs, rows, columns);
  }
  if (spec.returns.kind === "table") {
    const wide = lanes.find((lane) => lane.rows * lane.columns > 1);
    if (wide) return new Fault("shape", wide.name, `${wide.rows}×${wide.columns}`, "one cell for the whole call", undefined, spec.name);
    const whole = one(spec, lanes, inputs, 0, 0);
    return typeof whole === "object" && !(whole instanceof Fault) ? (whole as Result[][]).map((line) => [...line]) : (whole as Outcome);
  }
  return labelled(spec, lanes, inputs, rows, columns);
}

/** One result per element; a fault becomes text in its own cell. */
function spread(spec: Spec, lanes: readonly Lane[], inputs: Record<string, unknown>, rows: number, columns: number): Result[][] {
  const out: Result[][] = Array.from({ length: rows }, () => new Array(columns));
  const closer = (row: number, column: number) => {
    const element = one(spec, lanes, inputs, row, column) as Result | Fault;
    out[row]![column] = element instanceof Fault ? checkText(element) : element;
  };
  if (rows * columns >= BATCH_FROM && runBatch(spec, lanes, rows, columns, { out, closer })) return out;
  for (let r = 0; r < rows; r++) for (let c = 0; c < columns; c++) closer(r, c);
  return out;
}

/** A header row, then one row of values per element. A lone element's fault stays a fault. */
function labelled(spec: Spec, lanes: readonly Lane[], inputs: Record<string, unknown>, rows: number, columns: number): Outcome {
  const labels = spec.returns.columns ?? [];
  const out: Result[][] = [[...labels]];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const element = one(spec, lanes, inputs, r, c);
      if (element instanceof Fault && rows * columns === 1) return element;
      if (element instanceof Fault) out.push([checkText(element), ...labels.slice(1).map(() => NOTHING)]);
      else out.push(element === NOTHING ? labels.map(() => NOTHING) : [...(element as Result[])]);
    }
  }
  return out;
}

/** One element: takes each input, stops at the first fault, stays blank when a needed input is. */
function one(spec: Spec, lanes: readonly Lane[], inputs: Record<string, unknown>, row: number, column: number): unknown {
  let blank = false;
  for (let i = 0; i < lanes.length; i++) {
    const lane = lanes[i]!;
    const taken = lane.take(lane.rows === 1 ? 0 : row, lane.columns === 1 ? 0 : column);
    if (taken instanceof Fault) return taken.placed(spec.name);
    if (taken === BLANK) blank = true;
    else inputs[lane.name] = taken;
  }
  if (blank) return NOTHING;
  const made = spec.compute(inputs);
  if (made instanceof Fault) return made.placed(spec.name);
  if (isUnfinished(made)) {
    const first = lanes[0]?.name ?? "";
    return new Fault("unfit", first, inputs[first], "the result is not a finite number with these inputs", undefined, spec.name);
  }
  return made;
}

/** True for a result, or a block of them, with a number that no sheet can show. */
function isUnfinished(made: unknown): boolean {
  if (typeof made === "number") return !Number.isFinite(made);
  return Array.isArray(made) && made.some(isUnfinished);
}

function shapeFault(spec: Spec, lanes: readonly Lane[], lane: Lane, rows: number, columns: number): Fault {
  const misfit = lane.rows !== 1 && lane.rows !== rows ? (l: Lane) => l.rows === rows : (l: Lane) => l.columns === columns;
  const larger = lanes.find(misfit) ?? lane;
  return new Fault("shape", lane.name, `${lane.rows}×${lane.columns}`, `${larger.name} of ${larger.rows}×${larger.columns}`, undefined, spec.name);
}

function crowd(spec: Spec, lanes: readonly Lane[], rows: number, columns: number): Fault {
  const lane = lanes.find((l) => l.rows * l.columns > 1)!;
  return new Fault("unfit", lane.name, lane, `the ranges ask for ${rows}×${columns} results, more than ${MOST_RESULTS}`, undefined, spec.name);
}

/** The value of `axes`, for functions that have it: `undefined` when not given or blank. */
function axesOf(spec: Spec, args: readonly Argument[]): number | undefined | Fault {
  const index = spec.inputs.findIndex(({ param }) => param.lifting === "axes");
  if (index < 0) return undefined;
  const { name, param } = spec.inputs[index]!;
  const given = args[index];
  const cells = Array.isArray(given) ? given.flat() : [given];
  if (cells.length === 0) return new Fault("empty", name, undefined, param.want);
  if (cells.length > 1) return new Fault("unfit", name, given, "one number is wanted for the whole call");
  const taken = param.take(cells[0], name);
  return taken === BLANK ? undefined : (taken as number | Fault);
}

const settingLane = (name: string, setting: unknown): Lane => ({ name, rows: 1, columns: 1, take: () => setting });

function laneOf(name: string, param: Param<unknown>, given: Argument, axes: number | undefined): Lane | Fault {
  const block = Array.isArray(given) ? given : undefined;
  const rows = block ? block.length : 1;
  const columns = block ? (block[0]?.length ?? 0) : 1;
  if (rows === 0 || columns === 0) return new Fault("empty", name, undefined, param.want);
  const at = (row: number, column: number): Cell => (block ? block[row]![column] : (given as Cell));
  switch (param.lifting) {
    case "bore":
      return boreLane(name, param, rows, columns, at, axes);
    case "list":
      return settingLane(name, listOf(name, param, rows, columns, at));
    case "grid":
      return settingLane(name, gridOf(name, param, rows, columns, at));
    case "cells":
      return settingLane(name, cellsOf(name, param, rows, columns, at));
    default:
      return {
        name,
        rows,
        columns,
        block: param.isMeasured ? block : undefined,
        param,
        take: (row, column) => orDefault(param, param.take(at(row, column), name)),
      };
  }
}

function orDefault(param: Param<unknown>, taken: Taken<unknown>): Taken<unknown> {
  return taken === BLANK && param.isOptional ? param.fallback : taken;
}

type CellAt = (row: number, column: number) => Cell;

function boreLane(name: string, param: Param<unknown>, rows: number, columns: number, at: CellAt, axes: number | undefined): Lane | Fault {
  if (axes === undefined) {
    return settingLane(
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
 * Inches among millimetres are a fault at the reading that parts from the first.
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
  let first: number | undefined;
  for (let h = 0; h < heights; h++) {
    for (let a = 0; a < axes; a++) {
      const taken = param.take(at(h, a), name);
      if (taken instanceof Fault) return taken.placed("", where(h, a));
      if (taken === BLANK) {
        blank = true;
        continue;
      }
      const reading = taken as number;
      first ??= reading;
      const odd = unlike(name, reading, "reading", first);
      if (odd) return odd.placed("", where(h, a));
      values[h * axes + a] = reading;
    }
  }
  return blank ? BLANK : { heights, axes, values };
}

const place = (row: number, column: number): string => `row ${row + 1}, column ${column + 1}`;

function placeIn(rows: number, columns: number, row: number, column: number): string | undefined {
  if (rows === 1 && columns === 1) return undefined;
  return columns === 1 ? `row ${row + 1}` : rows === 1 ? `column ${column + 1}` : place(row, column);
}

function gridOf(name: string, param: Param<unknown>, rows: number, columns: number, at: CellAt): Taken<Grid> {
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
