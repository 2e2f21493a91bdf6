import { at, findingsOf } from "./stand.ts";

const typed = (sheets: Parameters<typeof findingsOf>[1]) => findingsOf("limit in formula", sheets);

test("a limit inside formulas is told once for each sheet, at the first of them", () => {
  const rows = [0.012, 0.015, 0.011].map((value, i) => [i + 1, value, `=HATCH.VERDICT(B${i + 2},,0.02)`, `=HATCH.MARGIN(B${i + 2},,0.02)`]);
  expect(typed({ Bores: [["Cylinder", "Taper", "Verdict", "Margin"], ...rows] })).toEqual([
    {
      kind: "limit in formula",
      cell: { sheet: "Bores", row: 1, column: 2 },
      label: "Cylinder 1",
      value: null,
      lower: null,
      upper: 0.02,
      margin: null,
      verdict: null,
      details: { formulas: 6 },
      sentence:
        "the upper limit 0.02 is written inside the formula and in 5 more on this sheet: type it into a cell with its source beside it, and let the formula refer to that cell",
    },
  ]);
});

test.each([
  ["=HATCH.VERDICT(A2,-0.003,0.003)", -0.003, 0.003, "the limits -0.003 and 0.003 are written inside the formula:"],
  ["=HATCH.VERDICT(A2,B2,73+0.05)", null, 73.05, "the upper limit 73.05 is"],
  ["=HATCH.CONFORMITY(A2,0.25,,0.01)", 0.25, null, "the lower limit 0.25 is"],
  ['=IF(HATCH.EXPLAIN(A2,,0.5)="","",1)', null, 0.5, "the upper limit 0.5 is"],
])("%s has limits inside", (formula, lower, upper, words) => {
  const [finding] = typed({
    S: [
      ["Size", "Lower"],
      [0.3, 0.1, formula],
    ],
  });
  expect(finding).toMatchObject({ lower, upper, cell: { row: 1, column: 2 } });
  expect(finding!.sentence).toContain(words);
});

test.each([
  ["a limit in a cell", "=HATCH.VERDICT(A2,B2)"],
  ["a limit worked out from cells", "=HATCH.VERDICT(A2,,B2*2)"],
  ["a lower limit of 0, which nature sets", "=HATCH.VERDICT(A2,0,B2)"],
  ["an uncertainty and a near distance, which are no limits", "=HATCH.VERDICT(A2,,B2,0.002,0.01)"],
  ["a sum on the side that judges no cell", "=HATCH.VERDICT(0.3,,0.5)"],
  ["a limit still to be typed", "=HATCH.VERDICT(A2,,)"],
  ["a function that judges nothing", "=HATCH.BOREWEAR(A2,73)"],
])("%s is none", (_, formula) => {
  expect(
    typed({
      S: [
        ["Size", "Lower"],
        [0.3, 0.1, formula],
      ],
    }),
  ).toEqual([]);
});

test("two limits are two findings", () => {
  const found = typed({ S: [["a"], [0.3, "=HATCH.VERDICT(A2,,0.5)"], [0.4, "=HATCH.VERDICT(A3,,0.6)"]] });
  expect(found.map(({ cell }) => at(cell))).toEqual(["S!B2", "S!B3"]);
});
