import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Analysis } from "../../src/check/analysis.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import { storedLayout } from "../../src/layout/mapping.ts";
import { gather, reportInput } from "../../src/report/gather/workbook.ts";
import { root } from "../../src/tools/paths.ts";
import { type Typed, workbook } from "../check/workbook.ts";
import { everything } from "./page.ts";

const content = () => reportInput(everything()).content;
const of = (sheets: Record<string, Typed>) => gather(new Analysis(workbook(sheets)), []);

describe("whose engine it is and what it was measured with", () => {
  test("entries stand right of their names, with their unit, and a day is a day", () => {
    expect(content().identity).toEqual([
      { name: "Engine", text: "A" },
      { name: "Serial number", text: "E-0417" },
      { name: "Owner", text: "Hire-boat yard at the lock" },
      { name: "Hours run", text: "1240 h" },
      // Day 46320 of a sheet that counts 1 January 1900 as day 1 and holds a 29 February 1900 (ISO/IEC 29500-1, 18.17.4.1): 2026-10-25.
      { name: "Stripped on", text: "2026-10-25" },
      { name: "Unit of length", text: "mm" },
    ]);
  });

  test("names that are headings of a table, and names without an entry, tell nothing", () => {
    const { identity } = of({
      Bores: [["Engine", "Cylinder", "Bore", "Taper", "Verdict"], ["A", 1, 73.02, 0.01, "within"], [null], ["Owner", null, "of the boat"], ["Engine", "Type"]],
    });
    expect(identity).toEqual([]);
  });

  test("gauges are copied as they stand, those that measured nothing left out", () => {
    expect(content().gauges).toEqual([
      {
        headings: ["Gauge id", "Kind", "Resolution", "U of the gauge", "Unit", "Calibration due"],
        rows: [["BG-1", "bore gauge", "0.001", "0.004", "mm", "2027-04-23"]],
      },
    ]);
    expect(
      of({
        Engine: [
          ["Measured", "Gauge", "Measured on"],
          ["Bores", null, null],
          ["Skirts", "M-2", 46321],
        ],
      }).gauges[0]!.rows,
    ).toEqual([["Skirts", "M-2", "2026-10-26"]]);
  });

  test("limits come with the source that is typed beside them; those not yet typed are left out", () => {
    expect(content().limits).toEqual([
      { characteristic: "Taper", lower: "", upper: "0.02", unit: "mm", near: "", source: "service manual, p. 4-12" },
      { characteristic: "Bore wear", lower: "", upper: "0.08", unit: "mm", near: "", source: "" },
    ]);
  });

  test("a table of readings with limits beside them is none of limits", () => {
    expect(
      of({
        Readings: [
          ["Characteristic", "Value", "Lower", "Upper"],
          ["bore", 73.02, 73, 73.08],
        ],
      }).limits,
    ).toEqual([]);
  });
});

