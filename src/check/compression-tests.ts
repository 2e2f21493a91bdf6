import type { Block } from "../core/cell.ts";
import { CannotTell, evaluateNode } from "../formula/evaluate.ts";
import type { OwnCall } from "../formula/own-calls.ts";
import { argumentArea } from "../formula/precedents.ts";
import { cellsOf } from "../formula/workbook-cells.ts";
import { boundBy, RULES, ruleFault } from "../functions/tests/compression-rule.ts";
import type { SheetLabels } from "../layout/labels.ts";
import { placeName } from "../workbook/address.ts";
import type { Candidate } from "./candidates.ts";
import { NO_INPUTS } from "./judge.ts";

/**
 * The pressures of a function that declares by which rule and limit they are judged, each by what its rule
 * asks of the lowest, so that Check says of a cylinder what the sheet says. Readings and rules that
 * the function refuses are told as its inputs are.
 */
export function ruledPressures({ spec, args, context }: OwnCall, labels: SheetLabels): Candidate[] {
  const { draws } = spec;
  if (draws?.kind !== "compression" || draws.judges !== true) return [];
  const argument = (name: string | undefined) => args[spec.inputs.findIndex((input) => input.name === name)];
  const nodes = [draws.pressures, draws.rule, draws.limit].map(argument);
  const area = argumentArea(nodes[0], context);
  const [pressures, typed, limit] = nodes.map((node) => (node ? evaluateNode(node, context) : null));
  const rule = RULES.find((one) => one === String(typed).trim().toLowerCase());
  if (!area || pressures instanceof CannotTell || !rule || typeof limit !== "number" || !(limit > 0)) return [];
  const values = (Array.isArray(pressures) ? (pressures as Block) : [[pressures]]).flat();
  const read = values.filter((value): value is number => typeof value === "number" && value >= 0);
  if (read.length < 2 || ruleFault(rule, limit, "limit", read, "pressures")) return [];
  const { lower } = boundBy(rule, limit, read);
  return [...cellsOf(area)].flatMap((cell, i): Candidate[] => {
    const value = values[i];
    if (typeof value !== "number" || value < 0) return [];
    const key = `${placeName(cell)}|${rule} rule|${lower}`;
    return [{ key, cell, given: { ...NO_INPUTS, value, lower }, isTyped: false, beside: {}, label: `${labels.of(cell)}, ${rule} rule` }];
  });
}
