import { namedSubject } from "../../src/report/gather/identity.ts";
import { reportInput } from "../../src/report/gather/workbook.ts";
import { factsOf } from "../../src/report/gather/workbook-facts.ts";
import { Overview } from "../../src/report/overview.ts";
import { leftOutPart, overviewPart } from "../../src/report/overview-part.ts";

import { factsFrom } from "../../src/report/stored-facts.ts";
import { type Facts, fewerFacts } from "../../src/report/summary-facts.ts";
import { type Typed, workbook } from "../check/workbook.ts";
import { HOSTILE } from "../drawings/tree.ts";
import { everything, textOf } from "./page.ts";

const facts = (given: Partial<Facts>): Facts => ({ tallies: [], sizes: [], more: 0, ...given });
const outcome = (name: string, given: Partial<Facts> | undefined, findings = 0) => ({
  ...{ name, findings, rowsIn: 6, checked: 5, refused: 1 },
  facts: given && facts(given),
});
const tally = (kind: "outside limit" | "refused", characteristic: string, count: number, engine?: string) => ({ kind, characteristic, count, engine });
const wear = (value: number, isOutside = false) => ({ characteristic: "bore wear", unit: "mm", value, lower: null, upper: 0.08, isOutside });

test("a label tells its characteristic by the name that all words for it have, and its engine", () => {
  expect(namedSubject("Engine A, Cylinder 2, Taper")).toEqual({ characteristic: "taper", engine: "A" });
  expect(namedSubject("engine 7, cylinder 1, ovality, top")).toEqual({ characteristic: "out-of-round", engine: "7" });
  expect(namedSubject("Cylinder 3, Flywheel runout, rim")).toEqual({ characteristic: "flywheel runout", engine: undefined });
  expect(namedSubject("Cylinder 3")).toEqual({ characteristic: "not named", engine: undefined });
});

// The invented workbook: taper of cylinder 2 is 73.06 − 73.035 = 0.025, its wear 73.06 − 73 = 0.06; stripped on 2026-10-25.
test("of a workbook engine, day, findings and the least allowed reading of each characteristic are kept", () => {
  const book = everything();
  const { result, judged } = reportInput(book);
  expect(factsOf(book.sheets, result.findings, judged.rows)).toEqual({
    engine: "E-0417",
    day: "2026-10-25",
    tallies: expect.arrayContaining([{ kind: "outside limit", characteristic: "taper", engine: undefined, count: 1 }]),
    sizes: [
      { characteristic: "taper", engine: undefined, unit: "mm", value: 0.025, lower: null, upper: 0.02, isOutside: true },
      { characteristic: "bore wear", engine: undefined, unit: "mm", value: 0.06, lower: null, upper: 0.08, isOutside: false },
      { characteristic: "compression pressure", engine: undefined, unit: undefined, value: 9.9, lower: 11.1, upper: null, isOutside: true },
    ],
    more: 0,
  });
});

test("a difference between cylinders beside the word compression is the spread, not one of their pressures", () => {
  const rows: Typed = [
    ["Cylinder", 1, 2, 3, "Difference", "Verdict"],
    ["Compression", 150, 118, 152, "=HATCH.COMPRESSIONSPREAD(B2:D2)", "=HATCH.VERDICT(E2, , 15)"],
  ];
  const book = workbook({ Tests: rows });
  const { result, judged } = reportInput(book);
  const { tallies, sizes } = factsOf(book.sheets, result.findings, judged.rows);
  expect(sizes).toEqual([expect.objectContaining({ characteristic: "compression spread", value: 34, upper: 15 })]);
  expect(tallies).toContainEqual({ kind: "outside limit", characteristic: "compression spread", engine: undefined, count: 1 });
});

