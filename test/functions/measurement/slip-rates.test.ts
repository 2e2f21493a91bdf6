import { slipOf } from "../../../src/functions/measurement/slip.ts";
import { SeededNormal } from "../../helpers/normal.ts";

const RUNS = 2000;

/** What is read, how an honest reading of it spreads, and the window that somebody who knows the quantity would type. */
const QUANTITIES = [
  { what: "a bore of 73 mm in use, read to 0.01", nominal: 73, typical: 73.05, spread: 0.05, decimals: 2, window: 0.25 },
  { what: "a piston clearance of 0.04 mm, read to 0.001", nominal: 0.04, typical: 0.045, spread: 0.015, decimals: 3, window: 0.06 },
  { what: "a compression pressure of 12 bar, read to 0.1", nominal: 12, typical: 11.5, spread: 1, decimals: 1, window: 4 },
] as const;

type Quantity = (typeof QUANTITIES)[number];

/** Ways in which fingers go wrong, each on the digits of a number as typed; `pick` chooses one of so many. */
const SLIPS = {
  "decimal point": (text: string, pick: (of: number) => number) => String(Number(text) * [10, 100, 0.1, 0.01][pick(4)]!),
  "two digits swapped": (text: string, pick: (of: number) => number) => {
    const at = digitsIn(text);
    const first = pick(at.length - 1);
    return put(text, at[first]!, text[at[first + 1]!]!, at[first + 1]!, text[at[first]!]!);
  },
  "one digit wrong": (text: string, pick: (of: number) => number) => {
    const at = digitsIn(text);
    const place = at[pick(at.length)]!;
    return put(text, place, String((Number(text[place]) + 1 + pick(9)) % 10));
  },
};

const digitsIn = (text: string): number[] => [...text].flatMap((sign, at) => (sign === "." ? [] : [at]));

function put(text: string, ...changes: (number | string)[]): string {
  const signs = [...text];
  for (let i = 0; i < changes.length; i += 2) signs[changes[i] as number] = changes[i + 1] as string;
  return signs.join("");
}

/** In percent: honest readings that are called a slip, and slips of each kind that come to light, of those that change the number. */
function rates({ nominal, typical, spread, decimals }: Quantity, window: number): Record<string, number> {
  const random = new SeededNormal(911);
  const pick = (of: number): number => Math.min(of - 1, Math.floor(random.next() * of));
  const honest = Array.from({ length: RUNS }, () => Math.max(10 ** -decimals, typical + random.normal(spread)).toFixed(decimals));
  const share = (typed: readonly string[]): number =>
    Math.round((100 * typed.filter((text) => slipOf(Number(text), nominal, window) !== "").length) / typed.length);
  const planted = Object.entries(SLIPS).map(([name, slip]) => {
    const typed = honest.map((text) => slip(text, pick)).filter((text, i) => Number(text) !== Number(honest[i]) && Number(text) > 0);
    return [name, share(typed)];
  });
  return { honest: share(honest), ...Object.fromEntries(planted) };
}

// No outside table of keying slips exists: readings and slips are drawn by a seed, evenly over digits and kinds (common practice).
test.each([
  [QUANTITIES[0], { honest: 0, "decimal point": 100, "two digits swapped": 92, "one digit wrong": 70 }],
  [QUANTITIES[1], { honest: 0, "decimal point": 50, "two digits swapped": 52, "one digit wrong": 50 }],
  [QUANTITIES[2], { honest: 0, "decimal point": 100, "two digits swapped": 63, "one digit wrong": 48 }],
] as const)("$what: of 100 honest readings and of 100 slips of each kind so many are called slips", (quantity, expected) => {
  expect(rates(quantity, quantity.window)).toEqual(expected);
});

test("a tenth of the nominal serves no quantity: honest clearances are called slips, and slips on a bore pass", () => {
  expect(rates(QUANTITIES[1], 0.1 * QUANTITIES[1].nominal).honest).toBe(72);
  expect(rates(QUANTITIES[0], 0.1 * QUANTITIES[0].nominal)["one digit wrong"]).toBe(26);
});
