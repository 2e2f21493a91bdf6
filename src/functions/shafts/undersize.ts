import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { choice, length, readings } from "../../core/inputs.ts";
import type { NumberGrid } from "../../core/param.ts";
import { CENTRINGS, type Centring, cleansUp } from "../cylinder/oversize.ts";

export const journalReadings = () => readings("journal readings: rows are places along the journal, columns are axes");

/** The params that both functions share beside the readings and the list. */
export const grindingParams = {
  allowance: length("least stock to leave for grinding, on the diameter").atLeast(0).default(0).chosen(),
  centring: choice("true: ground on the original centre line; worn: on the worn journal", CENTRINGS).default("true"),
};

/** For the help of both. */
export const GRINDING_NOTES = [
  "Ground on its own wear a crankpin changes stroke and timing: it wears on one side, so true counts that wear twice. worn is for journals whose centre may move.",
  "Shells of a very small undersize, such as .002 in, are for journals that are not ground (TM 5-4320-300-14 p. 6-103): leave them off the list.",
  "Without an allowance any cut at all counts as cleaning up: the new size is smaller than the needed one, by however little.",
  "Fillets, hardness, cracks and which undersizes a crankshaft bears are the grinder's and the maker's service manual's to say.",
];

/** What stands in the cell when no listed undersize cleans up. */
export const NO_UNDERSIZE = "none: new shaft";

/**
 * The size that a journal must be ground to before it cleans up: its smallest reading, or on the original
 * centre line that less the wear once more, since all of it may be on one side.
 */
export function neededJournal(smallest: number, standard: number, allowance: number, centring: Centring): number {
  const oneSided = centring === "true" ? Math.max(standard - smallest, 0) : 0;
  return decimal(smallest - oneSided - allowance);
}

/** No undersize takes as much off its journal; millimetres beside inches do. */
const LARGEST_SHARE = 0.05;
/** A list that ends below this holds shells for worn journals, or inches beside millimetres. */
const SMALLEST_SHARE = 0.001;

function undersizeFault(undersizes: readonly number[], standard: number): Fault | undefined {
  const finished = undersizes.find((undersize) => isAbove(undersize, standard / 2));
  if (finished !== undefined) return refuse("undersizes", finished, `type what is taken off the standard journal ${standard}, not the finished size`);
  const large = undersizes.find((undersize) => isAbove(undersize, LARGEST_SHARE * standard));
  return large === undefined
    ? undefined
    : refuse("undersizes", large, `no undersize is more than a twentieth of the standard journal, ${standard}: are both in one unit?`);
}

/** A listed undersize with the size that its journal is ground to. */
interface Grinding {
  undersize: number;
  finish: number;
}

/** The shells of each undersize as measured, and what they are to run with. */
export interface FittedShells {
  housing?: number | undefined;
  shells?: NumberGrid | undefined;
  clearance?: number | undefined;
}

/** A ground size worked out from a shell lies nearer than this to standard − undersize, or the shell is another. */
const FURTHEST_OFF = 1 / 100;

/**
 * Each listed undersize, the smallest first. Where `shells` holds the measured wall of its shell the journal is ground to
 * housing − 2 × wall − clearance, otherwise to standard − undersize.
 */
export function grindingsOf(standard: number, undersizes: NumberGrid, { housing, shells, clearance }: FittedShells = {}): Grinding[] | Fault {
  const fault = undersizeFault(
    undersizes.values.filter((undersize) => undersize !== null),
    standard,
  );
  if (fault) return fault;
  const shape = ({ rows, columns }: NumberGrid) => `${rows}×${columns}`;
  if (shells && shape(shells) !== shape(undersizes)) return new Fault("shape", "shells", shape(shells), `undersizes of ${shape(undersizes)}`);
  if (shells && housing === undefined) return new Fault("missing", "housing", undefined, "the bore of the housing that the shells go into");
  if (shells && clearance === undefined) return new Fault("missing", "clearance", undefined, "the oil clearance to grind for");
  const listed: Grinding[] = [];
  for (const [at, undersize] of undersizes.values.entries()) {
    if (undersize === null) continue;
    const wall = shells?.values[at];
    const finish = decimal(wall ? housing! - 2 * wall - clearance! : standard - undersize);
    if (wall && isAbove(Math.abs(finish - (standard - undersize)), FURTHEST_OFF * standard))
      return refuse("shells", wall, `in housing ${housing} it would have the journal ground to ${finish} for undersize ${undersize}: is it one wall?`);
    listed.push({ undersize, finish });
  }
  return listed.sort((a, b) => a.undersize - b.undersize);
}

/** The smallest undersize that cleans a journal up, or what is said where none does: a shaft is not condemned by a list that may be in another unit. */
export function grindingFor(needed: number, grindings: readonly Grinding[], standard: number, allowance: number): Grinding | string | Fault {
  // A journal cleans up as a bore does, with small and large changed about.
  const found = grindings.find(({ finish }) => cleansUp(needed, finish, allowance));
  if (found) return found;
  const largest = Math.max(...grindings.map(({ undersize }) => undersize));
  if (!isBelow(largest, SMALLEST_SHARE * standard)) return NO_UNDERSIZE;
  return refuse(
    "undersizes",
    largest,
    `even the largest cleans nothing up, and is less than a thousandth of the standard journal, ${standard}: are both in one unit?`,
  );
}
