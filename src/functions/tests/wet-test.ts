import { placeIn } from "../../core/broadcast-elements.ts";
import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { define, table } from "../../core/define.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { cells, choice, number } from "../../core/inputs.ts";
import type { Cells } from "../../core/param.ts";
import { checkText, show } from "../../core/sentences.ts";
import { boundBy, type CompressionRule, inShape, RULES, ruleFault, short, ZERO_PRESSURE_NOTE } from "./compression-rule.ts";

const DEFAULT_SHARE = 0.75;

const low = number("limit of the rule, as in COMPRESSIONCHECK; blank for a share of 0.75, the other rules need theirs typed").above(0);

/**
 * What a wet compression test points at. Source: TM 5-1185: a gain with oil points at the rings, no
 * gain at the valves, two low cylinders side by side at the head gasket between them. That last needs
 * the wet reading of both, so a cylinder waits for its low neighbour.
 */
export const wetTest = define({
  name: "WETTEST",
  group: "tests",
  role: "describes",
  summary: "Reads a wet compression test: what each low cylinder points at, rings, valves or head gasket",
  definition:
    "low: by the rule of COMPRESSIONCHECK; rings: wet − dry ≥ gain × dry; otherwise head gasket beside a low cylinder that gains nothing either, else valves",
  source: "TM 5-1185, compression test with oil; gain of 0.1 and share of 0.75: common practice",
  params: {
    dry: cells("pressure", "reading of each cylinder, dry; neighbours in the engine side by side, each bank in its own column").atLeast(0),
    wet: cells("pressure", "reading of each with a little oil in the cylinder, in the shape of dry").atLeast(0),
    gain: number("least gain that counts, as a share of the dry reading").above(0).atMost(1).default(0.1).chosen(),
    low: low.optional().chosen(),
    rule: choice("share: of the highest; average: so far below the average; difference: so far below the highest", RULES).default("share"),
  },
  returns: table("for each cylinder the part that the test points at, or what to test first, in the shape of dry; blank where a reading is missing"),
  draws: { kind: "compression", pressures: "dry", rule: "rule", limit: "low" },
  examples: [
    { formula: "=HATCH.WETTEST(90, 130)", gives: [["rings: from 90 to 130 with oil"]] },
    {
      formula: '=HATCH.WETTEST({150;100;152}, {155;104;158}, , 20, "difference")',
      gives: [
        ["not low: 150, difference rule asks at least 132 (highest 152 less 20)"],
        ["valves: from 100 to 104 with oil; difference rule asks at least 132 (highest 152 less 20)"],
        ["not low: 152, difference rule asks at least 132 (highest 152 less 20)"],
      ],
    },
    {
      formula: '=HATCH.WETTEST({150,90,92}, {155,93,""})',
      gives: [
        [
          "not low: 150, default share rule asks at least 112.5 (0.75 of the highest, 150)",
          "wait: from 90 to 93 with oil, test the low cylinder beside it with oil too (column 3); default share rule asks at least 112.5 (0.75 of the highest, 150)",
          "",
        ],
      ],
    },
  ],
  notes: [
    "It points, it does not prove: a leak-down test with an ear at intake, exhaust, breather and coolant tells more.",
    "Without a limit typed it takes 0.75 of the highest, and says so: type the maker's rule and limit, those of HATCH.COMPRESSIONCHECK.",
    "Two low cylinders side by side point at the gasket only when neither gains with oil: until both have a wet reading the answer is wait.",
    "A cylinder given alone is taken to be low. One that shows nothing dry gains when oil brings it a tenth (gain) of the highest reading.",
    "Use a teaspoon of oil: a cylinder with too much locks up and bends its rod. Ignition off, fuel shut off, clear of all that turns.",
    ZERO_PRESSURE_NOTE,
  ],
  compute: ({ dry, wet, gain, low: typedLimit, rule }) => {
    if (dry.rows !== wet.rows || dry.columns !== wet.columns)
      return new Fault("shape", "wet", `${wet.rows}×${wet.columns}`, `dry of ${dry.rows}×${dry.columns}`);
    const limit = typedLimit ?? (rule === "share" ? DEFAULT_SHARE : undefined);
    if (limit === undefined) return new Fault("missing", "low", undefined, `${low.want}, as the ${rule} rule has no usual limit`);
    const bound = boundOf(dry, rule, limit, typedLimit === undefined);
    if (bound instanceof Fault) return bound;
    const test = { dry, wet, gain, ...bound };
    return inShape(dry, (_, at) => saidOf(test, at));
  },
});

