import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import { sampleBuildSheet } from "../../src/setup/sample.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";

// Worked out by hand from the invented readings: cylinder 2 tapers 73.06 − 73.035 and is out of round 73.06 − 73.035;
// cylinder 3 tapers 73.06 − 73.04, exactly the limit of 0.02, and is within.
test("the sample has readings on, inside and outside its limits, and no cell with an error", async () => {
  const host = await openWorkbook(writeXlsx(sampleBuildSheet()), "sample.xlsx");
  const snapshot = await host.read();
  expect(host.notes()).toEqual([]);
  const { findings, refused } = checkWorkbook(snapshot);
  expect(refused).toBe(0);
  expect(
    findings
      .filter(({ kind }) => kind === "outside limit")
      .map(({ label, value }) => `${label}: ${value}`)
      .sort(),
  ).toEqual([
    "Cylinder 2, Out-of-round: 0.025",
    "Cylinder 2, Second, End gap: 0.6",
    "Cylinder 2, Taper: 0.025",
    "Cylinder 2, Top, End gap: 0.55",
    "Cylinder 3, Second, End gap: 0.22",
  ]);
  expect(findings.filter(({ kind }) => kind === "refused" || kind === "likely slip")).toEqual([]);
});
