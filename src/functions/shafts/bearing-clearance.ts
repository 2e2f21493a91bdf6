import { oddCell } from "../../core/broadcast-elements.ts";
import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { define, row } from "../../core/define.ts";
import { Fault, refuse, unlike } from "../../core/fault.ts";
import { grid } from "../../core/inputs.ts";
import type { NumberGrid } from "../../core/param.ts";
import { mean } from "../../math/statistics.ts";

const COLUMNS = ["least", "mean", "most", "least at row", "least at axis"] as const;
/** No bearing that still runs is as loose beside its journal; a wall left out or taken for two is. */
const LOOSEST = 1 / 50;

/**
 * Oil clearance of a shell bearing, on the diameter, from the bore of its housing, the walls of its
 * shells and its journal. Sources: TM 9-2815-202-34 p. 4-156 (shells are measured at the crown),
 * TM 5-3810-300-24&P-3 p. 74 (an undersize is on the diameter, a wall grows by half of it).
 */
export const bearingClearance = define({
  name: "BEARINGCLEARANCE",
  group: "shafts",
  role: "describes",
  summary: "Oil clearance of a shell bearing: least, mean and most, and where the least is",
  definition:
    "at each place: housing − walls − largest journal of that row, as the journal turns; walls = 2 × shell, or upper + lower; most takes the smallest journal; mean = mean housing − walls − mean journal",
  source: "walls at the crown: TM 9-2815-202-34 p. 4-156; undersizes: TM 5-3810-300-24&P-3 p. 74; all places and the turning journal: geometry",
  params: {
    housing: grid("length", "bore of the housing with its cap tight: rows along the bearing, columns are axes"),
    shell: grid("length", "wall of one shell at its crown, or of upper and lower; 0 if the bore was measured with the shells in").atLeast(0),
    journal: grid("length", "journal: rows as in housing, or one row for all; columns are axes, as many as were measured"),
  },
  returns: row(COLUMNS, "a row of labels and one of values, in the unit of the housing; the row and the axis of the least count from 1"),
  examples: [
    {
      formula: "=HATCH.BEARINGCLEARANCE({54.01,54.012;54.008,54.01}, 1.98, {50,49.99;49.99,49.98})",
      gives: [[...COLUMNS], [0.05, 0.06, 0.07, 1, 1]],
    },
    { formula: "=HATCH.BEARINGCLEARANCE(50.06, 0, {50,49.99})", gives: [[...COLUMNS], [0.06, 0.065, 0.07, 1, 1]] },
  ],
  notes: [
    "Tighten the cap as the maker says before measuring the housing. A shell is measured at its crown: towards the parting line it is made thinner, so that the bearing is wider there.",
    "An undersize is on the diameter: a shell of 0.50 undersize has a wall that is 0.25 thicker.",
    "The shells' crush may close the housing's bore a little: measured with the shells in and 0 for the shell, that is in the figure.",
    "A clearance of more than a fiftieth of the journal is refused: a wall is missing or taken twice.",
    "The maker's service manual decides what a bearing needs. A plastic strip under the cap checks it before assembly.",
  ],
  compute: ({ housing, shell, journal }) => {
    const fault = oddCell("housing", housing) ?? shellFault(shell) ?? oddCell("journal", journal);
    if (fault) return fault;
    if (journal.rows !== 1 && journal.rows !== housing.rows)
      return new Fault("shape", "journal", `${journal.rows}×${journal.columns}`, `housing of ${housing.rows}×${housing.columns}`);
    if ([housing, shell, journal].some(({ values }) => values.includes(null))) return COLUMNS.map(() => "");
    const wall = shell.values as number[];
    const walls = wall.length === 1 ? 2 * wall[0]! : wall[0]! + wall[1]!;
    const places = (housing.values as number[]).map((bore, at) => {
      const line = rowOf(journal, Math.floor(at / housing.columns));
      return { least: decimal(bore - walls - Math.max(...line)), most: decimal(bore - walls - Math.min(...line)) };
    });
    const tightest = places.reduce((best, { least }, at) => (least < places[best]!.least ? at : best), 0);
    const { least } = places[tightest]!;
    const most = Math.max(...places.map((place) => place.most));
    const [pin, bore] = [Math.max(...(journal.values as number[])), housing.values[tightest] as number];
    const apart = unlike("journal", pin, "housing", bore, 2);
    if (apart) return apart;
    if (isBelow(least, 0)) return refuse("shell", wall[0], `with it a journal of ${pin} does not go into a housing of ${bore}: is shell one wall?`);
    if (isAbove(most, LOOSEST * pin))
      return refuse("shell", wall[0], `it leaves a clearance of ${most}, more than a fiftieth of the journal: is it one wall, and 0 only with the shells in?`);
    const middle = decimal(mean(housing.values as number[]) - walls - mean(journal.values as number[]));
    return [least, middle, most, Math.floor(tightest / housing.columns) + 1, (tightest % housing.columns) + 1];
  },
});

const rowOf = ({ rows, columns, values }: NumberGrid, at: number): number[] => {
  const start = rows === 1 ? 0 : at * columns;
  return values.slice(start, start + columns) as number[];
};

function shellFault(shell: NumberGrid): Fault | undefined {
  if (shell.values.length > 2) return refuse("shell", shell.values.length, "walls are too many: one wall is wanted, or those of the upper and the lower shell");
  const zeros = shell.values.filter((wall) => wall === 0).length;
  if (zeros === 1 && shell.values.length === 2)
    return shell.values.includes(null) ? undefined : refuse("shell", 0, "beside another wall it is none: 0 is for a bore measured with both shells in");
  return zeros ? undefined : oddCell("shell", shell);
}
