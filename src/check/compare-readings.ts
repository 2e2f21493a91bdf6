import { isLengthUnit } from "../vocabulary/units.ts";
import type { FindingCollector } from "./collect.ts";
import type { FindingSubject } from "./finding.ts";
import type { Judged } from "./given.ts";
import { AlikeBetween, suspect } from "./likely-slip.ts";
import type { Watch } from "./watch.ts";

/** A typed reading beside its limits and beside its like: does it look mistyped? */
export function compareReading(
  report: FindingCollector,
  watch: Pick<Watch, "add">,
  judged: Judged,
  about: () => FindingSubject,
  unit: string | undefined,
  group: string | undefined,
): void {
  if (judged.as !== "judged" && judged.as !== "missing limit") return;
  report.inputs++;
  const { value } = judged;
  const { lower, upper } = judged.as === "judged" ? judged.limits : {};
  const areLengths = unit === undefined ? undefined : isLengthUnit(unit);
  const suspicion = lower !== undefined && upper !== undefined ? suspect(value, new AlikeBetween(lower, upper), areLengths) : undefined;
  if (suspicion) report.find(suspicion.kind, about(), suspicion.details);
  if (group !== undefined) watch.add(group, { value, unit, subject: about, told: suspicion?.kind });
}
