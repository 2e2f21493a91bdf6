import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type Finding, type JudgedRow, JudgedRows } from "../../src/check/finding.ts";

import { VERSION } from "../../src/core/version.ts";
import { CAUTIONS } from "../../src/report/cautions.ts";
import { NO_SHEET_CONTENT } from "../../src/report/content.ts";
import { MOST_PRINTED } from "../../src/report/sections.ts";
import { root } from "../../src/tools/paths.ts";
import { HOSTILE, TAMED, treeOf } from "../drawings/tree.ts";
import { DATE, fullInput, inputWith, pageOf, textOf } from "./page.ts";

const cell = { sheet: "Bores", row: 6, column: 2 };
const row = (given: Partial<JudgedRow>): JudgedRow => ({
  cell,
  label: "Cylinder 1, Taper",
  value: 0.01,
  lower: null,
  upper: 0.02,
  margin: 0.01,
  verdict: "within",
  uncertainty: 0,
  near: 0,
  rule: null,
  ...given,
});
const finding = (given: Partial<Finding>): Finding => ({
  kind: "outside limit",
  cell,
  label: "",
  value: null,
  lower: null,
  upper: null,
  margin: null,
  verdict: "over",
  details: {},
  sentence: "",
  ...given,
});
const judgedOf = (...rows: JudgedRow[]): JudgedRows => {
  const judged = new JudgedRows();
  for (const one of rows) judged.take(one);
  return judged;
};

