import fc from "fast-check";
import { lobeLift } from "../../../src/functions/valves/lobe-lift.ts";
import { lobeWear } from "../../../src/functions/valves/lobe-wear.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const lift = fc.integer({ min: 400, max: 1200 }).map((hundredths) => hundredths / 100);
const worn = fc.integer({ min: -20, max: 300 });

describe("cited values", () => {
  // TM 5-3805-260-24 p. 1-11: over .010 in the camshaft is replaced. The lifts are ours.
  test("a lobe of .252 in that lifts .242 in has worn by .010 in", () => {
    expect(ask(lobeWear, 0.242, 0.252)).toBe(0.01);
  });
});

describe("identities", () => {
  test("standard = lift + wear to the typed digit, by the heights just as by the lifts, in inches the same", () => {
    fc.assert(
      fc.property(lift, worn, (standard, hundredths) => {
        const [now, wear] = [Number((standard - hundredths / 100).toFixed(2)), hundredths / 100 + 0];
        expect(number(lobeWear, now, standard)).toBe(wear);
        expect(number(lobeLift, 32 + standard, 32) - number(lobeLift, 32 + now, 32)).toBeCloseTo(wear, 8);
        expect(number(lobeWear, now / 25.4, standard / 25.4) * 25.4).toBeCloseTo(wear, 7);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("a lobe as new has no wear, one above its standard a negative one", () => {
    expect(ask(lobeWear, 6.4, 6.4)).toBe(0);
    expect(ask(lobeWear, 6.41, 6.4)).toBe(-0.01);
  });

  test("a fifth of the lift is still taken, less is not", () => {
    expect(ask(lobeWear, 1.28, 6.4)).toBe(5.12);
    expect(ask(lobeWear, 1.27, 6.4)).toMatchObject({ code: "units" });
  });
});

describe("faults", () => {
  test("a lift in inches beside a standard in millimetres is refused", () => {
    expect(ask(lobeWear, 0.252, 6.4)).toEqual({
      code: "units",
      sentence: "LOBEWEAR: lift 0.252 is about 1/25.4 of standard 6.4: is one in inches, the other in millimetres?",
    });
  });
});

describe("blanks", () => {
  test("a blank lift or standard leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(lobeWear, blank, 6.4)).toBe("");
      expect(ask(lobeWear, 6.4, blank)).toBe("");
    }
  });
});
