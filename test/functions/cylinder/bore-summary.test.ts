import fc from "fast-check";
import { boreSummary } from "../../../src/functions/cylinder/bore-summary.ts";
import { outOfRound } from "../../../src/functions/cylinder/out-of-round.ts";
import { taper } from "../../../src/functions/cylinder/taper.ts";
import { bore } from "../arbitrary.ts";
import { ask } from "../ask.ts";

const LABELS = ["smallest", "largest", "mean", "taper", "out-of-round", "largest at height", "largest at axis"];
const rowOf = (readings: number[][]) => (ask(boreSummary, readings) as number[][])[1]!;

describe("cited values", () => {
  // Heights and axes as the US Navy Engineman training manual, p. 3-5, has them recorded; taper and
  // out-of-round as in FAA-H-8083-32. The readings are ours, the row follows from the definitions.
  test("three heights and two axes come to one row under its labels", () => {
    expect(
      ask(boreSummary, [
        [73.05, 73.02],
        [73.02, 73.01],
        [73, 73],
      ]),
    ).toEqual([LABELS, [73, 73.05, 73.016666667, 0.05, 0.03, 1, 1]]);
  });
});

describe("identities", () => {
  test("smallest ≤ mean ≤ largest, and the place named holds the largest", () => {
    fc.assert(
      fc.property(bore, (readings) => {
        const [smallest, largest, mean, , , height, axis] = rowOf(readings) as [number, number, number, number, number, number, number];
        expect(smallest).toBe(Math.min(...readings.flat()));
        expect(largest).toBe(Math.max(...readings.flat()));
        expect(mean).toBeGreaterThanOrEqual(smallest);
        expect(mean).toBeLessThanOrEqual(largest);
        expect(readings[height - 1]![axis - 1]).toBe(largest);
      }),
    );
  });

  test("taper and out-of-round are those of their own functions", () => {
    fc.assert(
      fc.property(bore, (readings) => {
        expect(rowOf(readings)[3]).toBe(ask(taper, readings));
        expect(rowOf(readings)[4]).toBe(ask(outOfRound, readings));
      }),
    );
  });
});

describe("at the limits", () => {
  test("of equal largest readings the first from the top is named", () => {
    expect(
      rowOf([
        [73, 73.05],
        [73.05, 73.05],
      ]).slice(5),
    ).toEqual([1, 2]);
  });

  test("one reading is its own summary, with no taper or out-of-round to tell", () => {
    expect(rowOf([[73.01]])).toEqual([73.01, 73.01, 73.01, "", "", 1, 1]);
  });

  test("the mean of typed decimals is a decimal: 73.01 three times is 73.01", () => {
    expect(rowOf([[73.01], [73.01], [73.01]])[2]).toBe(73.01);
  });
});

describe("faults", () => {
  test("a lone bore with a bad reading is a fault", () => {
    expect(ask(boreSummary, [[73.01, "worn"]])).toEqual({
      code: "text",
      sentence: 'BORESUMMARY: readings holds the text "worn": it must be a length above 0 (column 2)',
    });
  });

  test("of several bores the bad one says so in its row and the others stand", () => {
    expect(
      ask(
        boreSummary,
        [
          [73.02, 73],
          [73, { error: "#N/A" }],
          [73, 73],
        ],
        1,
      ),
    ).toEqual([
      LABELS,
      [73, 73.02, 73.01, 0.02, "", 1, 1],
      ["check: readings holds the error #N/A: correct that cell first (row 2, column 2)", "", "", "", "", "", ""],
      [73, 73, 73, 0, "", 1, 1],
    ]);
  });
});

describe("blanks", () => {
  test("an unfinished bore keeps its row, blank, so that rows stay beside their bores", () => {
    const answer = ask(
      boreSummary,
      [
        [73.02, 73],
        [73, ""],
        [73, 73],
      ],
      1,
    ) as unknown[][];
    expect(answer).toHaveLength(4);
    expect(answer[2]).toEqual(["", "", "", "", "", "", ""]);
  });

  test("a lone unfinished bore gives its labels and a blank row", () => {
    expect(ask(boreSummary, [[73.02, null]])).toEqual([LABELS, ["", "", "", "", "", "", ""]]);
  });
});