describe("what can be drawn", () => {
  test("a bore is the block that a function takes, with its heights, axes, unit, standard and limit", () => {
    expect(content().bores.slice(0, 2)).toEqual([
      {
        place: "Bores!C3:D4",
        what: {
          name: "Cylinder 1",
          unit: "mm",
          heights: ["top", "bottom"],
          axes: ["Thrust", "Pin"],
          readings: [
            [73.025, 73.02],
            [73.015, 73.015],
          ],
          standard: 73,
          // BOREWEAR is judged by at most 0.08 in Limits!C3.
          limit: 73.08,
        },
      },
      { place: "Bores!C5:D6", what: expect.objectContaining({ name: "Cylinder 2", limit: 73.08 }) },
    ]);
  });

  test("with axes each row is a bore, height by height; what is still blank stays blank", () => {
    const [, , first, second] = content().bores;
    expect(first).toEqual({
      place: "'Bore book'!B2:E2",
      what: expect.objectContaining({
        name: "Cylinder 1",
        heights: ["Top", "Bottom"],
        axes: ["thrust", "pin"],
        readings: [
          [73.025, 73.02],
          [73.015, 73.015],
        ],
      }),
    });
    expect(second!.what.readings).toEqual([
      [73.06, 73.035],
      [null, 73.025],
    ]);
    expect(content().bores).toHaveLength(4);
  });

  test("a bore that several functions take is one bore, one not begun is none", () => {
    const { bores } = of({
      Bores: [
        ["Cylinder", "Thrust", "Pin", "Taper"],
        ["1", 73.02, 73.01, "=HATCH.TAPER(B2:C2)+HATCH.OUTOFROUND(B2:C2)"],
        ["2", null, null, "=HATCH.TAPER(B3:C3)"],
      ],
    });
    expect(bores.map(({ place }) => place)).toEqual(["Bores!B2:C2"]);
  });

  test("cells without words are numbered", () => {
    const { bores } = of({ Sheet1: [[73.02, 73.01], [73.01, 73], ["=HATCH.TAPER(A1:B2)"]] });
    expect(bores[0]).toEqual({
      place: "Sheet1!A1:B2",
      what: expect.objectContaining({ name: "Sheet1!A1:B2", heights: ["height 1", "height 2"], axes: ["axis 1", "axis 2"], unit: undefined }),
    });
  });

  test("a trace of roundness has the unit of its heading", () => {
    expect(content().traces).toEqual([
      { place: "Form!B3:B14", what: { name: "Form, Deviation (µm)", unit: "µm", deviations: [3, 6, 2, -4, -1, 5, 7, 1, -6, -2, 4, 0] } },
    ]);
  });

  test("readings round a turn and heights of a face have their names, once, and wait until something is measured", () => {
    const { turns, faces } = of({
      Seats: [
        ["Seat", "0° (mm)", "90° (mm)", "180° (mm)", "270° (mm)", "Run-out"],
        ["1", 0, 0.02, 0.01, 0, "=HATCH.RUNOUT(B2:E2)"],
        ["2", null, null, null, null, "=HATCH.RUNOUT(B3:E3)"],
      ],
      Head: [
        ["Height (mm)", "front", "middle", "rear"],
        ["exhaust side", 0, 0.02, 0, "=HATCH.FLATNESS(B2:D4)"],
        ["middle", 0.01, null, 0.01, "=HATCH.FLATNESSWITHIN(B2:D4, 2, 2)"],
        ["inlet side", 0, 0.01, 0],
      ],
    });
    expect(turns).toEqual([{ place: "Seats!B2:E2", what: { name: "Seats, Seat 1", unit: "mm", readings: [0, 0.02, 0.01, 0] } }]);
    expect(faces).toEqual([
      {
        place: "Head!B2:D4",
        what: {
          name: "Head",
          unit: "mm",
          rows: ["exhaust side", "middle", "inlet side"],
          columns: ["front", "middle", "rear"],
          heights: [
            [0, 0.02, 0],
            [0.01, null, 0.01],
            [0, 0.01, 0],
          ],
        },
      },
    ]);
  });

  test("a stylus profile has its step and cut-off, and a unit only where its own heading names one", () => {
    const heights = Array.from({ length: 12 }, (_, i) => [i % 3]);
    const sheet = (heading: string): Typed => [[heading, "=HATCH.SURFACE(A2:A13, 0.004)"], ...heights];
    const { surfaces } = of({ Engine: [["Unit of length", "mm"]], Trace: sheet("Height µm"), Other: sheet("Height") });
    expect(surfaces.map(({ place, what }) => [place, what.name, what.unit, what.spacing, what.cutoff, what.profile.length])).toEqual([
      ["Trace!A2:A13", "Trace, Height µm", "µm", 0.004, 0.8, 12],
      ["Other!A2:A13", "Other, Height", undefined, 0.004, 0.8, 12],
    ]);
  });

  test("a compression test has its cylinders, the unit of its sheet and the rule that judges it", () => {
    expect(content().tests).toEqual([
      {
        place: "Tests!B3:B5",
        what: {
          name: "Tests, Dry",
          unit: "bar",
          cylinders: [
            { name: "Cylinder 1", pressure: 12.1 },
            { name: "Cylinder 2", pressure: 11.8 },
            { name: "Cylinder 3", pressure: 9.9 },
          ],
          rule: { rule: "difference", limit: 1 },
        },
      },
    ]);
  });

  test("a spread that is judged is the difference rule", () => {
    const snapshot = workbook({
      Tests: [["Cylinder", "Dry"], ["1", 12.1], ["2", 11.8], [null], ["=HATCH.COMPRESSIONSPREAD(B2:B3)", "=HATCH.VERDICT(A5, , 1.5)"]],
    });
    expect(reportInput(snapshot).content.tests[0]!.what.rule).toEqual({ rule: "difference", limit: 1.5 });
  });

  test("a rule that is typed goes before the spread that is allowed, wherever they stand", () => {
    const spread = ["=HATCH.COMPRESSIONSPREAD(B2:B3)", "=HATCH.VERDICT(A5, , 1.5)"];
    const ruled = '=HATCH.COMPRESSIONCHECK(B2:B3, "share", 0.8)';
    const testOf = (below: (string | null)[][]) => of({ Tests: [["Cylinder", "Dry"], ["1", 12.1], ["2", 9.2], [null], ...below] }).tests;
    const rule = { rule: "share", limit: 0.8 };
    for (const below of [[spread, [ruled]], [[...spread, ruled]]]) expect(testOf(below).map(({ what }) => what.rule)).toEqual([rule]);
  });

  test("limits typed for the pressures are drawn with what the sheet says by them, and a dead cylinder is one of them", () => {
    const snapshot = workbook({
      Tests: [
        ["Cylinder", "Dry", "Verdict", "Lower", "U"],
        ["1", 12.1, "=HATCH.VERDICT(B2, D$2, , E$2)", 11, 0.3],
        ["2", 11.2, "=HATCH.VERDICT(B3, D$2, , E$2)"],
        ["3", 0, "=HATCH.VERDICT(B4, D$2, , E$2)"],
        ["4", null, "=HATCH.VERDICT(B5, D$2, , E$2)"],
        [null, '=HATCH.COMPRESSIONCHECK(B2:B5, "share", 0.75)'],
      ],
    });
    const { what } = reportInput(snapshot).content.tests[0]!;
    expect(what).toMatchObject({ rule: { rule: "share", limit: 0.75 }, limits: { lower: 11, upper: undefined } });
    expect(what.cylinders.map(({ pressure, verdict }) => [pressure, verdict])).toEqual([
      [12.1, "within"],
      [11.2, "not proven"],
      [0, "under"],
      [null, undefined],
    ]);
  });

  test("a formula that still waits for its rule draws none", () => {
    const waiting = (rule: string | null) =>
      of({
        Tests: [
          ["Cylinder", "Dry", "Wet", "Points at", "Rule", "Limit"],
          ["1", 12.1, 12.5, '=IF(E$2="","",INDEX(HATCH.WETTEST(B$2:B$3, C$2:C$3, , F$2, E$2), 1))', rule, 0.8],
          ["2", 9.2, 11, '=IF(E$2="","",INDEX(HATCH.WETTEST(B$2:B$3, C$2:C$3, , F$2, E$2), 2))'],
        ],
      }).tests[0]!.what.rule;
    expect(waiting("share")).toEqual({ rule: "share", limit: 0.8 });
    expect(waiting(null)).toBeUndefined();
  });

  test("a wet test is drawn by the rule that it is given, and by none where none is typed", () => {
    const ruleOf = (formula: string) => of({ Tests: [["Cylinder", "Dry", "Wet"], ["1", 12.1, 12.5], ["2", 9.8, 11], [null], [formula]] }).tests[0]!.what.rule;
    expect(ruleOf('=HATCH.WETTEST(B2:B3, C2:C3, , 1.5, "difference")')).toEqual({ rule: "difference", limit: 1.5 });
    expect(ruleOf("=HATCH.WETTEST(B2:B3, C2:C3, , 0.8)")).toEqual({ rule: "share", limit: 0.8 });
    expect(ruleOf("=HATCH.WETTEST(B2:B3, C2:C3)")).toBeUndefined();
  });

  test("changes are named by what both sides are of, and one uncertainty serves all", () => {
    expect(content().changes).toEqual([
      {
        place: "Wear",
        what: {
          name: "Wear",
          changes: [
            { name: "Cylinder 1", unit: "mm", before: 73.01, after: 73.05, uBefore: 0.006, uAfter: 0.008 },
            { name: "Cylinder 2", unit: "mm", before: 73.01, after: 73.016, uBefore: 0.006, uAfter: 0.008 },
            { name: "Cylinder 3", unit: "mm", before: 73.01, after: null, uBefore: 0.006, uAfter: 0.008 },
          ],
        },
      },
    ]);
  });

  test("sizes none of which has been measured again make no plot", () => {
    expect(
      of({
        Wear: [
          ["Build", "Strip-down"],
          [73.01, null, "=HATCH.REALCHANGE(A2, B2, 0.006)"],
        ],
      }).changes,
    ).toEqual([]);
  });
});

