import { calcLevel } from "./calc-level.ts";
import { cellsLevel } from "./cells-level.ts";
import { csvLevel, csvSpellingLevel } from "./csv-level.ts";
import { mappingLevel } from "./mapping-level.ts";
import type { FuzzOutcome, Level } from "./outcome.ts";
import { FuzzRandom } from "./random.ts";
import { xmlLevel } from "./xml-level.ts";
import { bytesLevel, partsLevel } from "./zip-level.ts";

export const LEVELS: readonly Level[] = [bytesLevel, partsLevel, xmlLevel, cellsLevel, csvLevel, csvSpellingLevel, mappingLevel, calcLevel];

const TOTAL = LEVELS.reduce((sum, { weight }) => sum + weight, 0);

function levelOf(random: FuzzRandom): Level {
  let place = random.next() * TOTAL;
  return (
    LEVELS.find(({ weight }) => {
      place -= weight;
      return place < 0;
    }) ?? LEVELS[0]!
  );
}

export interface TriedInput {
  index: number;
  level: string;
  outcome: FuzzOutcome | "defect";
  /** What is wrong, for a defect. */
  what?: string;
  /** Processor time. */
  milliseconds: number;
}

/** One input of a seed, always the same: made, tried and looked at. */
export async function tryInput(seed: number, index: number): Promise<TriedInput> {
  const random = new FuzzRandom(seed, index);
  const level = levelOf(random);
  const before = process.cpuUsage();
  let outcome: TriedInput["outcome"] = "defect";
  let what: string | undefined;
  try {
    outcome = await level.run(random);
  } catch (error) {
    what = error instanceof Error ? (error.name === "Defect" ? error.message : String(error.stack)) : String(error);
  }
  const { user, system } = process.cpuUsage(before);
  return { index, level: level.name, outcome, milliseconds: (user + system) / 1000, ...(what === undefined ? {} : { what }) };
}
