import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { CheckResult, Finding } from "../../src/check/finding.ts";
import { broadcast } from "../../src/core/broadcast.ts";
import { shimPlan } from "../../src/functions/valves/shim-plan.ts";
import { placeName } from "../../src/workbook/address.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";
import { Made } from "./made.ts";

// Readings and limits are invented; what they come to is worked out by hand beside them.

const LEAST = { cylinders: 1, heights: 2, axes: 2, valves: 2 };
const MOST = { cylinders: 16, heights: 5, axes: 4, valves: 5, unit: "in", secondReadings: true };

const errorsIn = ({ sheets }: WorkbookSnapshot): string[] =>
  sheets.flatMap(({ name, values }) =>
    values.flatMap((line, row) =>
      line.flatMap((cell, column) =>
        typeof cell === "object" && cell !== null ? [`${placeName({ sheet: name, row, column })}: ${cell.message ?? cell.error}`] : [],
      ),
    ),
  );

async function look(made: Made): Promise<CheckResult> {
  const snapshot = await made.host.read();
  expect(made.host.notes()).toEqual([]);
  expect(errorsIn(snapshot)).toEqual([]);
  return checkWorkbook(snapshot);
}

const brief = ({ kind, label, sentence }: Finding): string => `${kind} | ${label} | ${sentence}`;

test("a new workbook shows no error and nothing to judge: only that the bores have no readings yet", async () => {
  for (const choices of [LEAST, { cylinders: 3 }, MOST]) {
    const { findings, rowsIn, refused } = await look(await Made.of(choices));
    expect([rowsIn, refused]).toEqual([0, 0]);
    expect(findings.map(({ kind }) => kind)).toEqual(Array.from({ length: choices.cylinders }, () => "missing reading"));
    expect(findings[0]!.sentence).toMatch(/^no readings yet in B4:/);
  }
});

test("the crankshaft: clearances by the turning journal, wear by the smallest reading, verdicts by the shop's limits", async () => {
  const made = await Made.of({ cylinders: 2, heights: 2, axes: 2, valves: 2 });
  await made.item("Standard main journal", 50);
  await made.item("Standard crankpin", 45);
  // 50.05 − 49.99 and 50.04 − 49.97; the third main is not measured.
  await made.fill("MainBearings", "Main bearing bore upright", [50.05, 50.04]);
  await made.fill("MainBearings", "Main bearing bore across", [50.06, 50.05]);
  await made.fill("MainBearings", "Main journal upright", [49.99, 49.96]);
  await made.fill("MainBearings", "Main journal across", [49.98, 49.97]);
  // 45.03 − 44.99 and 45.09 − 44.95.
  await made.fill("BigEnds", "Big end bore upright", [45.03, 45.09]);
  await made.fill("BigEnds", "Big end bore across", [45.04, 45.1]);
  await made.fill("BigEnds", "Crankpin upright", [44.99, 44.95]);
  await made.fill("BigEnds", "Crankpin across", [44.98, 44.9]);
  await made.fill("CrankshaftEndFloat", "End float", [0.12]);
  await made.limit("Main bearing clearance", 0.03, 0.08);
  await made.limit("Main journal wear", null, 0.03);
  await made.limit("Big end clearance", 0.03, 0.1);
  await made.limit("Crankpin wear", null, 0.05);
  await made.limit("Crankshaft end float", 0.08, 0.2);
  const column = async (table: string, heading: string) => await made.column(table, heading);
  expect(await column("MainBearings", "Main bearing clearance")).toEqual([0.06, 0.07, ""]);
  expect(await column("MainBearings", "Main bearing clearance verdict")).toEqual(["within", "within", ""]);
  expect(await column("MainBearings", "Main journal wear")).toEqual([0.02, 0.04, ""]);
  expect(await column("MainBearings", "Main journal wear verdict")).toEqual(["within", "over", ""]);
  expect(await column("BigEnds", "Big end clearance")).toEqual([0.04, 0.14]);
  expect(await column("BigEnds", "Big end clearance verdict")).toEqual(["within", "over"]);
  expect(await column("BigEnds", "Crankpin wear")).toEqual([0.02, 0.1]);
  expect(await column("BigEnds", "Crankpin wear verdict")).toEqual(["within", "over"]);
  expect(await column("CrankshaftEndFloat", "End float verdict")).toEqual(["within"]);
  const { findings, refused } = await look(made);
  expect(refused).toBe(0);
  expect(findings.filter(({ kind }) => kind === "outside limit").map(({ label, value }) => `${label}: ${value}`)).toHaveLength(3);
  expect(findings.filter(({ kind }) => kind === "refused" || kind === "likely slip")).toEqual([]);
});

