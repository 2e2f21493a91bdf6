import { reasonOf } from "../check/given.ts";
import { type Cell, isBlank } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { Book } from "../formula/workbook-cells.ts";
import { judgingParams } from "../functions/verdict/limit-params.ts";
import { limitFor, readLayout } from "../layout/mapped-readings.ts";
import type { Mapping } from "../layout/mapping.ts";
import { CHARACTERISTICS } from "../vocabulary/characteristics.ts";
import { positionText } from "../vocabulary/parse-heading.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import type { Reading } from "./reading.ts";

/** Every reading that a layout knows of, with the limits that are for it. `single` is the U of a measured length for which none is given. */
export function laidReadings(snapshot: Pick<WorkbookSnapshot, "sheets">, mapping: Mapping, single?: number): Reading[] {
  const { readings, limits } = readLayout(new Book(snapshot), mapping);
  return readings.map(({ engine, cylinder, characteristic, places, value, unit, own, cell }) => {
    const { given = {} } = own ?? {};
    const { given: general = {} } = limitFor({ engine, cylinder, characteristic, places }, limits) ?? {};
    const number = (name: "lower" | "upper" | "uncertainty") => numberIn(isBlank(given[name]) ? general[name] : given[name]);
    const { kind, isSetting } = CHARACTERISTICS[characteristic] ?? {};
    const taken = judgingParams.value.take(value, "value");
    return {
      ...{ engine, cylinder, characteristic, position: positionText(places), cell, unit },
      ...(taken instanceof Fault ? { value: null, fault: reasonOf(value, taken) } : { value: typeof taken === "number" ? taken : null }),
      ...{ lower: number("lower"), upper: number("upper"), uncertainty: number("uncertainty") ?? (kind === "length" && !isSetting ? single : undefined) },
    };
  });
}

const numberIn = (cell: Cell): number | undefined => (typeof cell === "number" ? cell : undefined);
