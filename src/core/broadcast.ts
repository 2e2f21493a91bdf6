import { axesMissing, axesOf, type Elements, elementsOf } from "./broadcast-elements.ts";
import type { Argument, Result } from "./cell.ts";
import type { Spec } from "./define.ts";
import { Fault } from "./fault.ts";
import { BLANK } from "./param.ts";
import { checkText } from "./sentences.ts";

/** What a call comes to: one value, a block that spills, or a fault for a call that gives one value. */
export type CallResult = Result | Result[][] | Fault;

const NOTHING = "";
/**
 * A whole column beside a whole row would ask for more results than any host has room for: Excel takes five
 * million cells from a program (Microsoft, "Resource limits and performance optimization for Office
 * Add-ins"), and a sheet has 1,048,576 rows, one of them for the labels.
 */
const MOST_RESULTS = 5_000_000;
const MOST_LABELLED = 1_048_575;

/**
 * Applies a spec's compute to whatever a sheet hands over: broadcasts as the sheet's own array
 * arithmetic does (n×1 with 1×m gives n×m), leaves blank what has a blank input, and keeps a bad
 * element to itself: in a batch it becomes text starting `check: `, alone it is the fault.
 */
export function broadcast(spec: Spec, args: readonly Argument[]): CallResult {
  if (args.length > spec.inputs.length) return surplus(spec, args.length);
  const ranges: Elements[] = [];
  const axes = axesOf(spec, args);
  if (axes instanceof Fault) return axes.placed(spec.name);
  const unsaid = axes === undefined ? axesMissing(spec, args) : undefined;
  if (unsaid) return unsaid.placed(spec.name);
  for (let i = 0; i < spec.inputs.length; i++) {
    const { name, param } = spec.inputs[i]!;
    const given = i < args.length ? args[i] : undefined;
    if (i >= args.length && !param.isOptional) return new Fault("missing", name, undefined, param.want, undefined, spec.name);
    const range = elementsOf(name, param, given, axes);
    if (range instanceof Fault) return range.placed(spec.name);
    ranges.push(range);
  }
  return run(spec, ranges);
}

function surplus({ name, inputs }: Spec, given: number): Fault {
  const takes = inputs.length === 0 ? "no inputs" : `${inputs.length} input${inputs.length === 1 ? "" : "s"} (${inputs.map((input) => input.name).join(", ")})`;
  return new Fault("surplus", inputs.at(-1)?.name ?? "", given, takes, undefined, name);
}

function run(spec: Spec, ranges: readonly Elements[]): CallResult {
  let rows = 1;
  let columns = 1;
  for (const range of ranges) {
    if (range.rows > rows) rows = range.rows;
    if (range.columns > columns) columns = range.columns;
  }
  for (const range of ranges) {
    if ((range.rows !== 1 && range.rows !== rows) || (range.columns !== 1 && range.columns !== columns)) return shapeFault(spec, ranges, range, rows, columns);
  }
  const most = spec.returns.kind === "row" ? MOST_LABELLED : MOST_RESULTS;
  if (rows * columns > most) return crowd(spec, ranges, rows, columns, most);
  const inputs: Record<string, unknown> = {};
  if (spec.returns.kind === "value") {
    if (rows === 1 && columns === 1) return one(spec, ranges, inputs, 0, 0) as CallResult;
    return spread(spec, ranges, inputs, rows, columns);
  }
  if (spec.returns.kind === "table") {
    const wide = ranges.find((range) => range.rows * range.columns > 1);
    if (wide) return new Fault("shape", wide.name, `${wide.rows}×${wide.columns}`, "one cell for the whole call", undefined, spec.name);
    const whole = one(spec, ranges, inputs, 0, 0);
    return typeof whole === "object" && !(whole instanceof Fault) ? (whole as Result[][]).map((line) => [...line]) : (whole as CallResult);
  }
  return labelled(spec, ranges, inputs, rows, columns);
}

/** One result per element; a fault becomes text in its own cell. */
function spread(spec: Spec, ranges: readonly Elements[], inputs: Record<string, unknown>, rows: number, columns: number): Result[][] {
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (__, c) => {
      const element = one(spec, ranges, inputs, r, c) as Result | Fault;
      return element instanceof Fault ? checkText(element) : element;
    }),
  );
}

/** A header row, then one row of values per element. A lone element's fault stays a fault. */
function labelled(spec: Spec, ranges: readonly Elements[], inputs: Record<string, unknown>, rows: number, columns: number): CallResult {
  const labels = spec.returns.columns!;
  const out: Result[][] = [[...labels]];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const element = one(spec, ranges, inputs, r, c);
      if (element instanceof Fault && rows * columns === 1) return element;
      if (element instanceof Fault) out.push([checkText(element), ...labels.slice(1).map(() => NOTHING)]);
      else out.push(element === NOTHING ? labels.map(() => NOTHING) : [...(element as Result[])]);
    }
  }
  return out;
}

/** One element: takes each input, stops at the first fault, stays blank when a needed input is. */
function one(spec: Spec, ranges: readonly Elements[], inputs: Record<string, unknown>, row: number, column: number): unknown {
  let blank = false;
  for (let i = 0; i < ranges.length; i++) {
    const range = ranges[i]!;
    const taken = range.take(range.rows === 1 ? 0 : row, range.columns === 1 ? 0 : column);
    if (taken instanceof Fault) return taken.placed(spec.name);
    if (taken === BLANK) blank = true;
    else inputs[range.name] = taken;
  }
  if (blank) return NOTHING;
  const made = spec.compute(inputs);
  if (made instanceof Fault) return made.placed(spec.name);
  if (isUnfinished(made)) {
    // What has no inputs has one answer, and its examples show that.
    const first = ranges[0]!.name;
    return new Fault("unfit", first, inputs[first], "the result is not a finite number with these inputs", undefined, spec.name);
  }
  return made;
}

/** True for a result, or a block of them, with a number that no sheet can show. */
function isUnfinished(made: unknown): boolean {
  if (typeof made === "number") return !Number.isFinite(made);
  return Array.isArray(made) && made.some(isUnfinished);
}

function shapeFault(spec: Spec, ranges: readonly Elements[], range: Elements, rows: number, columns: number): Fault {
  const misfit = range.rows !== 1 && range.rows !== rows ? (r: Elements) => r.rows === rows : (r: Elements) => r.columns === columns;
  const larger = ranges.find(misfit)!;
  return new Fault("shape", range.name, `${range.rows}×${range.columns}`, `${larger.name} of ${larger.rows}×${larger.columns}`, undefined, spec.name);
}

function crowd(spec: Spec, ranges: readonly Elements[], rows: number, columns: number, most: number): Fault {
  const range = ranges.find((r) => r.rows * r.columns > 1)!;
  return new Fault("unfit", range.name, range, `the ranges ask for ${rows}×${columns} results, more than ${most}`, undefined, spec.name);
}
