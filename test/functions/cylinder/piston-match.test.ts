import fc from "fast-check";
import { pistonMatch } from "../../../src/functions/cylinder/piston-match.ts";
import { leastBy, pairings } from "../../helpers/pairings.ts";
import { ask, BLANKS_AND_ZERO } from "../ask.ts";

const HEADER = ["bore", "bore size", "piston", "piston size", "clearance", "off target"];
const column = (sizes: readonly unknown[]) => sizes.map((size) => [size as number]);
const match = (bores: readonly unknown[], pistons: readonly unknown[], target = 0.04) =>
  ask(pistonMatch, column(bores), column(pistons), target) as (string | number)[][];

describe("cited values", () => {
  // Selective assembly, a published worked example on limits and fits: pistons of 79.965 to 79.995 and
  // bores of 80.000 to 80.030 that would run at 0.005 to 0.065 unmatched are to run at 0.025 to 0.045.
  test("pistons and bores of three classes, mixed, all meet at 0.025 to 0.045", () => {
    const rows = match([80.027, 80.001, 80.014, 80.009, 80.022, 80.018], [79.978, 79.992, 79.967, 79.973, 79.983, 79.988], 0.035).slice(1);
    const clearances = rows.map((row) => row[4] as number);
    expect(Math.min(...clearances)).toBeGreaterThanOrEqual(0.025);
    expect(Math.max(...clearances)).toBeLessThanOrEqual(0.045);
  });

  // Greedy matching fails here: bore 1 likes piston 1 best, which leaves bore 2 with 0.08 (by hand).
  test("the best piston for the first bore is given up where the second needs it more", () => {
    expect(match([73.04, 73.0], [73.0, 73.02], 0.04)).toEqual([HEADER, [1, 73.04, 2, 73.02, 0.02, -0.02], [2, 73.0, 1, 73.0, 0, -0.04]]);
    expect(match([73.04, 73.06], [73.0, 72.98], 0.04)).toEqual([HEADER, [1, 73.04, 2, 72.98, 0.06, 0.02], [2, 73.06, 1, 73.0, 0.06, 0.02]]);
  });
});

describe("against every pairing there is", () => {
  /** Sizes in thousandths, within few of them so that ties abound. */
  const thousandths = (count: number, from: number) => fc.array(fc.integer({ min: from, max: from + 9 }), { minLength: count, maxLength: count });

  test.each([
    [1, 5, 400],
    [6, 6, 30],
    [7, 7, 10],
  ])("%p to %p of each: worst first, then the sum, then the earliest piston", (least, most, numRuns) => {
    const some = fc.integer({ min: least, max: most });
    const problem = fc.tuple(some, some).chain(([bores, pistons]) => fc.tuple(thousandths(bores, 73_040), thousandths(pistons, 73_000)));
    fc.assert(
      fc.property(problem, ([bores, pistons]) => {
        const off = (pairing: readonly number[]) => pairing.map((piston, bore) => (piston < 0 ? 0 : Math.abs(bores[bore]! - pistons[piston]! - 40)));
        const best = leastBy(pairings(bores.length, pistons.length), (p) => [Math.max(...off(p)), off(p).reduce((a, b) => a + b, 0)]).pairing;
        const rows = match(
          bores.map((size) => size / 1000),
          pistons.map((size) => size / 1000),
        ).slice(1, 1 + bores.length);
        expect(rows.map((row) => (row[2] === "" ? -1 : (row[2] as number) - 1))).toEqual(best);
      }),
      { numRuns },
    );
  });
});

