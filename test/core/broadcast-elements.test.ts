import type { Argument } from "../../src/core/cell.ts";
import { define, value } from "../../src/core/define.ts";
import { axes, grid, labels, length, list, readings } from "../../src/core/inputs.ts";
import { ask } from "../functions/ask.ts";
import { about } from "./about.ts";

/** Says how a bore arrives: heights × axes and its readings. */
const bore = define({
  ...about,
  name: "BORE",
  params: { readings: readings(), axes: axes() },
  returns: value(""),
  compute: (inputs) => `${inputs.readings.heights}×${inputs.readings.axes}: ${inputs.readings.values.join(" ")}`,
});

/** Says how a list and a grid arrive. */
const ranges = define({
  ...about,
  name: "RANGES",
  params: { steps: list("number", "steps"), sizes: grid("length", "sizes").optional(), words: labels("words").optional() },
  returns: value(""),
  compute: ({ steps, sizes, words }) =>
    [steps.join(" "), sizes && `${sizes.rows}×${sizes.columns}: ${sizes.values.map((x) => x ?? "nothing").join(" ")}`, words?.values.join(" ")]
      .filter(Boolean)
      .join("; "),
});

const faultOf = (...asked: Parameters<typeof ask>) => (ask(...asked) as { sentence: string }).sentence;

describe("the readings of a bore", () => {
  test("are heights by axes as they stand", () => {
    expect(
      ask(bore, [
        [71, 72],
        [73, 74],
        [75, 76],
      ]),
    ).toBe("3×2: 71 72 73 74 75 76");
    expect(ask(bore, 73)).toBe("1×1: 73");
  });

  test("with the number of axes are a bore a row, height by height", () => {
    expect(ask(bore, [[71, 72, 73, 74, 75, 76]], 2)).toBe("3×2: 71 72 73 74 75 76");
    expect(
      ask(
        bore,
        [
          [71, 72, 73, 74, 75, 76],
          [76, 75, 74, 73, 72, 71],
        ],
        3,
      ),
    ).toEqual([["2×3: 71 72 73 74 75 76"], ["2×3: 76 75 74 73 72 71"]]);
    expect(ask(bore, [[1], [2]], 1)).toEqual([["1×1: 1"], ["1×1: 2"]]);
    expect(ask(bore, [[71, 72]], [[2]])).toBe("1×2: 71 72");
  });

  test("with more axes than a row has cells, or a number that does not divide them, are refused", () => {
    const rule = "each row must hold every height of one bore";
    expect(faultOf(bore, [[1, 2, 3]], 2)).toBe(`BORE: axes 2 does not divide the 3 columns of readings: ${rule}`);
    expect(faultOf(bore, [[1, 2, 3]], 6)).toBe(`BORE: axes 6 does not divide the 3 columns of readings: ${rule}`);
  });

  test("with a blank among them are blank, and a fault behind the blank is still said", () => {
    expect(
      ask(bore, [
        [71, null],
        [73, 74],
      ]),
    ).toBe("");
    expect(
      faultOf(bore, [
        [71, null],
        [73, "x"],
      ]),
    ).toBe('BORE: readings holds the text "x": it must be a length above 0 (row 2, column 2)');
    expect(
      faultOf(bore, [
        [null, 73],
        [2.87, 73],
      ]),
    ).toBe("BORE: readings 2.87 is about 1/25.4 of the middle reading 73: is one in inches, the other in millimetres? (row 2, column 1)");
  });

  test("lie no further apart than a fifth of the larger", () => {
    expect(ask(bore, [[80], [100]])).toBe("2×1: 80 100");
    expect(ask(bore, [[100], [80]])).toBe("2×1: 100 80");
    expect(faultOf(bore, [[80], [100.01]])).toBe(
      "BORE: readings 100.01 is more than a fifth above reading 80: is a digit, the decimal point or the unit wrong? (row 2)",
    );
    expect(faultOf(bore, [[100.01], [80]])).toBe(
      "BORE: readings 80 is more than a fifth below reading 100.01: is a digit, the decimal point or the unit wrong? (row 2)",
    );
  });

  test("too far apart: the one that is off is blamed, also where it stands first, and beside blank ones", () => {
    expect(faultOf(bore, [[730.6], [73.05], [73.04]])).toBe(
      "BORE: readings 730.6 is about 10 times the middle reading 73.05: is a decimal point wrong? (row 1)",
    );
    expect(
      faultOf(bore, [
        [null, 73.05],
        [7.31, 73.04],
      ]),
    ).toBe("BORE: readings 7.31 is about 1/10 of the middle reading 73.04: is a decimal point wrong? (row 2, column 1)");
    expect(faultOf(bore, [[90, 79, 100]])).toBe(
      "BORE: readings 100 is more than a fifth above the smallest reading 79: is a digit, the decimal point or the unit wrong? (column 3)",
    );
  });

  test("at fault say where: by row and column in a block, by one of them in a line, without in a lone cell", () => {
    const said = 'BORE: readings holds the text "x": it must be a length above 0';
    expect(faultOf(bore, "x")).toBe(said);
    expect(faultOf(bore, [["x"]])).toBe(said);
    expect(faultOf(bore, [[71], ["x"]])).toBe(`${said} (row 2)`);
    expect(faultOf(bore, [[71, 72, "x"]])).toBe(`${said} (column 3)`);
    expect(
      faultOf(bore, [
        [71, 72],
        ["x", 72],
      ]),
    ).toBe(`${said} (row 2, column 1)`);
    expect(faultOf(bore, [[71, 72, 73, "x"]], 2)).toBe(`${said} (column 4)`);
    expect(
      ask(
        bore,
        [
          [71, 72, 73, 74],
          [71, 72, "x", 74],
        ],
        2,
      ),
    ).toEqual([["2×2: 71 72 73 74"], ['check: readings holds the text "x": it must be a length above 0 (row 2, column 3)']]);
  });
});