test("one cylinder at two heights: every result and verdict is the one worked out by hand", async () => {
  const made = await Made.of(LEAST);
  await made.item("Standard bore", 73);
  await made.item("Stroke", 72);
  await made.item("Gasket bore", 74.5);
  await made.item("Gasket thickness", 1.2);
  await made.item("Shim step", 0.05);
  const bores = { "Top thrust": 73.05, "Top pin": 73.03, "Bottom thrust": 73.02, "Bottom pin": 73.02 };
  for (const [heading, reading] of Object.entries(bores)) await made.type("BoreReadings", heading, 0, reading);
  await made.type("PistonReadings", "Skirt", 0, 72.98);
  await made.type("PistonReadings", "Pin bore", 0, 18.01);
  await made.type("PistonReadings", "Pin", 0, 18);
  await made.fill("RingReadings", "End gap", [0.22, 0.3, 0.4]);
  await made.fill("RingReadings", "Groove", [1.54, 1.54, 3.05]);
  await made.fill("RingReadings", "Ring width", [1.48, 1.5, 3]);
  await made.fill("ValveReadings", "Clearance", [0.12, 0.2]);
  await made.fill("ValveReadings", "Shim", [2.45, 2.5]);
  await made.type("VolumeReadings", "Chamber", 0, 28);
  await made.type("VolumeReadings", "Piston crown", 0, 0);
  await made.type("VolumeReadings", "Deck", 0, 0.1);
  for (const [heading, reading] of Object.entries({ Dry: 11.8, Wet: 12.4, Supply: 6, Held: 5.4 })) await made.type("PressureTests", heading, 0, reading);
  await made.limit("Taper", null, 0.03);
  await made.limit("Out-of-round", null, 0.015);
  await made.limit("Bore wear", null, 0.05);
  await made.limit("Piston clearance", 0.02, 0.04);
  await made.limit("Pin clearance", 0.002, 0.012);
  await made.limit("Ring end gap, top", 0.25, 0.5);
  await made.limit("Ring end gap, second", 0.25, 0.5);
  await made.limit("Ring end gap, oil", 0.2, 0.35);
  for (const ring of ["top", "second", "oil"]) await made.limit(`Ring side clearance, ${ring}`, 0.03, 0.06);
  await made.limit("Valve clearance, inlet", 0.15, 0.25);
  await made.limit("Valve clearance, exhaust", 0.15, 0.25);
  await made.limit("Compression ratio", 9, 10);
  await made.limit("Squish", 1, 1.3);
  await made.limit("Compression pressure", 11, null);
  await made.limit("Leak-down", null, 10);

  const one = async (table: string, heading: string) => (await made.column(table, heading))[0];
  // Top to bottom along thrust 73.05 − 73.02, along pin 73.03 − 73.02; across axes at the top 0.02; largest − 73.
  expect(await one("BoreReadings", "Taper")).toBe(0.03);
  expect(await one("BoreReadings", "Out-of-round")).toBe(0.02);
  expect(await one("BoreReadings", "Wear")).toBe(0.05);
  expect([await one("BoreReadings", "Taper verdict"), await one("BoreReadings", "Out-of-round verdict"), await one("BoreReadings", "Wear verdict")]).toEqual([
    "within",
    "over",
    "within",
  ]);
  // 73.02 − 72.98, exactly on the limit, and 18.01 − 18.
  expect([await one("PistonReadings", "Piston clearance"), await one("PistonReadings", "Piston clearance verdict")]).toEqual([0.04, "within"]);
  expect([await one("PistonReadings", "Pin clearance"), await one("PistonReadings", "Pin clearance verdict")]).toEqual([0.01, "within"]);
  expect(await made.column("RingReadings", "End gap verdict")).toEqual(["under", "within", "over"]);
  // From 0.22 to 0.375, the middle of 0.25 and 0.5; 0.4 is over 0.35.
  expect(await made.column("RingReadings", "To file")).toEqual([0.155, 0, "too wide: 0.4 is over 0.35, and filing cannot close it"]);
  expect(await made.column("RingReadings", "Side clearance")).toEqual([0.06, 0.04, 0.05]);
  expect(await made.column("RingReadings", "Side clearance verdict")).toEqual(["within", "within", "within"]);
  expect(await made.column("ValveReadings", "Clearance verdict")).toEqual(["under", "within"]);
  // 2.45 + 0.12 − 0.20 = 2.37, nearest step 2.35; 2.5 + 0.2 − 0.2.
  expect(await made.column("ValveReadings", "Shim to fit")).toEqual([2.35, 2.5]);
  // Mean bore 73.03: swept π/4 × 7.303² × 7.2 = 301.594; gasket π/4 × 7.45² × 0.12 = 5.231; deck π/4 × 7.303² × 0.01 = 0.419.
  expect(await one("VolumeReadings", "Swept")).toBeCloseTo(301.594, 2);
  expect(await one("VolumeReadings", "Gasket")).toBeCloseTo(5.231, 3);
  expect(await one("VolumeReadings", "Deck space")).toBeCloseTo(0.419, 3);
  // (301.594 + 33.650) ÷ 33.650.
  expect(await one("VolumeReadings", "Ratio")).toBeCloseTo(9.963, 2);
  expect(await one("VolumeReadings", "Ratio verdict")).toBe("within");
  expect([await one("VolumeReadings", "Squish"), await one("VolumeReadings", "Squish verdict")]).toEqual([1.3, "within"]);
  expect([await one("PressureTests", "Dry verdict"), await one("PressureTests", "Leak-down"), await one("PressureTests", "Leak-down verdict")]).toEqual([
    "within",
    10,
    "within",
  ]);

  const result = await look(made);
  expect(
    result.findings
      .filter(({ kind }) => kind === "outside limit")
      .map(brief)
      .sort(),
  ).toEqual([
    "outside limit | Cylinder 1, Inlet, Clearance | 0.12 is under the lower limit 0.15 by 0.03",
    "outside limit | Cylinder 1, Oil, End gap | 0.4 is over the upper limit 0.35 by 0.05",
    "outside limit | Cylinder 1, Out-of-round | 0.02 is over the upper limit 0.015 by 0.005",
    "outside limit | Cylinder 1, Top, End gap | 0.22 is under the lower limit 0.25 by 0.03",
  ]);
  expect(result.findings.filter(({ kind }) => kind !== "outside limit").map(brief)).toEqual([]);
  expect(result.refused).toBe(0);
  expect(result.rowsIn).toBe(17);

  const summary = await made.column("SummaryCounts", "Over");
  expect(summary[made.rowOf("SummaryCounts", "Ring end gap")]).toBe(1);
  // A valve is measured again after running in, not before.
  expect((await made.column("SummaryCounts", "Not judged yet"))[made.rowOf("SummaryCounts", "Valve clearance, re-checked")]).toBe(2);
});