test("three layouts of a shop's own, without a formula in them, give the same bores and the same tests", async () => {
  const contents = await Promise.all(
    ["one-row-a-cylinder", "one-row-a-reading", "cylinders-across"].map(async (name) => {
      const host = await openWorkbook(readFileSync(join(root, "samples", "layouts", `${name}.xlsx`)), `${name}.xlsx`);
      const { mapping } = await storedLayout(host);
      return reportInput(await host.read(), mapping).content;
    }),
  );
  const [first, ...others] = contents.map(({ bores, tests }) => [bores.map(({ what }) => what), tests.map(({ what }) => what)]);
  for (const other of others) expect(other).toEqual(first);
  // As samples/layouts/README.md has it: engine A, cylinder 2, and the standard bore with its wear of at most 0.08.
  expect(contents[0]!.bores).toHaveLength(6);
  expect(contents[0]!.bores[1]!.what).toEqual({
    name: "engine A, cylinder 2",
    unit: "mm",
    heights: ["top", "middle", "bottom"],
    axes: ["thrust", "pin"],
    readings: [
      [73.06, 73.035],
      [73.05, 73.03],
      [73.035, 73.025],
    ],
    standard: 73,
    limit: 73.08,
  });
  expect(contents[0]!.tests.map(({ what }) => [what.name, what.rule, what.cylinders.map(({ pressure }) => pressure)])).toEqual([
    ["engine A", { rule: "difference", limit: 1.5 }, [12.1, 11.8, 11.9]],
    ["engine B", { rule: "difference", limit: 1.5 }, [12, 9.2, 11.7]],
  ]);
});