interface Test {
  dry: Cells;
  wet: Cells;
  gain: number;
  highest: number;
  /** Below this a cylinder is low. */
  lower: number;
  /** How the rule is named in a result; empty for a cylinder alone, which needs none. */
  asks: string;
}

function boundOf(dry: Cells, rule: CompressionRule, limit: number, isDefault: boolean): Pick<Test, "highest" | "lower" | "asks"> | Fault {
  const read = dry.values.filter((cell): cell is number => typeof cell === "number");
  const highest = read.reduce((a, b) => Math.max(a, b), 0);
  if (read.length < 2) return { highest, lower: Number.POSITIVE_INFINITY, asks: "" };
  const { lower, why } = boundBy(rule, limit, read);
  const asks = `${isDefault ? "default " : ""}${rule} rule asks at least ${short(lower)} (${why})`;
  return ruleFault(rule, limit, "low", read, "dry") ?? { highest, lower, asks };
}

function saidOf(test: Test, at: number): string {
  const [before, after] = [test.dry.values[at]!, test.wet.values[at]!];
  if (before instanceof Fault) return checkText(before);
  if (after instanceof Fault) return checkText(after);
  if (before === null || after === null) return "";
  if (rise(test, at) === -1) return checkText(refuse("wet", after, `oil cannot lower a reading of ${show(before)}, measure both again`));
  if (!isLow(test, at)) return `not low: ${show(before)}, ${test.asks}`;
  const change = `from ${show(before)} to ${show(after)} with oil`;
  const why = test.asks && `; ${test.asks}`;
  if (rise(test, at) === 1) return `rings: ${change}${why}`;
  const beside = neighbours(test.dry, at);
  if (beside.some((other) => isLow(test, other) && rise(test, other) === 0)) return `head gasket: ${change}, beside another low cylinder${why}`;
  const untested = beside.find((other) => isLow(test, other) && rise(test, other) !== 1);
  if (untested !== undefined) return `wait: ${change}, test the low cylinder beside it with oil too (${placeOf(test.dry, untested)})${why}`;
  const unread = beside.find((other) => isUnread(test.dry, other));
  if (unread !== undefined) return `wait: ${change}, test the cylinder beside it dry first (${placeOf(test.dry, unread)})${why}`;
  return `valves: ${change}${why}`;
}

function isLow({ dry, lower }: Test, at: number): boolean {
  const read = dry.values[at];
  return typeof read === "number" && isBelow(read, lower);
}

/** 1 for a gain that counts, −1 for a loss as large, 0 for neither; undefined where a reading is not there. */
function rise({ dry, wet, gain, highest }: Test, at: number): -1 | 0 | 1 | undefined {
  const [before, after] = [dry.values[at], wet.values[at]];
  if (typeof before !== "number" || typeof after !== "number") return undefined;
  const change = decimal(after - before);
  // No share of a reading of 0 could be gained: there the highest stands for it.
  const counts = decimal(gain * (isAbove(before, 0) ? before : highest));
  if (isAbove(change, 0) && !isBelow(change, counts)) return 1;
  return isBelow(change, -counts) ? -1 : 0;
}

const pace = ({ rows, columns }: Cells): number => (rows === 1 ? 1 : columns);

/** The places before and after one in its bank: up and down its column, or along a single row. At an end one of them is no cylinder. */
const neighbours = (dry: Cells, at: number): number[] => [at - pace(dry), at + pace(dry)].filter((other) => other >= 0 && other < dry.values.length);

/** A cylinder that is there and has no dry reading yet. Blank places before the first and after the last reading of a bank are no cylinders. */
function isUnread(dry: Cells, at: number): boolean {
  if (dry.values[at] !== null) return dry.values[at] instanceof Fault;
  const bank = [...dry.values.keys()].filter((place) => (place - at) % pace(dry) === 0 && dry.values[place] !== null);
  return bank.some((place) => place < at) && bank.some((place) => place > at);
}

const placeOf = ({ rows, columns }: Cells, at: number): string => placeIn(rows, columns, Math.floor(at / columns), at % columns)!;