test("sixteen cylinders in inches, five heights, four axes, five valves, second readings: verdicts stand in the right rows", async () => {
  const made = await Made.of(MOST);
  const headings = made.headings("BoreReadings").slice(1, 21);
  const rows = Array.from({ length: 16 }, () => headings.map(() => 3.5005));
  // Cylinder 16: 3.5005 at the top along the last axis and 3.4985 at the bottom; cylinder 9 is round and straight.
  rows[15]![19] = 3.4985;
  const { sheet, row, column } = made.at("BoreReadings", headings[0]!);
  await made.host.write([{ sheet, row, column, cells: rows }]);
  await made.item("Standard bore", 3.5);
  await made.fill(
    "PistonReadings",
    "Skirt",
    Array.from({ length: 16 }, (_, i) => (i === 8 ? 3.497 : 3.498)),
  );
  await made.fill(
    "ValveReadings",
    "Clearance",
    Array.from({ length: 80 }, (_, i) => (i === 79 ? 0.013 : 0.008)),
  );
  await made.limit("Taper", null, 0.0015);
  await made.limit("Out-of-round", null, 0.002);
  await made.limit("Bore wear", null, 0.004);
  await made.limit("Piston clearance", 0.001, 0.003);
  await made.limit("Valve clearance, inlet", 0.006, 0.01);
  await made.limit("Valve clearance, exhaust", 0.006, 0.012);
  expect((await made.column("BoreReadings", "Taper verdict")).map((verdict) => verdict === "within").lastIndexOf(false)).toBe(15);
  expect((await made.column("BoreReadings", "Taper verdict"))[15]).toBe("over");
  expect((await made.column("BoreReadings", "Out-of-round verdict"))[15]).toBe("within");
  expect((await made.column("PistonReadings", "Piston clearance verdict"))[8]).toBe("over");
  const { findings, refused } = await look(made);
  expect(refused).toBe(0);
  expect(
    findings
      .filter(({ kind }) => kind === "outside limit")
      .map(brief)
      .sort(),
  ).toEqual([
    "outside limit | Cylinder 16, Exhaust 2, Clearance | 0.013 is over the upper limit 0.012 by 0.001",
    "outside limit | Cylinder 16, Piston clearance | 0.0005 is under the lower limit 0.001 by 0.0005",
    "outside limit | Cylinder 16, Taper | 0.002 is over the upper limit 0.0015 by 0.0005",
    "outside limit | Cylinder 9, Piston clearance | 0.0035 is over the upper limit 0.003 by 0.0005",
  ]);
  expect(findings.filter(({ kind }) => !["outside limit", "missing reading"].includes(kind)).map(brief)).toEqual([]);
}, 60_000);

