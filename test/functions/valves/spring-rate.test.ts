import fc from "fast-check";
import { springRate } from "../../../src/functions/valves/spring-rate.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const rate = fc.integer({ min: 50, max: 900 }).map((tenths) => tenths / 10);
const free = fc.integer({ min: 400, max: 700 }).map((tenths) => tenths / 10);
const squeeze = fc.integer({ min: 10, max: 150 }).map((tenths) => tenths / 10);

describe("cited values", () => {
  // A machining firm's note on coil springs: free length 50 mm, 100 N at 40 mm, rate 10 N/mm.
  test("100 N at 40 mm of a spring 50 mm long is 10 N/mm", () => {
    expect(ask(springRate, 0, 50, 100, 40)).toBe(10);
  });

  // Hooke's law, EN 13906-1 R = ΔF/Δs (from memory); computed by hand: (520 − 250) / (40 − 31).
  test("250 N at 40 mm and 520 N at 31 mm is 30 N/mm", () => {
    expect(ask(springRate, 250, 40, 520, 31)).toBe(30);
  });
});

describe("identities", () => {
  test("a spring built to a rate measures that rate, at any two lengths and in either order", () => {
    fc.assert(
      fc.property(rate, free, squeeze, squeeze, (r, length, first, more) => {
        const [near, far] = [length - first, length - first - more];
        const [low, high] = [r * first, r * (first + more)];
        expect(number(springRate, low, near, high, far)).toBeCloseTo(r, 6);
        expect(number(springRate, high, far, low, near)).toBeCloseTo(r, 6);
      }),
      { numRuns: 400 },
    );
  });

  test("N/mm and lbf/in of one spring differ by 5.710147", () => {
    fc.assert(
      fc.property(rate, free, squeeze, (r, length, first) => {
        const [newton, inch] = [4.4482216152605, 25.4];
        const imperial = number(springRate, (r * first) / newton, (length - first) / inch, (r * first * 2) / newton, (length - 2 * first) / inch);
        expect(imperial).toBeCloseTo(r * (inch / newton), 4);
      }),
    );
  });
});

describe("at the limits", () => {
  test("springs down the sheet against one length each give a rate each", () => {
    expect(ask(springRate, [[250], [245]], 40, [[520], [506]], 31)).toEqual([[30], [29]]);
  });
});

describe("faults", () => {
  test("two equal lengths give no rate", () => {
    expect(ask(springRate, 250, 0.3, 520, 0.1 + 0.2)).toEqual({ code: "unfit", sentence: "SPRINGRATE: length2 0.3: a rate needs two different lengths" });
  });

  test("a spring that pushes less when shorter, or no harder, is refused", () => {
    const says = (force: number) => `SPRINGRATE: force2 ${force}: at length 31 it does not fit 250 at 40: a spring pushes harder when shorter`;
    expect(ask(springRate, 250, 40, 200, 31)).toEqual({ code: "unfit", sentence: says(200) });
    expect(ask(springRate, 250, 40, 250, 31)).toEqual({ code: "unfit", sentence: says(250) });
  });

  test("a negative force is refused", () => {
    expect(ask(springRate, -1, 40, 520, 31)).toEqual({ code: "too-small", sentence: "SPRINGRATE: force1 -1 is too small: it must be a force of at least 0" });
  });
});

describe("blanks", () => {
  test("a blank input leaves it blank; a first force of 0 is the free length", () => {
    for (const blank of BLANKS) expect(ask(springRate, blank, 50, 100, 40)).toBe("");
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(springRate, 250, blank, 520, 31)).toBe("");
      expect(ask(springRate, 250, 40, blank, 31)).toBe("");
      expect(ask(springRate, 250, 40, 520, blank)).toBe("");
    }
    expect(ask(springRate, 0, 50, 100, 40)).toBe(10);
  });
});
