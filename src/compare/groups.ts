import { broadcast } from "../core/broadcast.ts";
import { decimal } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import { faultBody } from "../core/sentences.ts";
import { compareGroups } from "../functions/wear/compare-groups.ts";
import { mean } from "../math/statistics.ts";
import { measuredBy, ownerKey } from "../vocabulary/parse-heading.ts";
import type { Pair } from "./match.ts";

/** The cylinders of one engine, or of two, compared as groups. */
export interface GroupChange {
  /** `""` where two engines are compared. */
  engine: string;
  characteristic: string;
  /** Cylinders on each side. */
  cylinders: number;
  /** Mean after less mean before, with its interval at 95 %; `null` where the groups do not show one. */
  difference: number | null;
  from: number | null;
  to: number | null;
  p: number | null;
  differs: boolean;
  says: string;
}

/** Fewer cylinders show no spread. */
const FEWEST = 2;

/**
 * Each characteristic over the cylinders, before against after. A cylinder counts once, by the mean of
 * its places: readings of one cylinder are no cylinders of their own.
 */
export function groupsOf(pairs: readonly Pair[], sameEngine: boolean): GroupChange[] {
  const groups = new Map<string, { engine: string; characteristic: string; cylinders: Map<string, { before: number[]; after: number[] }> }>();
  for (const pair of pairs) {
    const [before, after] = [pair.before.at(-1)!, pair.after.at(-1)!];
    const { engine, cylinder, characteristic } = before;
    if (before.value === null || after.value === null || cylinder === "" || characteristic === "") continue;
    if (before.unit !== undefined && after.unit !== undefined && before.unit !== after.unit) continue;
    const key = `${sameEngine ? ownerKey("engine", engine) : ""}|${measuredBy(characteristic, "").characteristic}|${before.unit ?? after.unit ?? ""}`;
    const group = groups.get(key) ?? { engine: sameEngine ? engine : "", characteristic, cylinders: new Map() };
    groups.set(key, group);
    const own = group.cylinders.get(ownerKey("cylinder", cylinder)) ?? { before: [], after: [] };
    group.cylinders.set(ownerKey("cylinder", cylinder), own);
    own.before.push(before.value);
    own.after.push(after.value);
  }
  return [...groups.values()].flatMap(({ engine, characteristic, cylinders }) =>
    cylinders.size < FEWEST ? [] : [groupChange(engine, characteristic, [...cylinders.values()])],
  );
}

function groupChange(engine: string, characteristic: string, cylinders: readonly { before: number[]; after: number[] }[]): GroupChange {
  const group = { engine, characteristic, cylinders: cylinders.length };
  const [after, before] = [cylinders.map((one) => mean(one.after)), cylinders.map((one) => mean(one.before))];
  const made = broadcast(compareGroups, [[after], [before]]);
  if (made instanceof Fault || !Array.isArray(made)) {
    const why = made instanceof Fault ? faultBody(made) : "nothing to compare";
    return { ...group, difference: null, from: null, to: null, p: null, differs: false, says: why };
  }
  const [difference, from, to, , , p] = (made[1] as number[]).map((value) => Number(decimal(value).toPrecision(4))) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const differs = from > 0 || to < 0;
  const size = difference === 0 ? "equal on average" : `${Math.abs(difference)} ${difference > 0 ? "larger" : "smaller"} on average`;
  const says = `${size} over ${cylinders.length} cylinders (${from} to ${to}, p ${p})`;
  return { ...group, difference, from, to, p, differs, says };
}