test("a gauge's uncertainty reaches the verdicts, and a gauge past its date is said beside its readings", async () => {
  const made = await Made.of({ cylinders: 1, heights: 2, axes: 2, secondReadings: true });
  await made.type("Gauges", "Gauge id", 0, "BG1");
  await made.type("Gauges", "U of the gauge", 0, 0.003);
  await made.type("Gauges", "Calibration due", 0, 46_000);
  for (const what of ["Bores", "Bores, second readings"]) {
    await made.type("Measurements", "Gauge", made.rowOf("Measurements", what), "BG1");
    await made.type("Measurements", "Measured on", made.rowOf("Measurements", what), what === "Bores" ? 46_000 : 46_001);
  }
  const calibration = await made.column("Measurements", "Calibration");
  expect([calibration[0], calibration[1]]).toEqual(["in date", "past its date"]);
  const bores = { "Top thrust": 73.03, "Top pin": 73.03, "Bottom thrust": 73.002, "Bottom pin": 73.03 };
  for (const [heading, reading] of Object.entries(bores)) await made.type("BoreReadings", heading, 0, reading);
  await made.limit("Taper", null, 0.03);
  // U of a difference of two readings: 0.003 × √2 = 0.0042, so that 0.028 under 0.03 proves nothing.
  expect((await made.column("BoreReadings", "Taper verdict"))[0]).toBe("not proven");
  await made.fill("SecondBores", "Second reading", [73.033, 73.03, 73.002, 73.036]);
  // The readings may differ by 0.0042: 0.003 is less, 0.006 is more.
  expect(await made.column("BothBores", "Disagreement verdict")).toEqual(["within", "within", "within", "over"]);
  const { findings } = await look(made);
  expect(findings.filter(({ kind }) => kind === "outside limit").map(brief)).toEqual([
    "outside limit | Cylinder 1, bottom, pin, Disagreement | 0.006 is over the upper limit 0.00424 by 0.00176",
  ]);
});

test("a perfect part is within, also where somebody types a lower limit of 0 and the gauge has an uncertainty", async () => {
  const made = await Made.of({ cylinders: 2, heights: 2, axes: 2 });
  await made.type("Gauges", "Gauge id", 0, "BG1");
  await made.type("Gauges", "U of the gauge", 0, 0.003);
  for (const what of ["Bores", "Ring end gaps", "Compression"]) await made.type("Measurements", "Gauge", made.rowOf("Measurements", what), "BG1");
  for (const heading of ["Top thrust", "Top pin", "Bottom thrust", "Bottom pin"]) await made.type("BoreReadings", heading, 0, 73.01);
  await made.item("Standard bore", 73.01);
  await made.fill("PressureTests", "Dry", [12.1, 12.1]);
  await made.limit("Taper", 0, 0.02);
  await made.limit("Out-of-round", 0, 0.02);
  // What wear is worked out from can be the wrong standard size, so that 0 is a limit there.
  await made.limit("Bore wear", 0, 0.05);
  await made.limit("Compression spread", 0, 1);
  const verdict = async (table: string, heading: string) => (await made.column(table, heading))[0];
  expect(await verdict("BoreReadings", "Taper verdict")).toBe("within");
  expect(await verdict("BoreReadings", "Out-of-round verdict")).toBe("within");
  expect(await verdict("BoreReadings", "Wear verdict")).toBe("not proven");
  expect(await verdict("PressureSpread", "Spread verdict")).toBe("within");
  const { findings } = await look(made);
  expect(findings.filter(({ kind }) => kind !== "missing reading" && kind !== "missing limit").map(brief)).toEqual([
    "not proven | Cylinder 1, Wear | 0 is on the lower limit 0, not proven either way with an uncertainty of 0.003",
  ]);
});

