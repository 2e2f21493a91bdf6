import { FINDING_KINDS } from "../../src/check/finding.ts";
import { marksOf, wordOf } from "../../src/check/finding-words.ts";
import { finding } from "../helpers/finding.ts";

describe("the word that stands first", () => {
  test("is the verdict's own for a reading outside its limits", () => {
    expect(wordOf(finding({ kind: "outside limit", verdict: "over" }))).toBe("over");
    expect(wordOf(finding({ kind: "outside limit", verdict: "under" }))).toBe("under");
  });

  test("is the kind's for everything else, whatever the verdict", () => {
    expect(wordOf(finding({ kind: "likely slip", verdict: "over" }))).toBe("likely slip");
    expect(wordOf(finding({ kind: "outside limit", verdict: null }))).toBe("outside limit");
  });
});

describe("marks", () => {
  test("every kind of finding has one", () => {
    const findings = FINDING_KINDS.map((kind, row) => finding({ kind, cell: { sheet: "Bores", row, column: 0 } }));
    expect(marksOf(findings).map(({ tone }) => tone)).toEqual([
      ...["doubt", "fault", "outside", "fault", "doubt", "doubt", "near", "fault", "fault"],
      ...["doubt", "doubt", "fault", "fault", "fault", "doubt"],
    ]);
  });

  test("a cell with several findings gets the mark of the worst", () => {
    const cell = { sheet: "Bores", row: 1, column: 1 };
    const findings = [finding({ kind: "outside limit", cell }), finding({ kind: "likely slip", cell: { ...cell } })];
    expect(marksOf(findings)).toEqual([{ cell, tone: "outside" }]);
  });

  test("cells of the same name on two sheets are two cells", () => {
    const findings = ["Bores", "Pistons"].map((sheet) => finding({ cell: { sheet, row: 1, column: 1 } }));
    expect(marksOf(findings)).toHaveLength(2);
  });
});
