import fc from "fast-check";
import { cleansUp, neededSize } from "../../../src/functions/cylinder/oversize.ts";
import { reboreSize } from "../../../src/functions/cylinder/rebore-size.ts";
import { bore, inInches } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO } from "../ask.ts";

const STEPS = [[0.25, 0.5, 0.75, 1]];

describe("cited values", () => {
  // TM 55-1905-219-14-10 p. 5-368: an average bore over 4.6285 in goes to the +.005 size, bored to
  // 4.631; the next are 4.636 and 4.646, from a standard bore of 4.626 in.
  test.each([
    [4.6286, 0.005],
    [4.6309, 0.005],
    [4.631, 0.01],
    [4.6359, 0.01],
    [4.636, 0.02],
    [4.6459, 0.02],
    [4.646, "none: sleeve"],
  ])("a bore of %p in gets %p by TM 55-1905-219-14-10", (size, oversize) => {
    expect(ask(reboreSize, size, 4.626, [[0.005, 0.01, 0.02]])).toBe(oversize);
  });

  // Metric steps of 0.25 mm, chosen on the largest bore: common practice.
  test("metric steps of 0.25 mm, chosen on the largest reading", () => {
    expect(
      ask(
        reboreSize,
        [
          [73.11, 73.3],
          [73.05, 73.02],
        ],
        73,
        STEPS,
      ),
    ).toBe(0.5);
  });

  // Geometry: with all the wear w on one side the far wall stands at standard/2 + w from the true
  // centre line, so the diameter that reaches it is standard + 2w.
  test("kept on the true centre line a bore needs twice its wear", () => {
    expect(ask(reboreSize, 73.2, 73, STEPS, 0, "worn")).toBe(0.25);
    expect(ask(reboreSize, 73.2, 73, STEPS, 0, "true")).toBe(0.5);
  });
});

describe("identities", () => {
  const centring = fc.constantFrom("worn", "true");
  const allowance = fc.integer({ min: 0, max: 10 }).map((hundredths) => hundredths / 100);

  test("the answer cleans up and no smaller listed size does", () => {
    fc.assert(
      fc.property(bore, centring, allowance, (readings, how, stock) => {
        const needed = neededSize(Math.max(...readings.flat()), 73, stock, how as "worn");
        const enough = STEPS[0]!.filter((oversize) => cleansUp(73 + oversize, needed, stock));
        expect(ask(reboreSize, readings, 73, STEPS, stock, how)).toBe(enough[0] ?? "none: sleeve");
      }),
    );
  });

  test("the order and the shape of the list do not matter", () => {
    fc.assert(
      fc.property(bore, fc.shuffledSubarray(STEPS[0]!, { minLength: 4 }), (readings, steps) => {
        const answer = ask(reboreSize, readings, 73, STEPS);
        expect(ask(reboreSize, readings, 73, [steps])).toBe(answer);
        expect(
          ask(
            reboreSize,
            readings,
            73,
            steps.map((step) => [step]),
          ),
        ).toBe(answer);
      }),
    );
  });

  test("more allowance and the true centre line never give a smaller oversize", () => {
    const rank = (answer: unknown) => (typeof answer === "number" ? answer : Number.POSITIVE_INFINITY);
    fc.assert(
      fc.property(bore, allowance, (readings, stock) => {
        const plain = rank(ask(reboreSize, readings, 73, STEPS));
        expect(rank(ask(reboreSize, readings, 73, STEPS, stock))).toBeGreaterThanOrEqual(plain);
        expect(rank(ask(reboreSize, readings, 73, STEPS, 0, "true"))).toBeGreaterThanOrEqual(plain);
      }),
    );
  });

  test("in inches the same step of the list is chosen", () => {
    fc.assert(
      fc.property(bore, centring, (readings, how) => {
        const metric = ask(reboreSize, readings, 73, STEPS, 0, how);
        const imperial = ask(reboreSize, inInches(readings), 73 / 25.4, inInches(STEPS), 0, how);
        if (typeof metric === "number") expect((imperial as number) * 25.4).toBeCloseTo(metric, 9);
        else expect(imperial).toBe(metric);
      }),
    );
  });
});