test("a valve inside its limits keeps its shim, on the sheet as in SHIMPLAN; what is to be bought is one size in both", async () => {
  const made = await Made.of({ cylinders: 2, valves: 2 });
  const [clearances, shims] = [
    [0.16, 0.25, 0.3, 0.1],
    [2.5, 2.6, 2.45, 2.62],
  ];
  await made.item("Shim step", 0.05);
  await made.fill("ValveReadings", "Clearance", clearances);
  await made.fill("ValveReadings", "Shim", shims);
  for (const side of ["inlet", "exhaust"]) await made.limit(`Valve clearance, ${side}`, 0.15, 0.25);
  const planned = broadcast(shimPlan, [shims.map((size) => [size]), clearances.map((gap) => [gap]), 0.15, 0.25, "", 0.05]) as unknown[][];
  expect(planned.slice(1).map(([, , from]) => from)).toEqual(["its own", "its own", "buy", "buy"]);
  expect(await made.column("ValveReadings", "Shim to fit")).toEqual(planned.slice(1).map(([, shim]) => shim));
});

test("one compression test has one answer: by the rule that is typed, on the sheet, in the wet test and in what is found", async () => {
  const made = await Made.of({ cylinders: 4 });
  await made.fill("PressureTests", "Dry", [150, 148, 152, 118]);
  await made.fill("PressureTests", "Wet", [152, 150, 155, 119]);
  // Nothing is built in: without a rule no cylinder is called low.
  expect(await made.column("PressureTests", "By the rule")).toEqual(["", "", "", ""]);
  expect(await made.column("PressureTests", "Wet points at")).toEqual(["", "", "", ""]);
  // 75 % of the highest passes 118, a difference of 10 does not: TM 10-3930-618-20.
  await made.type("CompressionRule", "Rule", 0, "share");
  await made.type("CompressionRule", "Rule limit", 0, 0.75);
  expect((await made.column("PressureTests", "By the rule"))[3]).toBe("within: 118, share rule asks at least 114 (0.75 of the highest, 152)");
  expect((await made.column("PressureTests", "Wet points at"))[3]).toBe("not low: 118, share rule asks at least 114 (0.75 of the highest, 152)");
  expect((await look(made)).findings.filter(({ kind }) => kind === "outside limit")).toEqual([]);
  await made.type("CompressionRule", "Rule", 0, "difference");
  await made.type("CompressionRule", "Rule limit", 0, 10);
  expect((await made.column("PressureTests", "By the rule"))[3]).toBe("under: 118, difference rule asks at least 142 (highest 152 less 10)");
  expect((await made.column("PressureTests", "Wet points at"))[3]).toBe(
    "valves: from 118 to 119 with oil; difference rule asks at least 142 (highest 152 less 10)",
  );
  const { findings } = await look(made);
  expect(findings.filter(({ kind }) => kind === "outside limit").map(brief)).toEqual([
    "outside limit | Cylinder 4, Dry, difference rule | 118 is under the lower limit 142 by 24",
  ]);
  const counted = async (word: string) => (await made.column("SummaryCounts", word))[made.rowOf("SummaryCounts", "Compression, by the rule")];
  expect([await counted("Within"), await counted("Under"), await counted("Not judged yet")]).toEqual([3, 1, 0]);
});

test("a half-filled workbook stays quiet: what is missing is named where it is missing, and nothing else is found", async () => {
  const made = await Made.of({ cylinders: 3 });
  await made.type("BoreReadings", "Top thrust", 0, 73.02);
  await made.limit("Taper", null, 0.02);
  await made.limit("Ring end gap, top", 0.25, null);
  await made.type("PistonReadings", "Skirt", 1, 72.98);
  await made.type("ValveReadings", "Clearance", 2, 0.2);
  const { findings, refused, rowsIn, checked } = await look(made);
  expect([refused, rowsIn]).toEqual([0, checked]);
  expect(new Set(findings.map(({ kind }) => kind))).toEqual(new Set(["missing reading", "missing limit"]));
  const named = findings.map(({ cell }) => placeName(cell));
  expect(named).toContain("Bores!C4");
  expect(named).toContain(placeName(made.at("RingReadings", "End gap", 0)));
  expect(findings.filter(({ kind }) => kind === "missing limit").map(brief)).toEqual([
    "missing limit | Cylinder 2, Inlet, Clearance | 0.2 has no limit to be judged by",
  ]);
});

