import { decimal, isBelow } from "../../core/decimal.ts";
import { define, table } from "../../core/define.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { type Cells, cells, number } from "../../core/param.ts";
import { checkText, show } from "../../core/sentences.ts";
import { inShape } from "./in-shape.ts";

/**
 * What a wet compression test points at. Source: TM 5-1185: a gain with oil points at the rings, no
 * gain at the valves, two low cylinders side by side at the head gasket between them.
 */
export const wetTest = define({
  name: "WETTEST",
  group: "tests",
  summary: "Reads a wet compression test: what each low cylinder points at, rings, valves or head gasket",
  definition: "low: dry < low × highest dry; rings: wet − dry ≥ gain × dry; otherwise head gasket beside another low cylinder, else valves",
  source: "TM 5-1185, compression test with oil; gain of 0.1 and low of 0.75: common practice",
  params: {
    dry: cells("pressure", "reading of each cylinder, dry; neighbours in the engine side by side, each bank in its own column"),
    wet: cells("pressure", "reading of each with a little oil in the cylinder, in the shape of dry"),
    gain: number("least gain that counts, as a share of the dry reading").above(0).atMost(1).default(0.1),
    low: number("share of the highest dry reading below which a cylinder is low").above(0).atMost(1).default(0.75),
  },
  returns: table("for each cylinder the part that the test points at, in the shape of dry; blank where a reading is missing"),
  examples: [
    { formula: "=HATCH.WETTEST(90, 130)", gives: [["rings: from 90 to 130 with oil"]] },
    {
      formula: "=HATCH.WETTEST({150;100;152}, {155;104;158})",
      gives: [["not low: 150, highest 152"], ["valves: from 100 to 104 with oil"], ["not low: 152, highest 152"]],
    },
    {
      formula: "=HATCH.WETTEST({150,90,92}, {155,93,95})",
      gives: [
        [
          "not low: 150, highest 150",
          "head gasket: from 90 to 93 with oil, beside another low cylinder",
          "head gasket: from 92 to 95 with oil, beside another low cylinder",
        ],
      ],
    },
  ],
  notes: [
    "It points, it does not prove: a leak-down test with an ear at intake, exhaust, breather and coolant tells more.",
    "A cylinder given alone is taken to be low.",
    "Use a teaspoon of oil: a cylinder with too much locks up and bends its rod. Ignition off, fuel shut off, clear of all that turns.",
  ],
  compute: ({ dry, wet, gain, low }) => {
    if (dry.rows !== wet.rows || dry.columns !== wet.columns)
      return new Fault("shape", "wet", `${wet.rows}×${wet.columns}`, `dry of ${dry.rows}×${dry.columns}`);
    const read = dry.values.filter((cell): cell is number => typeof cell === "number");
    const highest = read.reduce((a, b) => Math.max(a, b), 0);
    const isLow = (at: number) => typeof dry.values[at] === "number" && (read.length === 1 || isBelow(dry.values[at], decimal(low * highest)));
    const gained = (at: number) => rise(dry.values[at]!, wet.values[at]!, gain) === 1;
    return inShape(dry, (before, at) => {
      const after = wet.values[at]!;
      if (before instanceof Fault) return checkText(before);
      if (after instanceof Fault) return checkText(after);
      if (before === null || after === null) return "";
      if (rise(before, after, gain) === -1) return checkText(refuse("wet", after, `oil cannot lower a reading of ${show(before)}, measure both again`));
      if (!isLow(at)) return `not low: ${show(before)}, highest ${show(highest)}`;
      const change = `from ${show(before)} to ${show(after)} with oil`;
      if (gained(at)) return `rings: ${change}`;
      const beside = neighbours(dry, at).some((other) => isLow(other) && !gained(other));
      return beside ? `head gasket: ${change}, beside another low cylinder` : `valves: ${change}`;
    });
  },
});

/** 1 for a gain that counts, −1 for a loss as large, 0 for neither or for readings that are not there. */
function rise(before: Cells["values"][number], after: Cells["values"][number], gain: number): -1 | 0 | 1 {
  if (typeof before !== "number" || typeof after !== "number") return 0;
  const change = decimal(after - before);
  const counts = decimal(gain * before);
  if (!isBelow(change, counts)) return 1;
  return isBelow(change, -counts) ? -1 : 0;
}

/** The places before and after one in its bank: up and down its column, or along a single row. At an end one of them is no cylinder. */
function neighbours({ rows, columns }: Cells, at: number): number[] {
  const pace = rows === 1 ? 1 : columns;
  return [at - pace, at + pace];
}