describe("at the limits", () => {
  test("a bore worn to exactly the oversize has nothing left to cut, a thousandth less cleans up", () => {
    expect(ask(reboreSize, 73.25, 73, STEPS)).toBe(0.5);
    expect(ask(reboreSize, 73.249, 73, STEPS)).toBe(0.25);
    expect(ask(reboreSize, 73.125, 73, STEPS, 0, "true")).toBe(0.5);
    expect(ask(reboreSize, 73.124, 73, STEPS, 0, "true")).toBe(0.25);
    expect(ask(reboreSize, 74, 73, STEPS)).toBe("none: sleeve");
  });

  test("with an allowance exactly the needed size is enough", () => {
    expect(ask(reboreSize, 73.249, 73, STEPS, 0.001)).toBe(0.25);
    expect(ask(reboreSize, 73.25, 73, STEPS, 0.001)).toBe(0.5);
  });

  test("the allowance is added once, whatever the centring", () => {
    expect(ask(reboreSize, 73.22, 73, STEPS, 0.03)).toBe(0.25);
    expect(ask(reboreSize, 73.22, 73, STEPS, 0.031)).toBe(0.5);
    expect(ask(reboreSize, 73.11, 73, STEPS, 0.03, "true")).toBe(0.25);
    expect(ask(reboreSize, 73.11, 73, STEPS, 0.031, "true")).toBe(0.5);
  });

  // 4.631 − 4.626 and the like are not decimals in binary: exact integers are the yardstick.
  test("every tenth of a thou decides as exact integers do", () => {
    const wrong: string[] = [];
    for (let tenths = 46_200; tenths <= 46_470; tenths++) {
      const size = Number(`4.${String(tenths).slice(1)}`);
      const exact = [50, 100, 200].find((oversize) => tenths < 46_260 + oversize);
      const answer = ask(reboreSize, size, 4.626, [[0.005, 0.01, 0.02]]);
      if (answer !== (exact === undefined ? "none: sleeve" : exact / 10_000)) wrong.push(`${size}: ${answer}`);
    }
    expect(wrong).toEqual([]);
  });

  test("73.02 + 0.02 is 73.04, which in binary it is not", () => {
    expect(73.02 + 0.02).toBeLessThan(73.04);
    expect(ask(reboreSize, 73.03, 73.02, [[0.02, 0.25]], 0.01)).toBe(0.02);
    expect(73 + 0.07).toBeGreaterThan(73.07 - 1e-12);
    expect(ask(reboreSize, 73.04, 73.02, [[0.02, 0.25]])).toBe(0.25);
  });

  test("a bore nowhere above its standard gets the first size, on either centre line", () => {
    expect(ask(reboreSize, 72.99, 73, STEPS)).toBe(0.25);
    expect(ask(reboreSize, 72.99, 73, STEPS, 0, "true")).toBe(0.25);
    expect(neededSize(72.99, 73, 0, "true")).toBe(72.99);
  });

  test("TRUE, which a sheet makes of the typed word true, is the centring true", () => {
    expect(ask(reboreSize, 73.2, 73, STEPS, 0, true)).toBe(0.5);
  });
});

describe("faults", () => {
  test("finished sizes in the list of oversizes are refused: anything would clean up", () => {
    expect(ask(reboreSize, 73.1, 73, [[73.25, 73.5]])).toEqual({
      code: "unfit",
      sentence: "REBORESIZE: oversizes 73.25: type what is added to the standard bore 73, not the finished size",
    });
  });

  test("a standard in another unit is refused", () => {
    expect(ask(reboreSize, 73.1, 2.874, STEPS)).toEqual({
      code: "units",
      sentence: "REBORESIZE: readings 73.1 is about 25.4 times standard 2.874: is one in inches, the other in millimetres?",
    });
  });

  test("a reading with its decimal point elsewhere does not condemn the block", () => {
    expect(
      ask(
        reboreSize,
        [
          [73.11, 73.1],
          [730.6, 73.05],
        ],
        73,
        STEPS,
      ),
    ).toEqual({
      code: "units",
      sentence: "REBORESIZE: readings 730.6 is about 10 times the middle reading 73.11: is a decimal point wrong? (row 2, column 1)",
    });
  });

  test("oversizes in millimetres for a bore in inches are refused", () => {
    expect(ask(reboreSize, 2.88, 2.874, STEPS)).toEqual({
      code: "unfit",
      sentence: "REBORESIZE: oversizes 0.25: no oversize is more than a twentieth of the standard bore, 2.874: are both in one unit?",
    });
    expect(ask(reboreSize, 40, 40, [[1, 2]])).toBe(1);
  });

  test("oversizes in inches for a bore in millimetres do not condemn it; as grades of pistons they are taken", () => {
    expect(ask(reboreSize, 73.11, 73, [[0.01, 0.02, 0.03, 0.04]])).toEqual({
      code: "unfit",
      sentence: "REBORESIZE: oversizes 0.04: even the largest cleans nothing up, and is less than a thousandth of the standard bore, 73: are both in one unit?",
    });
    expect(ask(reboreSize, 73.015, 73, [[0.01, 0.02, 0.03]])).toBe(0.02);
  });

  test("a bad oversize is named with its place", () => {
    expect(ask(reboreSize, 73.1, 73, [[0.25, "0,50"]])).toEqual({
      code: "decimal-comma",
      sentence: 'REBORESIZE: oversizes holds the text "0,50": a decimal comma is not read, type it with this sheet\'s decimal sign (column 2)',
    });
  });

  test("an unknown centring and a negative allowance are refused", () => {
    expect(ask(reboreSize, 73.1, 73, STEPS, 0, "old")).toEqual({
      code: "not-a-choice",
      sentence: 'REBORESIZE: centring "old" is not known: it must be one of worn, true',
    });
    expect(ask(reboreSize, 73.1, 73, STEPS, -0.01)).toEqual({
      code: "too-small",
      sentence: "REBORESIZE: allowance -0.01 is too small: it must be a length of at least 0",
    });
  });
});

describe("blanks", () => {
  test("blank readings, standard or list leave the answer blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(reboreSize, [[73.1, blank as number]], 73, STEPS)).toBe("");
      expect(ask(reboreSize, 73.1, blank, STEPS)).toBe("");
      expect(ask(reboreSize, 73.1, 73, blank)).toBe("");
    }
  });

  test("blanks among the oversizes are left out; blank settings are the defaults", () => {
    expect(ask(reboreSize, 73.1, 73, [["", 0.5, 0, 0.25]])).toBe(0.25);
    expect(ask(reboreSize, 73.2, 73, STEPS, "", "")).toBe(0.25);
  });
});
