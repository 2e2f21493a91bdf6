import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { Finding } from "../../src/check/finding.ts";
import { commonLabel, groupsByCause } from "../../src/check/finding-groups.ts";
import { finding } from "../helpers/finding.ts";
import { Made } from "../setup/made.ts";

const on = (sheet: string, row: number) => ({ sheet, row, column: 2 });
const missing = (sheet: string, row: number) => finding({ kind: "missing reading", cell: on(sheet, row) });
const open = (sheet: string, row: number, uncertainty: number) => finding({ kind: "not proven", cell: on(sheet, row), details: { uncertainty } });
const over = (row: number) => finding({ kind: "outside limit", cell: on("Bores", row), verdict: "over" });
const rows = (findings: readonly Finding[]) => groupsByCause(findings).map((line) => line.findings.map(({ cell }) => `${cell.sheet} ${cell.row}`));

test("every finding stands in one line, in the order given within it, and lines stand where their worst does", () => {
  const given = [over(1), open("Rings", 1, 0.01), missing("Rings", 8), open("Rings", 2, 0.01), missing("Valves", 3), missing("Rings", 9)];
  expect(rows(given)).toEqual([["Bores 1"], ["Rings 1", "Rings 2"], ["Rings 8", "Rings 9"], ["Valves 3"]]);
});

test("readings outside their limits are never put together: each is a part of its own", () => {
  expect(rows([over(1), over(2)])).toEqual([["Bores 1"], ["Bores 2"]]);
});

test("gauges with another U, and other sheets, are other causes", () => {
  expect(rows([open("Rings", 1, 0.01), open("Rings", 2, 0.006), open("Valves", 1, 0.01)])).toHaveLength(3);
});

test("the cause is said for several, and a finding by itself keeps its own sentence", () => {
  const [several, alone] = groupsByCause([open("Rings", 1, 0.01), open("Rings", 2, 0.01), missing("Valves", 3)]);
  expect(several!.cause).toBe("readings on the sheet Rings are too close to a limit for a gauge with U 0.01");
  expect(alone!.cause).toBeNull();
});

test("a slip takes along what it causes, and no more", () => {
  const slip = finding({ kind: "likely slip", cell: on("Bores", 5), details: { causes: ["refused at Bores!H5", "over at Bores!C6"] } });
  const refused = finding({ kind: "refused", cell: on("Bores", 5), details: { why: "a decimal point" } });
  const [first, ...others] = groupsByCause([slip, refused, over(5), over(6)]);
  expect(first).toEqual({ findings: [slip, refused, over(5)], cause: null });
  expect(others).toEqual([{ findings: [over(6)], cause: null }]);
});

test("a slip that causes nothing and one whose findings are not there stand alone", () => {
  const slip = (causes: string[]) => finding({ kind: "likely slip", cell: on("Bores", 5), details: { causes } });
  expect(rows([slip([]), over(5)])).toEqual([["Bores 5"], ["Bores 5"]]);
  expect(rows([slip(["over"]), missing("Bores", 7)])).toEqual([["Bores 5"], ["Bores 7"]]);
});

test("a common label is what all labels have; else what they end with", () => {
  expect(commonLabel(["Cylinder 1, Top, End gap", "Cylinder 2, Oil, End gap"])).toBe("End gap");
  expect(commonLabel(["Cylinder 1, Shim", "Cylinder 1, Clearance"])).toBe("Cylinder 1");
  expect(commonLabel(["Cylinder 1, Shim", "Cylinder 2, Clearance"])).toBe("Shim, Clearance");
  expect(commonLabel(["A, one", "B, two", "C, three", "D, four"])).toBe("one, two, three …");
  expect(commonLabel(["", ""])).toBe("");
});

// Readings, limits and gauges are invented.
test("a new build of four cylinders that is half filled in comes to one line for each cause, and no finding is lost", async () => {
  const made = await Made.of({ cylinders: 4, valves: 4 });
  await made.type("Gauges", "Gauge id", 0, "F1");
  await made.type("Gauges", "U of the gauge", 0, 0.01);
  for (const what of ["Valve clearances", "Valve clearances, re-check"]) await made.type("Measurements", "Gauge", made.rowOf("Measurements", what), "F1");
  for (const heading of ["Top thrust", "Top pin", "Middle thrust", "Middle pin", "Bottom thrust"])
    await made.fill("BoreReadings", heading, [73.012, 73.015, 73.01, 73.018]);
  await made.fill("BoreReadings", "Bottom pin", [73.012, 730.15]);
  await made.fill("RingReadings", "End gap", [0.3, 0.35, 0.3, 0.3, 0.35, 0.3, 0.3]);
  await made.fill("ValveReadings", "Clearance", Array(16).fill(0.2));
  await made.fill("ValveReadings", "Shim", Array(9).fill(2.45));
  await made.type("ServiceJobs", "Due at hours", 3, 25);
  await made.host.write([{ sheet: "Run-in log", row: 2, column: 1, cells: [[30]] }]);
  await made.limit("Taper", null, 0.02);
  for (const ring of ["top", "second", "oil"]) await made.limit(`Ring end gap, ${ring}`, 0.25, 0.5);
  await made.limit("Valve clearance, inlet", 0.15, 0.25);
  await made.limit("Valve clearance, exhaust", 0.2, 0.3);
  const { findings } = checkWorkbook(await made.host.read());
  const lines = groupsByCause(findings);
  expect(findings.length).toBeGreaterThan(30);
  // The slip, the gauge, the limit that is not typed, and one line for each of the seven sheets that are not done.
  expect(lines).toHaveLength(10);
  expect(lines.flatMap((line) => line.findings).toSorted((a, b) => findings.indexOf(a) - findings.indexOf(b))).toEqual(findings);
  expect(lines[0]!.findings[0].kind).toBe("likely slip");
  expect(lines.map((line) => line.cause).filter((cause) => cause?.includes("Run-in log"))).toEqual(["readings on the sheet Run-in log are still blank"]);
});
