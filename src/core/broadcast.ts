import { axesMissing, axesOf, type Lane, laneOf } from "./broadcast-elements.ts";
import type { Argument, Result } from "./cell.ts";
import type { Spec } from "./define.ts";
import { Fault } from "./fault.ts";
import { BLANK } from "./param.ts";
import { checkText } from "./sentences.ts";

/** What a call comes to: one value, a block that spills, or a fault for a call that gives one value. */
export type Outcome = Result | Result[][] | Fault;

const NOTHING = "";
/** A whole column beside a whole row would ask for more results than any host has room for. */
const MOST_RESULTS = 5_000_000;

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
  const unsaid = axes === undefined ? axesMissing(spec, args) : undefined;
  if (unsaid) return unsaid.placed(spec.name);
  for (let i = 0; i < spec.inputs.length; i++) {
    const { name, param } = spec.inputs[i]!;
    const given = i < args.length ? args[i] : undefined;
    if (i >= args.length && !param.isOptional) return new Fault("missing", name, undefined, param.want, undefined, spec.name);
    const lane = laneOf(name, param, given, axes);
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
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (__, c) => {
      const element = one(spec, lanes, inputs, r, c) as Result | Fault;
      return element instanceof Fault ? checkText(element) : element;
    }),
  );
}

/** A header row, then one row of values per element. A lone element's fault stays a fault. */
function labelled(spec: Spec, lanes: readonly Lane[], inputs: Record<string, unknown>, rows: number, columns: number): Outcome {
  const labels = spec.returns.columns!;
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
    // What has no inputs has one answer, and its examples show that.
    const first = lanes[0]!.name;
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
  const larger = lanes.find(misfit)!;
  return new Fault("shape", lane.name, `${lane.rows}×${lane.columns}`, `${larger.name} of ${larger.rows}×${larger.columns}`, undefined, spec.name);
}

function crowd(spec: Spec, lanes: readonly Lane[], rows: number, columns: number): Fault {
  const lane = lanes.find((l) => l.rows * l.columns > 1)!;
  return new Fault("unfit", lane.name, lane, `the ranges ask for ${rows}×${columns} results, more than ${MOST_RESULTS}`, undefined, spec.name);
}
