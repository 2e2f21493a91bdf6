import { readVerdict } from "../../src/check/judge.ts";

// The words are those of VERDICT and EXPLAIN; a cell is read by them only where its formula cannot be looked into.
describe("what a judging cell says by itself", () => {
  test.each([
    ["within", "within"],
    ["73.02 is within 73 to 73.05, 0.02 from the lower limit", "within"],
    ["73.045 is within 73 to 73.05, 0.005 from the upper limit, near limit as it is no further than 0.01", "near limit"],
    ["73.06 is over the upper limit 73.05 by 0.01", "over"],
    ["72.99 is under the lower limit 73 by 0.01", "under"],
    ["73.051 is over the upper limit 73.05 by 0.001, not proven either way with an uncertainty of 0.003", "not proven"],
  ])("%p is read as %p", (cell, verdict) => {
    expect(readVerdict(cell)).toEqual({ verdict, margin: null });
  });

  test("a number is a margin, below 0 outside", () => {
    expect([readVerdict(-0.05), readVerdict(0), readVerdict(0.05)]).toEqual([
      { verdict: "over", margin: -0.05 },
      { verdict: "within", margin: 0 },
      { verdict: "within", margin: 0.05 },
    ]);
  });

  test("an error is refused with its sentence, or with its code where the sheet gives no more", () => {
    expect(readVerdict({ error: "#VALUE!", message: "VERDICT: value is not a finite number" })).toEqual({ refused: "VERDICT: value is not a finite number" });
    for (const cell of [{ error: "#DIV/0!" }, "#DIV/0!"]) expect(readVerdict(cell)).toEqual({ refused: "the formula gives #DIV/0!" });
  });

  test("what an earlier function has said is passed on", () => {
    expect(readVerdict("check: value -1 is too small: it must be a length above 0")).toEqual({ refused: "value -1 is too small: it must be a length above 0" });
  });

  test("nothing is blank; other words, and words that only hold one of these, are unclear", () => {
    for (const cell of [null, "", "  "]) expect(readVerdict(cell)).toBe("blank");
    for (const cell of ["fine", "overhauled", "undersize", true]) expect(readVerdict(cell)).toBe("unclear");
  });
});