describe("identities", () => {
  const size = fc.integer({ min: 7290, max: 7310 }).map((hundredths) => hundredths / 100);
  const sizes = fc.array(size, { minLength: 1, maxLength: 8 });

  test("every row adds up, and each piston is used once or left over once", () => {
    fc.assert(
      fc.property(sizes, sizes, (bores, pistons) => {
        fc.pre(Math.min(...pistons) <= Math.max(...bores));
        const rows = match(bores, pistons).slice(1);
        for (const [, bore, , piston, clearance, off] of rows.filter((row) => typeof row[4] === "number")) {
          expect(Number(((bore as number) - (piston as number)).toFixed(9))).toBe(clearance);
          expect(Number(((clearance as number) - 0.04).toFixed(9))).toBe(off);
        }
        expect(
          rows
            .map((row) => row[2])
            .filter((piston) => piston !== "")
            .sort((a, b) => Number(a) - Number(b)),
        ).toEqual(pistons.map((_, at) => at + 1));
      }),
    );
  });

  test("in inches the same piston goes in the same bore", () => {
    // Tenths of a thou times 25.4 are exact decimals, so ties stay ties.
    const tenths = fc.array(fc.integer({ min: 28_740, max: 28_760 }), { minLength: 3, maxLength: 6 });
    fc.assert(
      fc.property(tenths, tenths, (bores, pistons) => {
        fc.pre(Math.min(...pistons) <= Math.max(...bores));
        const which = (per: number) =>
          match(
            bores.map((size) => Number(((size * per) / 1e4).toFixed(6))),
            pistons.map((size) => Number(((size * per) / 1e4).toFixed(6))),
            Number((0.0015 * per).toFixed(6)),
          ).map((row) => row[2]);
        expect(which(25.4)).toEqual(which(1));
      }),
    );
  });

  test("along a row or down a column, in a block or a line, a list is a list", () => {
    const down = match([73.02, 73.01, 73.03, 73.0], [72.98, 72.97, 72.99, 72.96]);
    expect(
      ask(
        pistonMatch,
        [
          [73.02, 73.01],
          [73.03, 73.0],
        ],
        [[72.98, 72.97, 72.99, 72.96]],
        0.04,
      ),
    ).toEqual(down);
  });
});

describe("at the limits", () => {
  test("ties are true ties: 0.1 + 0.2 and 0.3 are one size, and the first bore gets the first piston", () => {
    expect(match([0.35, 0.35], [0.3, 0.1 + 0.2], 0.05).map((row) => row[2])).toEqual(["piston", 1, 2]);
    expect(match([0.35, 0.35], [0.1 + 0.2, 0.3], 0.05).map((row) => row[2])).toEqual(["piston", 1, 2]);
  });

  test("more pistons than bores: the rest are listed as left over", () => {
    expect(match([73.02], [72.9, 72.98, 72.99])).toEqual([
      HEADER,
      [1, 73.02, 2, 72.98, 0.04, 0],
      ["left over", "", 1, 72.9, "", ""],
      ["left over", "", 3, 72.99, "", ""],
    ]);
  });

  test("more bores than pistons: the bores that do without stay open", () => {
    expect(match([73.1, 73.02, 73.03], [72.98])).toEqual([HEADER, [1, 73.1, "", "", "", ""], [2, 73.02, 1, 72.98, 0.04, 0], [3, 73.03, "", "", "", ""]]);
  });

  test("a piston that must go where it does not fit is said so, the distance kept", () => {
    expect(match([73.02, 73.0], [72.98, 73.01])).toEqual([HEADER, [1, 73.02, 2, 73.01, 0.01, -0.03], [2, 73.0, 1, 72.98, 0.02, -0.02]]);
    expect(match([73.02, 72.97], [72.98, 73.01])).toEqual([
      HEADER,
      [1, 73.02, 2, 73.01, 0.01, -0.03],
      [2, 72.97, 1, 72.98, "check: piston 72.98: it is larger than bore 72.97", -0.05],
    ]);
  });

  test("two hundred bores and pistons in one order pair off in that order", () => {
    const bores = Array.from({ length: 200 }, (_, at) => (73_000 + at) / 1000);
    const pistons = bores.map((bore) => Number((bore - 0.04).toFixed(3)));
    expect(match(bores, pistons).map((row) => row[2])).toEqual(["piston", ...bores.map((_, at) => at + 1)]);
  });
});