test("facts come back as they were written down, what is damaged is none, and what is left out is counted", () => {
  const kept = facts({ engine: "E-1", day: "2026-01-02", tallies: [tally("refused", "bore", 2)], sizes: [wear(0.03)] });
  expect(factsFrom(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
  for (const damaged of [null, {}, { ...kept, tallies: [{ kind: "refused" }] }, { ...kept, sizes: "many" }]) expect(factsFrom(damaged)).toBeUndefined();
  const many = facts({ tallies: [...Array.from({ length: 400 }, (_, i) => tally("refused", `c${i}`, 1)), tally("outside limit", "bore", 1)] });
  const fewer = fewerFacts(many);
  expect([fewer.tallies.length, fewer.more, fewer.tallies[0]!.kind]).toEqual([150, 251, "outside limit"]);
});

describe("many inputs", () => {
  const overview = new Overview();
  overview.add(outcome("a.xlsx", { engine: "E-1", day: "2024-05-01", tallies: [tally("outside limit", "bore wear", 1)], sizes: [wear(0.09, true)] }, 1));
  overview.add(outcome("b.xlsx", { engine: "E-1", day: "2025-05-01", tallies: [tally("outside limit", "bore wear", 2)], sizes: [wear(0.095, true)] }, 2));
  overview.add(outcome("c.xlsx", { engine: "E-2", day: "2025-06-01", tallies: [tally("refused", "taper", 9)], sizes: [wear(0.03)] }, 9));
  overview.add(outcome("d.csv", { tallies: [tally("outside limit", "bore wear", 1, "A")] }, 1));
  overview.add({ ...outcome("e.xlsx", undefined, 4), isUnchanged: true });
  overview.add({ ...outcome("f.xlsx", undefined), rowsIn: 0, checked: 0, refused: 0, unread: "is not there" });
  const part = overviewPart(overview, (name) => (name === "b.xlsx" ? "input-2" : undefined)).html;
  const text = textOf(part);

  test("the worst engine is the one with most outside its limits, whatever else was found", () => {
    expect(overview.engines.map(({ engine, outside, others, inputs, lastDay }) => [engine, outside, others, inputs, lastDay])).toEqual([
      ["E-1", 3, 0, 2, "2025-05-01"],
      ["d.csv, engine A", 1, 0, 1, ""],
      ["E-2", 0, 9, 1, "2025-06-01"],
    ]);
    expect(part).toContain('<a href="#input-2">b.xlsx</a>');
  });

  test("findings are counted by kind and characteristic, with the inputs in which they stand", () => {
    expect(text).toContain("In inputs taper refused 9 1 bore wear outside limit 4 3");
  });

  test("nothing is passed over in silence: sums, unread, unchanged and unknown inputs", () => {
    expect(text).toContain("6 inputs: 17 findings; 1 not read in full.");
    expect(text).toContain("25 of 30 rows checked, 5 could not be, of them 1 input unchanged and taken from the ledger.");
    expect(text).toContain("Of 1 input only the counts are known");
    expect(textOf(leftOutPart(3, [{ name: "f.xlsx", why: "is not there" }]).html)).toMatch(/3 others have none\..* Not read in full: f\.xlsx is not there\./);
  });

  test("the readings of a characteristic stand in one drawing over their days, with its limit", () => {
    expect(part.match(/<svg/g)).toHaveLength(1);
    expect(part).toContain("2024-05-01 E-1: 0.090, outside; 2025-05-01 E-1: 0.095, outside; 2025-06-01 E-2: 0.030. Limits: at most 0.08.");
  });

  test("inputs without a day are counted beside the trends", () => {
    const undated = new Overview();
    undated.add(outcome("a.xlsx", { sizes: [wear(0.03)] }));
    expect(textOf(overviewPart(undated, () => undefined).html)).toContain("1 input gives no day of measurement and stands in no trend.");
  });

  test("thousands of inputs take no more room than their sums, and lists say what they leave out", () => {
    const long = new Overview();
    for (let i = 0; i < 3000; i++) long.add(outcome(`${i}.xlsx`, { engine: `E-${i}`, tallies: [tally("outside limit", `c${i % 30}`, 1)] }, 1));
    const page = textOf(overviewPart(long, () => undefined).html);
    expect(page).toContain("2\u202f980 more engines with findings are not listed here".replace("\u202f", " "));
    expect(page).toContain("10 more kinds of findings are not listed here");
  });

  test("hostile text stays text", () => {
    const hostile = new Overview();
    hostile.add(outcome(HOSTILE, { engine: HOSTILE, tallies: [tally("refused", HOSTILE, 1)] }, 1));
    expect(overviewPart(hostile, () => undefined).html + leftOutPart(1, [{ name: HOSTILE, why: HOSTILE }]).html).not.toContain("<script");
  });
});
