import type { Cell } from "../../core/cell.ts";
import type { DrawnInputsOf } from "../../core/define.ts";
import type { ChangeBar, ChangePlot } from "../../drawings/change-plot.ts";
import type { CompressionTest } from "../../drawings/compression-bars.ts";
import type { RoundTrace } from "../../drawings/roundness-trace.ts";
import { CannotTell, evaluateNode } from "../../formula/evaluate.ts";
import type { OwnCall } from "../../formula/own-calls.ts";
import { type Area, cellsOf } from "../../formula/workbook-cells.ts";
import { type CompressionRule, RULES } from "../../functions/tests/compression-rule.ts";
import { placeName } from "../../workbook/address.ts";
import type { Placed } from "../content.ts";
import { drawnAs, labelsOf, placeOf, type Source } from "./areas.ts";
import { numberIn } from "./cells.ts";
import { namesOf } from "./names.ts";

/** Names of the cells of one row or column: what all have in common, and what each has of its own. */
function namesAlong(source: Source, area: Area): { shared: string; own: string[] } {
  const pieces = labelsOf(source, area)
    .flat()
    .map((label) => label.split(", ").filter(Boolean));
  const isShared = (piece: string) => pieces.every((own) => own.includes(piece));
  return { shared: pieces[0]?.filter(isShared).join(", ") ?? "", own: pieces.map((all) => all.filter((piece) => !isShared(piece)).join(", ")) };
}

/** Every trace of roundness, once. */
export function tracesIn(source: Source, calls: readonly OwnCall[]): Placed<RoundTrace>[] {
  const found = new Map<string, Placed<RoundTrace>>();
  for (const { call, draws } of drawnAs("roundness", calls)) {
    const area = source.area(call, draws.deviations);
    if (!area) continue;
    const place = placeOf(area);
    const deviations = source.book.block(area).flat().map(numberIn);
    found.set(place, {
      what: { name: [area.sheet, namesAlong(source, area).shared].filter(Boolean).join(", "), unit: source.unit(area, "length"), deviations },
      place,
    });
  }
  return [...found.values()];
}

/** Every compression test, once, with the rule by which the sheet judges it. */
export function testsIn(source: Source, calls: readonly OwnCall[]): Placed<CompressionTest>[] {
  const found = new Map<string, Placed<CompressionTest>>();
  for (const { call, draws } of drawnAs("compression", calls)) {
    const area = source.area(call, draws.pressures);
    if (!area) continue;
    const place = placeOf(area);
    const { shared, own } = namesAlong(source, area);
    source.draws(area);
    const pressures = source.book.block(area).flat();
    const cylinders = pressures.map((cell, i) => ({ name: own[i] || String(i + 1), pressure: numberIn(cell) || null }));
    const rule = ruleOf(source, call, draws) ?? found.get(place)?.what.rule;
    found.set(place, { what: { name: [area.sheet, shared].filter(Boolean).join(", "), unit: source.unit(area, "pressure"), cylinders, rule }, place });
  }
  return [...found.values()].filter(({ what }) => what.cylinders.some(({ pressure }) => pressure !== null));
}

/** As the call is given it, or the difference that a judged spread is allowed. */
function ruleOf(source: Source, call: OwnCall, draws: DrawnInputsOf<"compression">): CompressionTest["rule"] {
  if (draws.resultIs === "difference") {
    const upper = source.judgedAt(call.at)?.upper;
    return typeof upper === "number" ? { rule: "difference", limit: upper } : undefined;
  }
  if (draws.rule === undefined || draws.limit === undefined) return undefined;
  const typed = String(source.value(call, draws.rule)).trim().toLowerCase();
  const rule = RULES.find((one) => one === typed);
  const limit = source.number(call, draws.limit);
  return rule === undefined || limit === undefined ? undefined : { rule: rule as CompressionRule, limit };
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

function cellIn(area: Area, row: number, column: number): ReturnType<typeof firstCell> {
  return firstCell({ ...area, row: area.row + (area.rows === 1 ? 0 : row), column: area.column + (area.columns === 1 ? 0 : column), rows: 1, columns: 1 });
}

const firstCell = (area: Area) => [...cellsOf(area)][0]!;
