import { decimal } from "../core/decimal.ts";
import { groupedBy } from "../core/grouped.ts";
import { counted, decimalsOf, fixed, uncertaintyText } from "../core/number-text.ts";
import { COVERAGE_FACTOR } from "../functions/wear/change-params.ts";
import { mean } from "../math/statistics.ts";
import { type Campaign, IN_SESSION } from "../vocabulary/heading-words.ts";
import { foldedHeading } from "../vocabulary/headings.ts";
import type { Reading, ReadingSet } from "./readings.ts";
import type { Session } from "./sessions.ts";

const MASTER_NAMES = new Set(["master", "masters", "setting master", "setting ring", "setting standard", "gauge master", "ring gauge"]);
const isMaster = ({ characteristic }: Reading): boolean => MASTER_NAMES.has(foldedHeading(characteristic));

/** What the master has to do with the change of one place. */
export interface MasterChange {
  gauge: string;
  /** What the gauge's readings of its master moved by: it is in every reading alike, and taken out of the change. */
  moved: number;
  /** The means of its readings, and how many there were. */
  means: readonly [number, number];
  readings: readonly [number, number];
  /** Standard uncertainty that each campaign's master readings leave, which no number of places makes smaller. */
  before: number;
  after: number;
}

/** The readings of one master in one campaign. */
interface MasterReadings {
  side: Campaign;
  day: string;
  name: string;
  readings: Reading[];
}

/** A gauge's master by its name: where the place says no more than start or end of the session, it has none. */
const nameOf = ({ position }: Reading): string => foldedHeading(position.replace(IN_SESSION.start, " ").replace(IN_SESSION.end, " "));

/**
 * Readings of gauges' masters: rows with the characteristic `master`. A gauge whose master was read before and after
 * needs nothing said of its setting: what the master moved by is taken out, and what both campaigns share cancels.
 */
export class Masters {
  /** Sets without the readings of masters. */
  readonly sets: readonly (ReadingSet | undefined)[];
  readonly notes: string[] = [];
  readonly #byGauge: ReadonlyMap<string, readonly MasterReadings[]>;

