import fc from "fast-check";
import { isErrorCode } from "../../src/core/cell.ts";
import { fromSteps, toSteps } from "../../src/core/decimal.ts";
import { define, table } from "../../src/core/define.ts";
import { Fault } from "../../src/core/fault.ts";
import { cells } from "../../src/core/inputs.ts";
import type { Cells } from "../../src/core/param.ts";
import { checkText } from "../../src/core/sentences.ts";
import { ask, BLANKS_AND_ZERO } from "../functions/ask.ts";

const shown = (cell: Cells["values"][number]) => (cell instanceof Fault ? checkText(cell) : (cell ?? "nothing"));

/** Shows what arrives of a whole range whose bad cells keep their faults. */
const echo = define({
  name: "ECHO",
  group: "about",
  role: "assists",
  summary: "",
  definition: "",
  source: "common practice",
  params: { sizes: cells("length", "sizes"), more: cells("length", "more sizes").optional() },
  returns: table(""),
  examples: [],
  compute: ({ sizes, more }) => [[sizes.rows, sizes.columns, more ? "more" : "no more"], sizes.values.map(shown)],
});

describe("a range taken cell by cell", () => {
  test("keeps its shape, its blanks and the fault of each bad cell, placed", () => {
    const block = [
      [1, "2,5", null],
      [0, -3, "#DIV/0!"],
    ];
    expect(ask(echo, block)).toEqual([
      [2, 3, "no more"],
      [
        1,
        'check: sizes holds the text "2,5": a decimal comma is not read, type it with this sheet\'s decimal sign (row 1, column 2)',
        "nothing",
        "nothing",
        "check: sizes -3 is too small: it must be a length above 0 (row 2, column 2)",
        "check: sizes holds the error #DIV/0!: correct that cell first (row 2, column 3)",
      ],
    ]);
  });

  test("as wide as it is high keeps a bad cell in its place too", () => {
    expect(
      ask(echo, [
        ["x", 1],
        [2, 3],
      ]),
    ).toEqual([
      [2, 2, "no more"],
      ['check: sizes holds the text "x": it must be a length above 0 (row 1, column 1)', 1, 2, 3],
    ]);
  });

  test("of one cell is that cell: its fault is the call's", () => {
    expect(ask(echo, 73)).toEqual([[1, 1, "no more"], [73]]);
    expect(ask(echo, [["x"]])).toEqual({ code: "text", sentence: 'ECHO: sizes holds the text "x": it must be a length above 0' });
  });

  test("all blank is blank, or not given where it may be left out", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(echo, [[blank as number, blank as number]])).toBe("");
      expect(ask(echo, 73, [[blank as number]])).toEqual([[1, 1, "no more"], [73]]);
    }
    expect(ask(echo, 73, [["", 2]])).toEqual([[1, 1, "more"], [73]]);
  });
});

describe("decimals counted in whole steps", () => {
  test("add up as decimals do, which in binary they do not", () => {
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(toSteps(0.1) + toSteps(0.2)).toBe(toSteps(0.3));
    expect(fromSteps(toSteps(2.45) + toSteps(0.2) - toSteps(2.5))).toBe(0.15);
  });

  test("every decimal of five places comes back as it was typed, and 0 never as -0", () => {
    fc.assert(fc.property(fc.integer({ min: -1e8, max: 1e8 }), (n) => expect(fromSteps(toSteps(n / 1e5))).toBe(n === 0 ? 0 : n / 1e5)));
    expect(Object.is(fromSteps(-0), 0)).toBe(true);
  });
});

test("a sheet's error code is known where it is the whole text, and nothing else that begins like one", () => {
  for (const code of ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#REF", "#NAME?", "#NUM!", "#N/A", "#SPILL!", "#GETTING_DATA"])
    expect(isErrorCode(code)).toBe(true);
  for (const text of ["#worn", "#N/A yet", "see #N/A", "#5 is #N/A", "#REF!!", "N/A", "#"]) expect(isErrorCode(text)).toBe(false);
});
