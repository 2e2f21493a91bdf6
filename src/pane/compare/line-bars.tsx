import { useMemo } from "preact/hooks";
import { type Comparison, linesOf } from "../../compare/compare.ts";
import { decimal } from "../../core/decimal.ts";
import { drawJudgedBar, type JudgedBar, reachOfBars } from "../../drawings/judged-bar.ts";
import { isDrawing } from "../../drawings/svg.ts";
import { measuredBy, ownCharacteristic } from "../../vocabulary/subjects.ts";

export type ComparedLine = ReturnType<typeof linesOf>[number];

const ROOM = 296;

/** What has one axis: all lines of a characteristic in one unit, places and means alike. */
const axisOf = (line: ComparedLine): string => {
  const own =
    "places" in line && typeof line.places !== "number"
      ? line.places[0]!.own
      : ownCharacteristic(measuredBy(line.characteristic, "position" in line ? line.position : ""));
  return `${own}|${line.unit ?? ""}`;
};

/** The bar of a line; none where no uncertainty is known, as of ways of treatment with one engine. */
function barOf({ label, unit, difference, lower, upper, mayHide, matters, decimals, verdict }: ComparedLine): JudgedBar | undefined {
  if (lower === null || upper === null || mayHide === null) return undefined;
  return { name: label, unit, difference, lower, upper, half: decimal(mayHide - Math.abs(difference)), matters, decimals, verdict };
}

/** How far the axis of each characteristic goes. */
export function useReaches(comparison: Comparison): ReadonlyMap<string, number> {
  return useMemo(() => {
    const bars = new Map<string, JudgedBar[]>();
    for (const line of linesOf(comparison)) {
      const bar = barOf(line);
      if (bar === undefined) continue;
      const own = bars.get(axisOf(line));
      if (own) own.push(bar);
      else bars.set(axisOf(line), [bar]);
    }
    return new Map([...bars].map(([axis, own]) => [axis, reachOfBars(own)]));
  }, [comparison]);
}

export function LineBar({ line, reaches }: { line: ComparedLine; reaches: ReadonlyMap<string, number> }) {
  const drawn = useMemo(() => {
    const [bar, reach] = [barOf(line), reaches.get(axisOf(line))];
    return bar === undefined || reach === undefined ? undefined : drawJudgedBar(bar, reach, { width: ROOM });
  }, [line, reaches]);
  // The drawing module escapes every text that it is given.
  return drawn === undefined || !isDrawing(drawn) ? null : <div class="line-bar" dangerouslySetInnerHTML={{ __html: drawn.svg }} />;
}