  constructor(first: ReadingSet, second: ReadingSet | undefined) {
    const found: { side: Campaign; reading: Reading }[] = [];
    this.sets = [first, second].map((set, i) => {
      if (set === undefined || !set.readings.some(isMaster)) return set;
      for (const reading of set.readings.filter(isMaster)) {
        const side = reading.campaign ?? (second === undefined ? undefined : i === 0 ? "before" : "after");
        const why = this.#unfit(reading, side);
        if (why === undefined) found.push({ side: side!, reading });
        else this.notes.push(`a reading of the master${reading.gauge ? ` of gauge ${reading.gauge}` : ""} is left out (${whereOf(reading)}): ${why}`);
      }
      return { ...set, readings: set.readings.filter((reading) => !isMaster(reading)) };
    });
    const campaigns = groupedBy(found, ({ side, reading }) =>
      [side, foldedHeading(reading.gauge!), foldedHeading(reading.day ?? ""), nameOf(reading)].join("|"),
    );
    this.#byGauge = groupedBy(
      [...campaigns.values()].map((own): MasterReadings & { gauge: string } => {
        const { side, reading } = own[0]!;
        return {
          gauge: foldedHeading(reading.gauge!),
          side,
          day: foldedHeading(reading.day ?? ""),
          name: nameOf(reading),
          readings: own.map((one) => one.reading),
        };
      }),
      ({ gauge }) => gauge,
    );
  }

  #unfit({ value, fault, gauge }: Reading, side: Campaign | undefined): string | undefined {
    if (value === null) return fault ?? "it is still blank";
    if (!gauge) return "no gauge is named";
    return side === undefined ? "nothing says whether it was read before or after" : undefined;
  }

  /** What the master of the gauge with which both were measured moved by; `ownU` is U of one reading's own part. `undefined` where it was not read in both, or another gauge measured. */
  between(before: Session, after: Session, ownU: readonly [number, number], side: Campaign = "after"): MasterChange | undefined {
    const [gauge, other] = [before, after].map(({ readings }) => readings[0]!.gauge ?? "") as [string, string];
    if (gauge === "" || foldedHeading(gauge) !== foldedHeading(other)) return undefined;
    const unit = before.readings[0]!.unit ?? after.readings[0]!.unit;
    const from = this.#of(gauge, "before", before, unit);
    const pair = from
      .map((one) => [one, this.#of(gauge, side, after, unit).find(({ name }) => name === one.name)] as const)
      .find(([, partner]) => partner !== undefined);
    if (pair === undefined) return undefined;
    const [start, end] = pair as readonly [MasterReadings, MasterReadings];
    return {
      ...{ gauge, moved: decimal(meanOf(end) - meanOf(start)), means: [meanOf(start), meanOf(end)], readings: [start.readings.length, end.readings.length] },
      before: doubtOf(start, ownU[0] / COVERAGE_FACTOR),
      after: doubtOf(end, ownU[1] / COVERAGE_FACTOR),
    };
  }

  #of(gauge: string, side: Campaign, { readings: [reading] }: Session, unit: string | undefined): MasterReadings[] {
    const day = foldedHeading(reading!.day ?? "");
    return (this.#byGauge.get(foldedHeading(gauge)) ?? []).filter(
      (one) =>
        one.side === side &&
        (day === "" || one.day === "" || one.day === day) &&
        one.readings.every((master) => master.unit === undefined || unit === undefined || master.unit === unit),
    );
  }

  /** What the masters come to, gauge by gauge: what was taken out of how many places, and which was not read in both campaigns. */
  notesOn(places: readonly { before: Session; after: Session; master: MasterChange | undefined }[], decimals: number): string[] {
    const used = groupedBy(
      places.filter(({ master }) => master !== undefined),
      ({ master }) => foldedHeading(master!.gauge),
    );
    const notes = [...used.values()].map((own) => {
      const { gauge, moved } = own[0]!.master!;
      const of = `the master of gauge ${gauge} read`;
      const size = fixed(Math.abs(moved), Math.max(decimals, decimalsOf(moved)));
      return moved === 0
        ? `${of} the same before and after: what its setting was off by cancels in ${counted(own.length, "place")}`
        : `${of} ${size} ${moved > 0 ? "larger" : "smaller"} after than before: taken out of ${counted(own.length, "place")}`;
    });
    for (const [gauge, readings] of this.#byGauge) {
      const name = readings[0]!.readings[0]!.gauge;
      const sides = new Set(readings.map(({ side }) => side));
      if (!used.has(gauge) && sides.size === 1)
        notes.push(`the master of gauge ${name} was read ${[...sides][0]} only, so nothing shows whether its setting moved: read it in both campaigns`);
      else if (!used.has(gauge))
        notes.push(`the master of gauge ${name} was read, but no place was measured with that gauge on those days, in its unit, before and after`);
      for (const one of readings) {
        const U = Math.max(...one.readings.map(({ uncertainty = 0 }) => uncertainty));
        if (U > 0 && Math.abs(driftOf(one)) > U)
          notes.push(
            `the master of gauge ${name} moved by ${uncertaintyText(Math.abs(driftOf(one)))} within the campaign ${one.side}, more than its U: measure again`,
          );
      }
    }
    return notes;
  }
}

const whereOf = ({ line, cell }: Reading): string => (line === undefined ? `${cell.sheet}, row ${cell.row + 1}` : `line ${line}`);

const meanOf = ({ readings }: MasterReadings): number => mean(readings.map(({ value }) => value!));

/** The master at the start of a campaign less that at its end. */
function driftOf({ readings }: MasterReadings): number {
  const of = (word: RegExp) => readings.filter(({ position }) => word.test(position)).map(({ value }) => value!);
  const [start, end] = [of(IN_SESSION.start), of(IN_SESSION.end)];
  if (start.length > 0 && end.length > 0) return mean(start) - mean(end);
  return readings[0]!.value! - readings.at(-1)!.value!;
}

/** u_r²/j of the master readings, and w²/12 for what the gauge drifts between the start and the end of the campaign. */
const doubtOf = (master: MasterReadings, own: number): number => Math.sqrt(own ** 2 / master.readings.length + driftOf(master) ** 2 / 12);
