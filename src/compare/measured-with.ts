import { Gauges } from "../check/gauges.ts";
import { type Cell, isBlank } from "../core/cell.ts";
import { unitWords } from "../core/words.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import { CHARACTERISTICS } from "../vocabulary/characteristics.ts";
import { SECOND_READINGS } from "../vocabulary/heading-words.ts";
import { foldedHeading, gaugeFieldOf, isCommonPart } from "../vocabulary/headings.ts";
import { headingKey, measuredTogether } from "../vocabulary/measured-together.ts";
import { isRecheck } from "../vocabulary/run-in.ts";
import { measuredBy } from "../vocabulary/subjects.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import { dayIn, type Reading } from "./readings.ts";

/** With which gauge some parts were measured, and when. */
interface Use {
  uncertainty: number | undefined;
  gauge: string;
  day: string;
}

/**
 * Tables of what was measured with which gauge: `Pins and pin bores | BG-1 | … | 0.002`. They give a reading
 * the uncertainty of its gauge, and the session in which it was taken.
 */
export class MeasuredWith {
  readonly #uses = new Map<string, Use>();
  readonly #secondUses = new Map<string, Use>();
  readonly #gauges: Gauges;
  /** What a person should know, in sentences. */
  readonly notes = new Set<string>();
  /** The common part of U of each gauge for which one was typed; 0 says that there is none. */
  readonly #common = new Map<string, number>();

  constructor(book: WorkbookCells) {
    this.#gauges = new Gauges(book);
    for (const sheet of book.sheets) {
      this.#readCommon(sheet);
      this.#readTables(sheet);
    }
  }

  /** Gives a typed reading what is known of its gauge, where its row does not say it itself. */
  fill(reading: Reading): void {
    const use = this.#useFor(reading);
    if (use && reading.gauge === undefined && use.gauge !== "") reading.gauge = use.gauge;
    if (use && reading.day === undefined && use.day !== "") reading.day = use.day;
    const ofGauge = reading.gauge === undefined ? undefined : this.#gauges.uncertaintyOf(reading.gauge, reading.unit);
    const ofUse = this.#isInAnotherUnit(reading) ? undefined : use?.uncertainty;
    const known = reading.uncertainty || ofGauge || ofUse;
    if (!known) return;
    reading.uncertainty = known;
    const common = reading.gauge === undefined ? undefined : this.#common.get(foldedHeading(reading.gauge));
    if (common !== undefined && common <= known) reading.common ??= common;
  }

  /** U of its gauge is in another unit than the reading: that says nothing of it, and is told. */
  #isInAnotherUnit({ gauge = "", unit }: Reading): boolean {
    const own = this.#gauges.unitOf(gauge);
    if (own === undefined || unit === undefined || own === unit) return false;
    this.notes.add(`U of gauge ${gauge} is in ${unitWords(own)} and what it measured in ${unitWords(unit)}: it is left out, so give it in ${unitWords(unit)}`);
    return true;
  }

  /** `Gauge | U | Common part of U`, one gauge a row. */
  #readCommon({ values }: SheetSnapshot): void {
    let at: { gauge: number; common: number } | undefined;
    for (const line of values) {
      const find = (is: (heading: string) => boolean): number => line.findIndex((cell) => typeof cell === "string" && is(cell));
      const [gauge, common] = [find((heading) => gaugeFieldOf(heading) === "gauge"), find(isCommonPart)];
      if (gauge >= 0 && common >= 0) at = { gauge, common };
      else if (line.every(isBlank)) at = undefined;
      else if (at) {
        const [id, part] = [line[at.gauge], line[at.common]];
        if (typeof part === "number" && part >= 0 && !isBlank(id) && typeof id !== "object") this.#common.set(foldedHeading(String(id)), part);
      }
    }
  }

  #readTables({ values }: SheetSnapshot): void {
    let at: { name: number; gauge: number; uncertainty: number | undefined; used: number | undefined } | undefined;
    for (const line of values) {
      const fields = line.map((cell) => (typeof cell === "string" ? gaugeFieldOf(cell) : undefined));
      const gauge = fields.indexOf("gauge");
      const name = line.findIndex((cell) => !isBlank(cell));
      const has = (field: "uncertainty" | "used"): number | undefined => (fields.includes(field) ? fields.indexOf(field) : undefined);
      if (gauge >= 0 && (has("uncertainty") ?? has("used")) !== undefined) {
        at = name < gauge ? { name, gauge, uncertainty: has("uncertainty"), used: has("used") } : undefined;
      } else if (line.every(isBlank)) at = undefined;
      else if (at)
        this.#take(line[at.name], line[at.gauge], at.uncertainty === undefined ? null : line[at.uncertainty], at.used === undefined ? null : line[at.used]);
    }
  }

  #take(name: Cell, gauge: Cell, uncertainty: Cell, used: Cell): void {
    if (typeof name !== "string") return;
    const id = isBlank(gauge) || typeof gauge === "object" ? "" : String(gauge).trim();
    const known = typeof uncertainty === "number" && uncertainty > 0 ? uncertainty : id === "" ? undefined : this.#gauges.uncertaintyOf(id, undefined);
    if (known === undefined && id === "") return;
    const use = { uncertainty: known, gauge: id, day: isBlank(used) || typeof used === "object" ? "" : dayIn(used) };
    if (isRecheck(name)) return;
    const uses = SECOND_READINGS.test(name) ? this.#secondUses : this.#uses;
    for (const part of measuredTogether(name) ?? partsIn(name.replace(SECOND_READINGS, ""))) uses.set(part, use);
  }

  /** By its heading, by the very characteristic, or by the part that it is of: `Rings` of a ring width. */
  #useFor({ characteristic, position, repeats, cell }: Reading): Use | undefined {
    const uses = repeats === undefined ? this.#uses : this.#secondUses;
    const byHeading = uses.get(headingKey(characteristic, cell.sheet)) ?? uses.get(headingKey(characteristic));
    if (byHeading !== undefined) return byHeading;
    const name = singular(measuredBy(characteristic, position).characteristic);
    const words = name.split(" ");
    return uses.get(name) ?? uses.get(TEST_OF[name] ?? "") ?? (words.length > 1 ? uses.get(words[0]!) : undefined);
  }
}

/** Read on the same gauge. */
const TEST_OF: Readonly<Record<string, string>> = { "wet compression": "compression pressure" };

/** The parts that a name lists: `Pins and pin bores`. */
function partsIn(name: string): string[] {
  return name.split(/,|&|\/|\band\b/i).flatMap((piece) => {
    const text = piece.trim();
    return text === "" ? [] : [singular(measuredBy(text, "").characteristic)];
  });
}

const singular = (name: string): string => (Object.hasOwn(CHARACTERISTICS, name) ? name : foldedHeading(name).replace(/s$/, ""));