test("the run-in log says what is due at these hours, and a changed clearance from an unchanged one", async () => {
  const made = await Made.of({ cylinders: 1 });
  await made.host.write([{ sheet: "Run-in log", row: 2, column: 1, cells: [[50]] }]);
  await made.fill("ServiceJobs", "Due at hours", [25, 50, 51]);
  await made.type("ServiceJobs", "Done at hours", 0, 24);
  expect((await made.column("ServiceJobs", "State")).slice(0, 4)).toEqual(["done", "due", "later", ""]);
  await made.type("Gauges", "Gauge id", 0, "F1");
  await made.type("Gauges", "U of the gauge", 0, 0.01);
  for (const what of ["Valve clearances", "Valve clearances, re-check"]) await made.type("Measurements", "Gauge", made.rowOf("Measurements", what), "F1");
  await made.fill("ValveReadings", "Clearance", [0.2, 0.2]);
  await made.fill("ClearanceRecheck", "Re-checked", [0.19, 0.17]);
  await made.limit("Valve clearance, inlet", 0.15, 0.25);
  await made.limit("Valve clearance, exhaust", 0.15, 0.25);
  expect(await made.column("ClearanceRecheck", "Change")).toEqual(["cannot tell: up to 0.022 may hide", "smaller, beyond its gauge"]);
  expect(await made.column("ClearanceRecheck", "Re-checked verdict")).toEqual(["within", "within"]);
  await made.type("ClearanceRecheck", "Re-checked", 1, 0.13);
  expect((await made.column("ClearanceRecheck", "Re-checked verdict"))[1]).toBe("under");
});

test("second readings that disagree by more than the gauge can are outside a limit, those that may differ so much are not", async () => {
  const made = await Made.of({ cylinders: 1, heights: 2, axes: 2, valves: 2, secondReadings: true });
  await made.type("Gauges", "Gauge id", 0, "BG-1");
  await made.type("Gauges", "U of the gauge", 0, 0.003);
  for (const name of ["Bores", "Bores, second readings"]) await made.type("Measurements", "Gauge", made.rowOf("Measurements", name), "BG-1");
  const first = { "Top thrust": 73.02, "Top pin": 73.02, "Bottom thrust": 73.01, "Bottom pin": 73.01 };
  for (const [heading, reading] of Object.entries(first)) await made.type("BoreReadings", heading, 0, reading);
  // Both may be off by 0.003: the root of the sum of the squares is 0.00424.
  await made.fill("SecondBores", "Second reading", [73.024, 73.025, 73.01, 73.006]);
  const { findings, rowsIn, checked, refused } = await look(made);
  expect(findings.filter(({ kind }) => kind === "outside limit").map(brief)).toEqual([
    "outside limit | Cylinder 1, top, pin, Disagreement | 0.005 is over the upper limit 0.00424 by 0.00076",
  ]);
  // Taper and out-of-round, which have no limit yet, are rows as well.
  expect([rowsIn, checked + refused]).toEqual([6, 6]);
});

test("an inch sheet takes chambers in cm³ and gives all volumes in it", async () => {
  const made = await Made.of({ cylinders: 1, heights: 2, axes: 2, valves: 2, unit: "in", without: "bores" });
  await made.item("Stroke", 3);
  await made.item("Gasket bore", 3.1);
  await made.item("Gasket thickness", 0.04);
  await made.type("VolumeReadings", "Mean bore", 0, 3);
  await made.type("VolumeReadings", "Chamber", 0, 36);
  await made.type("VolumeReadings", "Piston crown", 0, 0);
  await made.type("VolumeReadings", "Deck", 0, 0.01);
  const one = async (heading: string) => (await made.column("VolumeReadings", heading))[0] as number;
  // π/4 · 3² · 3 = 21.20575 in³, π/4 · 3.1² · 0.04 = 0.301907 in³, π/4 · 3² · 0.01 = 0.0706858 in³; 1 in³ is 16.387064 cm³ (NIST SP 811, appendix B.8).
  expect(await one("Swept")).toBeCloseTo(347.5, 2);
  expect(await one("Gasket")).toBeCloseTo(4.9474, 3);
  expect(await one("Deck space")).toBeCloseTo(1.1583, 3);
  // 1 + 347.5000 / (36 + 4.9474 + 1.1583).
  expect(await one("Ratio")).toBeCloseTo(9.253, 2);
  expect((await look(made)).refused).toBe(0);
});
