import type { JudgedRow } from "../../check/finding.ts";
import { type Cell, isBlank } from "../../core/cell.ts";
import type { DrawnInputsOf } from "../../core/define.ts";
import type { ChangeBar, ChangePlot } from "../../drawings/change-plot.ts";
import type { CompressionTest } from "../../drawings/compression-bars.ts";
import type { FaceHeights } from "../../drawings/face-heights.ts";
import type { RoundTrace } from "../../drawings/roundness-trace.ts";
import type { TurnReadings } from "../../drawings/run-out-trace.ts";
import type { SurfaceProfile } from "../../drawings/surface-profile.ts";
import { CannotTell, evaluateNode } from "../../formula/evaluate.ts";
import type { OwnCall } from "../../formula/own-calls.ts";
import { cellsOf } from "../../formula/workbook-cells.ts";
import { boundBy, RULES } from "../../functions/tests/compression-rule.ts";
import { unitIn } from "../../vocabulary/units.ts";
import { type CellArea, placeName } from "../../workbook/address.ts";
import type { Placed } from "../content.ts";
import { distinct, drawnAs, labelsOf, namesOf, numberIn, placeOf, type Source } from "./source.ts";

/** Names of the cells of one row or column: what all have in common, and what each has of its own. */
function namesAlong(source: Source, area: CellArea): { shared: string; own: string[] } {
  const pieces = labelsOf(source, area)
    .flat()
    .map((label) => label.split(", ").filter(Boolean));
  const isShared = (piece: string) => pieces.every((own) => own.includes(piece));
  return { shared: pieces[0]?.filter(isShared).join(", ") ?? "", own: pieces.map((all) => all.filter((piece) => !isShared(piece)).join(", ")) };
}

/** The ranges that calls of one kind draw, each once; `make` gives nothing for one that cannot be drawn. */
function areasIn<K extends "roundness" | "runout" | "face" | "surface", T>(
  source: Source,
  calls: readonly OwnCall[],
  kind: K,
  rangeOf: (draws: DrawnInputsOf<K>) => string,
  make: (area: CellArea, call: OwnCall, draws: DrawnInputsOf<K>) => T | undefined,
): Placed<T>[] {
  const found = new Map<string, Placed<T>>();
  for (const { call, draws } of drawnAs(kind, calls)) {
    const area = source.area(call, rangeOf(draws));
    const what = area && !found.has(placeOf(area)) ? make(area, call, draws) : undefined;
    if (area && what) found.set(placeOf(area), { what, place: placeOf(area) });
  }
  return [...found.values()];
}

const numbersIn = (source: Source, area: CellArea): (number | null)[] => source.book.block(area).flat().map(numberIn);
const titleOf = (source: Source, area: CellArea): string => [area.sheet, namesAlong(source, area).shared].filter(Boolean).join(", ");

/** Every trace of roundness, once. */
export const tracesIn = (source: Source, calls: readonly OwnCall[]): Placed<RoundTrace>[] =>
  areasIn(
    source,
    calls,
    "roundness",
    ({ deviations }) => deviations,
    (area) => ({ name: titleOf(source, area), unit: source.unit(area, "length"), deviations: numbersIn(source, area) }),
  );

/** Readings round a turn; a sheet that is not filled in yet has nothing to draw. */
export const turnsIn = (source: Source, calls: readonly OwnCall[]): Placed<TurnReadings>[] =>
  areasIn(
    source,
    calls,
    "runout",
    ({ readings }) => readings,
    (area) => {
      const readings = numbersIn(source, area);
      return readings.every((reading) => reading === null) ? undefined : { name: titleOf(source, area), unit: source.unit(area, "length"), readings };
    },
  );

/** Heights over faces, with the names of their rows and columns. */
export const facesIn = (source: Source, calls: readonly OwnCall[]): Placed<FaceHeights>[] =>
  areasIn(
    source,
    calls,
    "face",
    ({ heights }) => heights,
    (area) => {
      const heights = source.book.block(area).map((line) => line.map(numberIn));
      if (heights.flat().every((height) => height === null)) return undefined;
      const { shared, rows, columns } = namesOf(labelsOf(source, area));
      const name = [area.sheet, shared].filter(Boolean).join(", ");
      return { name, unit: source.unit(area, "length"), rows: distinct(rows, "row"), columns: distinct(columns, "column"), heights };
    },
  );

/** Stylus profiles. Their heights are in a unit of their own, so that of the workbook says nothing of them. */
export const surfacesIn = (source: Source, calls: readonly OwnCall[]): Placed<SurfaceProfile>[] =>
  areasIn(
    source,
    calls,
    "surface",
    ({ profile }) => profile,
    (area, call, { spacing, cutoff }) => {
      const [step, length] = [source.number(call, spacing), source.number(call, cutoff)];
      const profile = numbersIn(source, area);
      if (step === undefined || length === undefined || profile.every((height) => height === null)) return undefined;
      // Thousands of heights have the name of their first.
      const label = source.labels.of(area);
      return { name: [area.sheet, label].filter(Boolean).join(", "), unit: unitIn(label, "length"), profile, spacing: step, cutoff: length };
    },
  );