describe("faults", () => {
  test("pistons all larger than the bores are taken for a swap", () => {
    expect(ask(pistonMatch, column([72.98, 72.97]), column([73.02, 73.01]), 0.04)).toEqual({
      code: "swapped",
      sentence: "PISTONMATCH: pistons 73.01 is larger than bores 72.98: are they swapped?",
    });
  });

  test("a bad bore and a bad piston keep to their own rows", () => {
    expect(match([73.02, "73,01"], ["thick", 72.98])).toEqual([
      HEADER,
      [1, 73.02, 2, 72.98, 0.04, 0],
      [2, 'check: bores holds the text "73,01": a decimal comma is not read, type it with this sheet\'s decimal sign (row 2)', "", "", "", ""],
      ["left over", "", 1, 'check: pistons holds the text "thick": it must be a length above 0 (row 1)', "", ""],
    ]);
  });

  test("a piston in inches among millimetres is not matched", () => {
    expect(match([73.02, 73.01], [72.98, 2.873])).toEqual([
      HEADER,
      [1, 73.02, 1, 72.98, 0.04, 0],
      [2, 73.01, "", "", "", ""],
      ["left over", "", 2, "check: pistons 2.873 is about 1/25.4 of the middle of all sizes 73.01: is one in inches, the other in millimetres?", "", ""],
    ]);
  });

  test("nor is a bore in inches, and its row says why", () => {
    expect(match([73.02, 2.873], [72.98, 72.97])[2]![1]).toBe(
      "check: bores 2.873 is about 1/25.4 of the middle of all sizes 72.98: is one in inches, the other in millimetres?",
    );
  });

  test("bores or pistons that are all bad are listed, and nothing is matched", () => {
    const words = (rows: (string | number)[][]) => rows.slice(1).map((row) => row.map((cell) => String(cell).slice(0, 6)));
    expect(words(match(["x", "y"], [72.98]))).toEqual([
      ["1", "check:", "", "", "", ""],
      ["2", "check:", "", "", "", ""],
      ["left o", "", "1", "72.98", "", ""],
    ]);
    expect(words(match([73.02], ["x", "y"]))).toEqual([
      ["1", "73.02", "", "", "", ""],
      ["left o", "", "1", "check:", "", ""],
      ["left o", "", "2", "check:", "", ""],
    ]);
  });

  test("many bores not measured yet do not make the others strange", () => {
    expect(match(["", "", "", "", 73.02], [72.98]).at(-1)).toEqual([5, 73.02, 1, 72.98, 0.04, 0]);
  });

  test("a lone bad bore, a bad target and a range of targets are faults of the call", () => {
    expect(ask(pistonMatch, "x", 72.98, 0.04)).toEqual({ code: "text", sentence: 'PISTONMATCH: bores holds the text "x": it must be a length above 0' });
    expect(ask(pistonMatch, 73.02, 72.98, -0.04)).toEqual({
      code: "too-small",
      sentence: "PISTONMATCH: target -0.04 is too small: it must be a length above 0",
    });
    expect(ask(pistonMatch, 73.02, 72.98, [[0.04, 0.05]])).toEqual({
      code: "shape",
      sentence:
        "PISTONMATCH: target is 1×2 cells, which does not fit one cell for the whole call: ranges must be of one size, or one row, one column or one cell",
    });
  });
});

describe("blanks", () => {
  test("without a bore, a piston or a target there is nothing to say", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(pistonMatch, blank, 72.98, 0.04)).toBe("");
      expect(ask(pistonMatch, 73.02, column([blank, blank]), 0.04)).toBe("");
      expect(ask(pistonMatch, 73.02, 72.98, blank)).toBe("");
    }
  });

  test("a bore not measured keeps its number, blank rows at the end are left out", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(match([73.02, blank, 73.03, blank], [blank, 72.99, 72.98, blank])).toEqual([
        HEADER,
        [1, 73.02, 3, 72.98, 0.04, 0],
        [2, "", "", "", "", ""],
        [3, 73.03, 2, 72.99, 0.04, 0],
      ]);
    }
  });
});
