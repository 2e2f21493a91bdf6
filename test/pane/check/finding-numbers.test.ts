import { tally } from "../../../src/check/finding-words.ts";
import { counted, rowsText } from "../../../src/core/number-text.ts";

import { numbersOf } from "../../../src/pane/check/finding-numbers.ts";
import { finding } from "../../helpers/finding.ts";

describe("the numbers", () => {
  test("two limits are a span, one says its side", () => {
    expect(numbersOf(finding({ value: 0.18, lower: 0.25, upper: 0.4, margin: -0.07 }))).toEqual([
      ["value", "0.18"],
      ["limit", "0.25 to 0.4"],
      ["margin", "−0.07"],
    ]);
    expect(numbersOf(finding({ value: 0.18, upper: 0.4 }))).toContainEqual(["limit", "at most 0.4"]);
    expect(numbersOf(finding({ value: 0.18, lower: 0.25 }))).toContainEqual(["limit", "at least 0.25"]);
  });

  test("a gauge past its date shows the day of its use and the days in words, a limit inside a formula only itself", () => {
    const overdue = (daysPast: number) => finding({ kind: "calibration overdue", details: { usedOn: "2026-04-02", daysPast } });
    expect(numbersOf(overdue(12))).toEqual([
      ["used on", "2026-04-02"],
      ["overdue by", "12 days"],
    ]);
    expect(numbersOf(overdue(1))).toContainEqual(["overdue by", "1 day"]);
    expect(numbersOf(finding({ kind: "limit in formula", lower: 0.25 }))).toEqual([["limit", "at least 0.25"]]);
  });

  test("a finding without limit and margin shows its value alone", () => {
    expect(numbersOf(finding({ value: "73,02" }))).toEqual([["value", "73,02"]]);
  });

  test("a value that is not there is called blank", () => {
    expect(numbersOf(finding({ value: null }))).toEqual([["value", "blank"]]);
    expect(numbersOf(finding({ value: "" }))).toEqual([["value", "blank"]]);
  });

  test("binary noise is not shown: 73.04 − 73.00 is 0.04", () => {
    expect(numbersOf(finding({ value: 73.04 - 73.0, margin: 0.04 - (73.04 - 73.0) }))).toEqual([
      ["value", "0.04"],
      ["margin", "0.00"],
    ]);
  });
});

describe("counts", () => {
  test("rows in are told as checked and refused", () => {
    expect(rowsText({ rowsIn: 24, checked: 22 })).toBe("22 of 24 rows checked, 2 could not be");
    expect(rowsText({ rowsIn: 1, checked: 1 })).toBe("1 of 1 row checked");
  });

  test("large counts have their thousands apart", () => {
    expect([1, 999, 1000, 1234567].map((count) => counted(count, "row"))).toEqual(["1 row", "999 rows", "1\u202f000 rows", "1\u202f234\u202f567 rows"]);
  });

  test("findings are counted by word, in the order of the list", () => {
    const findings = [finding({ kind: "outside limit", verdict: "over" }), finding({}), finding({ kind: "outside limit", verdict: "under" }), finding({})];
    expect([...tally(findings)]).toEqual([
      ["over", 1],
      ["near limit", 2],
      ["under", 1],
    ]);
  });
});
