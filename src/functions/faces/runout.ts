import { decimal } from "../../core/decimal.ts";
import { define, row } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { grid } from "../../core/inputs.ts";
import { mean } from "../../math/statistics.ts";

const COLUMNS = ["total", "eccentricity", "direction", "left"] as const;
const FEWEST = 4;

/**
 * Run-out of a shaft or seat under an indicator, taken apart into what is off centre and what is form: the first
 * harmonic of the readings and what remains. Sources: geometry; TM 10-3930-653-14&P fig. 4-62 (bend is half of it).
 */
export const runout = define({
  name: "RUNOUT",
  group: "faces",
  role: "describes",
  summary: "Run-out from indicator readings round one turn: total, eccentricity, its direction, and the form left",
  definition:
    "total = max − min; a, b = 2 ÷ n × Σ reading × cos θ, sin θ; eccentricity = √(a² + b²) at atan2(b, a); left = max − min of reading − a cos θ − b sin θ",
  source: "first harmonic: geometry; a bend is half the run-out: TM 10-3930-653-14&P, fig. 4-62",
  params: {
    readings: grid("number", "indicator readings at equal steps round one turn, at least 4, the last not the first over again; any zero point"),
  },
  returns: row(COLUMNS, "a row of labels and one of values, in the unit of the readings; direction in degrees from the first reading"),
  draws: { kind: "runout", readings: "readings" },
  examples: [
    { formula: "=HATCH.RUNOUT({0,0.003,-0.002,0.003})", gives: [[...COLUMNS], [0.005, 0.001, 0, 0.004]] },
    { formula: "=HATCH.RUNOUT({0;0.02;0.04;0.02})", gives: [[...COLUMNS], [0.04, 0.02, 180, 0]] },
  ],
  notes: [
    "A bent shaft turns its centre round: the bend is half the total, the eccentricity here. What is left is out-of-round or dirt.",
    "direction counts the way the readings were taken; blank where nothing is off centre. Over a round part it is where the high side is.",
    "V-blocks hide some odd lobes and double others: what is left is then no measure of roundness. Turn the shaft between centres for that.",
    "Straightening can break a shaft later: the maker's service manual says whether it is allowed, and a crack test follows.",
  ],
  compute: ({ readings: { rows, columns, values } }) => {
    if (rows > 1 && columns > 1)
      return refuse("readings", `${rows}×${columns} cells`, "one row or one column is wanted, one reading after the other round the turn");
    if (values.length < FEWEST) return refuse("readings", values.length, `readings are too few, at least ${FEWEST} are needed`);
    if (values.includes(null)) return COLUMNS.map(() => "");
    const turns = values as number[];
    const angle = (i: number) => (2 * Math.PI * i) / turns.length;
    // About the mean, so that the zero point of the indicator takes no digits away.
    const middle = mean(turns);
    const off = turns.map((reading) => reading - middle);
    const a = 2 * mean(off.map((reading, i) => reading * Math.cos(angle(i))));
    const b = 2 * mean(off.map((reading, i) => reading * Math.sin(angle(i))));
    const form = off.map((reading, i) => reading - a * Math.cos(angle(i)) - b * Math.sin(angle(i)));
    const eccentricity = decimal(Math.hypot(a, b));
    const degrees = decimal(((Math.atan2(b, a) * 180) / Math.PI + 360) % 360);
    return [spread(turns), eccentricity, eccentricity === 0 ? "" : degrees % 360, spread(form)];
  },
});

const spread = (values: readonly number[]): number => decimal(Math.max(...values) - Math.min(...values));