/** Every compression test, once, with the rule and the limits by which the sheet judges it. */
export function testsIn(source: Source, calls: readonly OwnCall[]): Placed<CompressionTest>[] {
  const found = new Map<string, Placed<CompressionTest>>();
  for (const { call, draws } of drawnAs("compression", calls)) {
    const area = source.area(call, draws.pressures);
    if (!area) continue;
    const place = placeOf(area);
    const known = found.get(place);
    // A rule that is typed goes before the spread that is allowed.
    const rule = draws.resultIs === "difference" ? (known?.what.rule ?? spreadRule(source, call)) : (ruleOf(source, call, draws) ?? known?.what.rule);
    if (known && rule === known.what.rule) continue;
    const { shared, own } = namesAlong(source, area);
    source.draws(area);
    const pressures = source.book.block(area).flat().map(numberIn);
    const judged = judgedPressures(source, area, rule, pressures);
    const cylinders = pressures.map((pressure, i) => ({ name: own[i] || String(i + 1), pressure, verdict: judged.verdicts[i] }));
    const name = [area.sheet, shared].filter(Boolean).join(", ");
    found.set(place, { what: { name, unit: source.unit(area, "pressure"), cylinders, rule, limits: judged.limits }, place });
  }
  return [...found.values()].filter(({ what }) => what.cylinders.some(({ pressure }) => pressure !== null));
}

/** As the call is given it. */
function ruleOf(source: Source, call: OwnCall, draws: DrawnInputsOf<"compression">): CompressionTest["rule"] {
  if (draws.rule === undefined || draws.limit === undefined) return undefined;
  // Inside a formula that waits for something, and shows nothing, the call judges nothing.
  if (!call.isWhole && isBlank(source.book.value(call.at))) return undefined;
  const typed = String(source.value(call, draws.rule)).trim().toLowerCase();
  const rule = RULES.find((one) => one === typed);
  const limit = source.number(call, draws.limit);
  return rule === undefined || limit === undefined ? undefined : { rule, limit };
}

/** The difference that a judged spread is allowed. */
function spreadRule(source: Source, call: OwnCall): CompressionTest["rule"] {
  const upper = source.judgedAt(call.at)[0]?.upper;
  return typeof upper === "number" ? { rule: "difference", limit: upper } : undefined;
}

/** What the sheet says of each pressure by limits of its own, and those limits where all have the same. */
function judgedPressures(source: Source, area: CellArea, rule: CompressionTest["rule"], pressures: readonly (number | null)[]) {
  const read = pressures.filter((pressure) => pressure !== null);
  const bound = rule && read.length > 1 ? boundBy(rule.rule, rule.limit, read).lower : undefined;
  // What the rule asks is judged as well, and drawn as the rule.
  const isByRule = ({ lower, upper, uncertainty }: JudgedRow) => lower === bound && upper === null && uncertainty === 0;
  const rows = [...cellsOf(area)].map((cell) => source.judgedAt(cell).find((row) => !isByRule(row)));
  const limits = rows.flatMap((row) => (row ? [{ lower: row.lower ?? undefined, upper: row.upper ?? undefined }] : []));
  const isShared = limits.every(({ lower, upper }) => lower === limits[0]!.lower && upper === limits[0]!.upper);
  return { verdicts: rows.map((row) => row?.verdict), limits: isShared ? limits[0] : undefined };
}

/** Sizes measured twice, one plot for each sheet on which they are compared. */
export function changesIn(source: Source, calls: readonly OwnCall[]): Placed<ChangePlot>[] {
  const bySheet = new Map<string, Map<string, ChangeBar>>();
  for (const { call, draws } of drawnAs("change", calls)) {
    const changes = bySheet.get(call.at.sheet) ?? new Map<string, ChangeBar>();
    bySheet.set(call.at.sheet, changes);
    for (const [key, change] of changesOf(source, call, draws)) changes.set(key, change);
  }
  const plots = [...bySheet].map(([sheet, changes]) => ({ what: { name: sheet, changes: [...changes.values()] }, place: sheet }));
  return plots.filter(({ what }) => what.changes.some(({ before, after }) => before !== null && after !== null));
}

function changesOf(
  source: Source,
  call: OwnCall,
  { before: first, after: second, uBefore, uAfter }: DrawnInputsOf<"change">,
): [key: string, change: ChangeBar][] {
  const operands = [first, second, uBefore, uAfter].map((name) => {
    const node = call.args[call.spec.inputs.findIndex((input) => input.name === name)];
    const value = node ? evaluateNode(node, call.context) : null;
    const block = value instanceof CannotTell ? undefined : Array.isArray(value) ? value : [[value]];
    return { block, area: source.area(call, name) };
  });
  const [before, after] = operands;
  if (!before?.block || !after?.block) return [];
  const rows = Math.max(before.block.length, after.block.length);
  const columns = Math.max(before.block[0]!.length, after.block[0]!.length);
  const made: [string, ChangeBar][] = [];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const number = (index: number) => numberIn(pick(operands[index]?.block, r, c));
      const cells = [before.area, after.area].map((area) => area && cellIn(area, r, c));
      const [from, to] = [number(0), number(1)];
      if (from === null && to === null) continue;
      const labels = cells.map((cell) => [cell ? source.labels.of(cell) : ""]);
      const key = cells.map((cell, i) => (cell ? placeName(cell) : `${placeName(call.at)}|${i}|${r},${c}`)).join("|");
      const name = namesOf(labels).shared || labels.flat().find(Boolean) || placeName(cells[0] ?? call.at);
      const unit = before.area ? source.unit(before.area, "length") : undefined;
      made.push([key, { name, unit, before: from, after: to, uBefore: number(2), uAfter: number(3) }]);
    }
  }
  return made;
}

function pick(block: readonly (readonly Cell[])[] | undefined, row: number, column: number): Cell {
  const line = block?.length === 1 ? block[0] : block?.[row];
  return line?.length === 1 ? line[0] : line?.[column];
}

function cellIn(area: CellArea, row: number, column: number): ReturnType<typeof firstCell> {
  return firstCell({ ...area, row: area.row + (area.rows === 1 ? 0 : row), column: area.column + (area.columns === 1 ? 0 : column), rows: 1, columns: 1 });
}

const firstCell = (area: CellArea) => [...cellsOf(area)][0]!;
