import { decimal, isAbove } from "../../core/decimal.ts";
import { define, row } from "../../core/define.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { grid } from "../../core/inputs.ts";
import { lineThrough } from "../../math/regression.ts";
import { sum } from "../../math/statistics.ts";

const COLUMNS = ["rate", "last interval", "trend"] as const;
/** Two intervals always lie on a line. */
const FEWEST_FOR_TREND = 3;

/** Oil used by an engine from what was added to bring it back to one mark. Source: common practice. */
export const oilRate = define({
  name: "OILRATE",
  group: "tests",
  role: "describes",
  summary: "Oil consumption from what was added at each hour or mile reading: rate, last interval and trend",
  definition:
    "rate = Σ added after the first ÷ (last use − first use); interval = added ÷ use since the one before; trend = slope of the intervals' rates on their middles",
  source: "common practice",
  params: {
    use: grid("number", "use at each topping up, such as hours or miles, rising; the first one starts the count"),
    added: grid("volume", "oil that brought it back to one mark; the first one only fills it and is not counted").atLeast(0),
  },
  returns: row(COLUMNS, "a row of labels and one of values: oil per unit of use, and how fast that grows; trend from three intervals on"),
  examples: [
    { formula: "=HATCH.OILRATE({100;150;200;260}, {4;0.2;0.25;0.36})", gives: [[...COLUMNS], [0.0050625, 0.006, 0.000019]] },
    { formula: "=HATCH.OILRATE({0,40}, {4.5,0.1})", gives: [[...COLUMNS], [0.0025, 0.0025, ""]] },
  ],
  notes: [
    "Always to the same mark, on level ground, and as long after stopping: a dipstick read hot and cold differs by more than an engine uses in a day.",
    "Oil that was changed is no oil used: start a new list at each change.",
    "A new engine uses more until its rings have bedded in. A rate that grows later asks for HATCH.BLOWBY, HATCH.LEAKDOWN and a look for leaks.",
    "An oil sample shows what was worn into the oil: take its content less that of fresh oil, by the hours on the oil. Oil added in between thins it.",
  ],
  compute: ({ use, added }) => {
    if (use.values.length !== added.values.length || (use.rows !== added.rows && use.rows !== 1 && use.columns !== 1))
      return new Fault("shape", "use", `${use.rows}×${use.columns}`, `added of ${added.rows}×${added.columns}`);
    // Rows below the last entry are not used yet. Some sheets hand them over as 0, and no use after another is 0.
    const isEmpty = (at: number) => !use.values[at] && !added.values[at];
    let count = use.values.length;
    while (count > 1 && isEmpty(count - 1)) count--;
    const [at, oil] = [use.values.slice(0, count), added.values.slice(0, count)];
    if (at.includes(null) || oil.slice(1).includes(null)) return COLUMNS.map(() => "");
    const [uses, counted] = [at as number[], oil.slice(1) as number[]];
    const stands = uses.findIndex((reading, i) => i > 0 && !isAbove(reading, uses[i - 1]!));
    if (stands > 0) return refuse("use", uses[stands], `after ${decimal(uses[stands - 1]!)} it must rise`);
    if (counted.length === 0) return use.values.length > 1 ? COLUMNS.map(() => "") : refuse("use", uses[0], "one reading is given, at least 2 are needed");
    const rates = counted.map((volume, i) => volume / (uses[i + 1]! - uses[i]!));
    const middles = counted.map((_, i) => (uses[i + 1]! + uses[i]!) / 2);
    const trend = counted.length < FEWEST_FOR_TREND ? "" : lineThrough(middles, rates)!.slope;
    return [sum(counted) / (uses.at(-1)! - uses[0]!), rates.at(-1)!, trend];
  },
});