describe("one input", () => {
  const page = pageOf(fullInput());
  const text = textOf(page);

  // Taper of cylinder 2: 73.06 − 73.035 = 0.025, more than 0.02 + 0.004; a reading in the bore book and one after the strip-down are blank. Cylinder 3 holds 9.9 where the rule asks 12.1 − 1.
  test("says first what came of it, and where no row got lost", () => {
    expect(text).toContain("Judged: 5 within, 1 over, 1 under. 7 of 7 rows checked. Found beside verdicts: 2 missing readings.");
  });

  test("says in words what makes its verdicts doubtful: numbers in another unit", () => {
    const input = fullInput();
    const units = finding({ kind: "mixed units", label: "U of gauge BG-1", sentence: "the unit says inches where the like readings are in mm" });
    const doubted = textOf(pageOf({ ...input, result: { ...input.result, findings: [...input.result.findings, units] } }));
    expect(doubted).toContain("1 mixed units. To be cleared up first: U of gauge BG-1: the unit says inches where the like readings are in mm.");
    expect(text).not.toContain("To be cleared up first");
  });

  test("names the engine, the gauges and the limits with their source", () => {
    expect(text).toContain("Engine A Serial number E-0417 Owner Hire-boat yard at the lock Hours run 1240 h Stripped on 2026-10-25");
    expect(text).toContain("BG-1 bore gauge 0.001 0.004 mm 2027-04-23");
    expect(text).toContain("Taper 0.02 mm service manual, p. 4-12");
    expect(text).toContain("Bore wear 0.08 mm not given");
  });

  test("lists every result with its limits, uncertainty, margin and verdict, also those within", () => {
    expect(text).toContain("Cylinder 1, Taper Bores!B9 0.010 0.004 at most 0.020 0.010 within");
    expect(text).toContain("Cylinder 2, Taper Bores!B10 0.025 0.004 at most 0.020 −0.005 over");
    expect(text).toContain("Cylinder 2, Wear Bores!D10 0.060 at most 0.080 0.020 within");
  });

  test("says by which rule it was judged, as far as rules were used", () => {
    expect(text).toContain("the rule of ISO 14253-1:1998 holds");
    expect(text).not.toContain("rule 95 %");
    expect(text).toContain("Where none is given, a value is taken as it was read");
    expect(text).not.toContain("Near limit: within");
  });

  test("holds a drawing of every bore, trace, test and change, each with ids of its own and sound in itself", () => {
    const drawings = [...page.matchAll(/<svg[\s\S]*?<\/svg>/g)].map(([svg]) => treeOf(svg));
    expect(drawings.map((drawing) => drawing.children[0]!.text)).toEqual([
      "Bore profile: Cylinder 1",
      "Bore profile: Cylinder 2",
      "Bore profile: Cylinder 1",
      "Bore profile: Cylinder 2",
      "Roundness trace: Form, Deviation (µm)",
      "Compression test: Tests, Dry",
      "Changes: Wear",
    ]);
    const ids = [...page.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(text).toContain("Bore profile, Bores!C3:D4");
  });

  test("tells the cautions, the version, the day and the hash of the input", () => {
    for (const caution of CAUTIONS) expect(text).toContain(`${caution.title}. ${caution.text}`);
    expect(text).toContain(`Made by Crosshatch ${VERSION} on ${DATE}.`);
    expect(text).toContain(`SHA-256 of the file engine-a.xlsx: ${"ab".repeat(32)}`);
  });

  test("holds no script, asks for nothing from elsewhere, and is the same every time", () => {
    expect(page).not.toMatch(/<script|javascript:|\son\w+=|src=|url\((?!#)|@import|<link|<iframe|<img/i);
    expect(page).toContain("default-src 'none'");
    for (const [, href] of page.matchAll(/href="([^"]*)"/g)) expect(href).toMatch(/^#/);
    expect(pageOf(fullInput())).toBe(page);
  });
});

test("the cautions are those of README, word for word", () => {
  const readme = readFileSync(join(root, "README.md"), "utf8");
  const wanted = CAUTIONS.map(({ title, text }) => `- **${title}.** ${text}`);
  expect(/## Cautions\n\n([^#]*)\n\n##/.exec(readme)?.[1]?.split("\n")).toEqual(wanted);
});

test("several inputs get a summary that leads to each, and what goes for all of them once", () => {
  const page = pageOf(
    fullInput(),
    inputWith({ name: "b.csv", unread: "is not there" }),
    inputWith({ name: "c.xlsx", result: { findings: [], rowsIn: 3, checked: 3, refused: 0, inputs: 3 } }),
  );
  const text = textOf(page);
  expect(text).toContain(
    "Summary Input Rows in Checked Refused Findings engine-a.xlsx 7 7 0 1 over, 1 under, 2 missing readings b.csv 0 0 0 none Not read in full. c.xlsx 3 3 0 none",
  );
  for (const index of [1, 2, 3]) expect(page).toContain(`href="#input-${index}"`);
  for (const index of [1, 2, 3]) expect(page).toContain(`id="input-${index}"`);
  expect(text.match(/How verdicts are reached/g)).toHaveLength(1);
  expect(text).toContain("Not read in full: b.csv is not there.");
  expect(text).toContain("Checked in all: 10 of 10 rows checked.");
});

describe("what is missing or strange", () => {
  test("nothing found is said, and so is nothing to check", () => {
    expect(textOf(pageOf(inputWith({ result: { findings: [], rowsIn: 3, checked: 3, refused: 0, inputs: 3 } })))).toContain("Nothing was found.");
    expect(textOf(pageOf(inputWith({})))).toContain("There was nothing to check.");
  });

  test("an input that names no gauges and no source of its limits is told so", () => {
    const text = textOf(pageOf(inputWith({ judged: judgedOf(row({})) })));
    expect(text).toContain("The input names no gauges.");
    expect(text).toContain("the input does not say from which source");
    expect(text).toContain("No uncertainty is given for these readings, so a value is taken as it was read");
  });

  test("a verdict without a number or a limit that could be looked into keeps its row", () => {
    const text = textOf(
      pageOf(inputWith({ judged: judgedOf(row({ value: null, upper: null, margin: null, verdict: "over" }), row({ value: "loose", near: 0.1 })) })),
    );
    expect(text).toContain("Cylinder 1, Taper Bores!C7 none over");
    expect(text).toContain("Bores!C7 loose at most 0.02");
    expect(text).toContain("Near limit: within, but no further");
  });

  test("readings of a file stand by their lines", () => {
    expect(textOf(pageOf(inputWith({ judged: judgedOf(row({ line: 7 })) })))).toContain("line 7 0.01");
  });

  test("a list too long for paper says how much of it is left out", () => {
    const rows = Array.from({ length: MOST_PRINTED + 5 }, () => row({}));
    const findings = Array.from({ length: MOST_PRINTED + 1 }, () => finding({ sentence: "too wide" }));
    const text = textOf(
      pageOf(inputWith({ judged: judgedOf(...rows), result: { findings, rowsIn: rows.length, checked: rows.length, refused: 0, inputs: 0 } })),
    );
    expect(text).toContain("5 more results are not printed here");
    expect(text).toContain("1 more finding is not printed here");
    expect(text.match(/too wide/g)).toHaveLength(MOST_PRINTED);
    expect(text).toContain(`${MOST_PRINTED + 5} within.`);
  });

  test("what cannot be drawn is said in its place", () => {
    const trace = { what: { name: "Bore 1", deviations: [1, null, 2, 3] }, place: "Form!B2:B5" };
    expect(textOf(pageOf(inputWith({ content: { ...NO_SHEET_CONTENT, traces: [trace] } })))).toContain(
      "Roundness trace, Form!B2:B5: Bore 1: 1 of 4 readings are blank, so there is no trace to draw.",
    );
  });

  test("more bores than a report draws are counted", () => {
    const bores = Array.from({ length: 66 }, (_, i) => ({
      what: { name: `Cylinder ${i + 1}`, heights: ["top"], axes: ["thrust"], readings: [[73]] },
      place: `Bores!A${i + 1}`,
    }));
    const page = pageOf(inputWith({ content: { ...NO_SHEET_CONTENT, bores } }));
    expect(page.match(/<svg/g)).toHaveLength(64);
    expect(textOf(page)).toContain("Bore profile: 2 more are not drawn here.");
  });

  test("hostile text stays text wherever it comes from", () => {
    const entry = { name: HOSTILE, text: HOSTILE };
    const page = pageOf(
      inputWith({
        name: HOSTILE,
        notes: [HOSTILE],
        unread: HOSTILE,
        fingerprint: { sha256: HOSTILE, of: "contents" },
        result: { findings: [finding({ label: HOSTILE, sentence: HOSTILE, cell: { ...cell, sheet: HOSTILE } })], rowsIn: 1, checked: 1, refused: 0, inputs: 1 },
        judged: judgedOf(row({ label: HOSTILE, value: HOSTILE, cell: { ...cell, sheet: HOSTILE } })),
        content: {
          ...NO_SHEET_CONTENT,
          identity: [entry],
          gauges: [{ headings: [HOSTILE], rows: [[HOSTILE]] }],
          limits: [{ characteristic: HOSTILE, lower: HOSTILE, upper: HOSTILE, unit: HOSTILE, near: HOSTILE, source: HOSTILE }],
          bores: [{ what: { name: HOSTILE, unit: HOSTILE, heights: [HOSTILE], axes: [HOSTILE], readings: [[1]] }, place: HOSTILE }],
        },
      }),
    );
    expect(page).not.toContain("<script");
    for (const sign of ["\u202e", "\u0000", "\u0007"]) expect(page).not.toContain(sign);
    expect(textOf(page).split(TAMED).length).toBeGreaterThan(15);
  });
});