describe("axes", () => {
  const pairs = define({
    ...about,
    name: "PAIRS",
    params: { readings: readings(), skirt: length("skirt"), axes: axes() },
    returns: value(""),
    compute: (inputs) => `${inputs.readings.heights}×${inputs.readings.axes} and ${inputs.skirt}`,
  });
  const wanted = "axes is not given: it must be the number of axes measured at each height";

  test("are asked for where a row holds more readings than there are axes at one height", () => {
    expect(ask(bore, [[71, 72, 73, 74]])).toBe("1×4: 71 72 73 74");
    expect(faultOf(bore, [[71, 72, 73, 74, 75]])).toBe(`BORE: ${wanted}, as readings of 5 columns are no bore measured on so many axes: is each row one bore?`);
    expect(ask(bore, [[71, 72, 73, 74, 75]], 5)).toEqual("1×5: 71 72 73 74 75");
  });

  test("are asked for where each row of readings has a value beside it", () => {
    expect(
      faultOf(
        pairs,
        [
          [71, 72],
          [73, 74],
        ],
        [[70], [71]],
      ),
    ).toBe(`PAIRS: ${wanted}, as there are 2 rows of readings and 2 cells of skirt: is each row one bore?`);
    expect(
      faultOf(
        pairs,
        [
          [71, 72],
          [73, 74],
        ],
        [[70, 71]],
      ),
    ).toContain(wanted);
    expect(
      ask(
        pairs,
        [
          [71, 72],
          [73, 74],
        ],
        [[70], [71]],
        2,
      ),
    ).toEqual([["1×2 and 70"], ["1×2 and 71"]]);
    // One bore beside one skirt, or beside more than it has rows.
    expect(
      ask(
        pairs,
        [
          [71, 72],
          [73, 74],
        ],
        70,
      ),
    ).toBe("2×2 and 70");
    expect(
      ask(
        pairs,
        [
          [71, 72],
          [73, 74],
        ],
        [[70], [71], [72]],
      ),
    ).toEqual([["2×2 and 70"], ["2×2 and 71"], ["2×2 and 72"]]);
    expect(ask(pairs, [[71, 72]], [[70]])).toBe("1×2 and 70");
  });

  test("blank are not given, in a range of one cell too", () => {
    for (const blank of [undefined, null, "", 0, [[0]], [[""]]] as Argument[])
      expect(
        ask(
          bore,
          [
            [71, 72],
            [73, 74],
          ],
          blank,
        ),
      ).toBe("2×2: 71 72 73 74");
  });

  test("may stand before the readings", () => {
    const turned = define({
      ...about,
      name: "TURNED",
      params: { axes: axes(), readings: readings() },
      returns: value(""),
      compute: (inputs) => inputs.readings.heights,
    });
    expect(ask(turned, 2, [[71, 72, 73, 74, 75, 76]])).toBe(3);
  });

  test("none or several in a range are refused", () => {
    for (const none of [[], [[]]]) expect(faultOf(bore, 73, none)).toBe("BORE: axes is an empty range: it must be a whole number of at least 1");
    expect(faultOf(bore, 73, [[1], [1]])).toBe("BORE: axes of several cells: one number is wanted for the whole call");
  });
});

describe("a whole range", () => {
  test("as a list is its numbers row by row without the blanks, as a grid and as labels it keeps them", () => {
    expect(
      ask(ranges, [
        [3, null],
        [-1, 0],
      ]),
    ).toBe("3 -1 0");
    expect(
      ask(
        ranges,
        5,
        [
          [1, 2, ""],
          [3, null, 5],
        ],
        [["a", 7]],
      ),
    ).toBe("5; 2×3: 1 2 nothing 3 nothing 5; a 7");
  });

  test("all blank is blank where it is needed and not given where it may be left out", () => {
    expect(ask(ranges, [[null, ""]])).toBe("");
    expect(ask(ranges, 5, [[null, ""]], "")).toBe("5");
  });

  test("all blank is not given as a list either", () => {
    const listed = define({
      ...about,
      name: "LISTED",
      params: { steps: list("number", "steps").optional() },
      returns: value(""),
      compute: ({ steps }) => (steps ? steps.length : "none"),
    });
    expect(ask(listed, [["", null]])).toBe("none");
    expect(ask(listed, [["", 7]])).toBe(1);
  });

  test("with a bad cell is refused with its place", () => {
    expect(
      faultOf(ranges, [
        [1, 2],
        [3, "x"],
      ]),
    ).toBe('RANGES: steps holds the text "x": it must be a number (row 2, column 2)');
    expect(faultOf(ranges, 1, [[1], [-2]])).toBe("RANGES: sizes -2 is too small: it must be a length above 0 (row 2)");
    expect(faultOf(ranges, 1, -2)).toBe("RANGES: sizes -2 is too small: it must be a length above 0");
  });

  test("without cells is refused", () => {
    for (const none of [[], [[]]]) expect(faultOf(ranges, none)).toBe("RANGES: steps is an empty range: it must be a number");
  });
});
