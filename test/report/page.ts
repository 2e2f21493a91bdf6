import { JudgedRows } from "../../src/check/finding.ts";
import { NO_SHEET_CONTENT, type ReportInput } from "../../src/report/content.ts";
import { reportInput } from "../../src/report/gather/workbook.ts";
import { renderReport } from "../../src/report/report.ts";
import { type Typed, workbook } from "../check/workbook.ts";

// Readings, limits and names are invented: a hire-boat yard and its engine.
export const DATE = "2026-11-25";

const ENGINE: Typed = [
  ["Engine", "A"],
  ["Serial number", "E-0417"],
  ["Owner", "Hire-boat yard at the lock"],
  ["Hours run", 1240, "h"],
  ["Stripped on", 46320],
  ["Unit of length", "mm"],
  [null],
  ["Gauge id", "Kind", "Resolution", "U of the gauge", "Unit", "Calibration due"],
  ["BG-1", "bore gauge", 0.001, 0.004, "mm", 46500],
];

const LIMITS: Typed = [
  ["Characteristic", "Lower", "Upper", "Unit", "Source"],
  ["Taper", null, 0.02, "mm", "service manual, p. 4-12"],
  ["Bore wear", null, 0.08, "mm", null],
  ["Spare", null, null, null, null],
];

const BORES: Typed = [
  ["Bores of engine A, mm"],
  ["Cylinder", "Height", "Thrust", "Pin"],
  ["1", "top", 73.025, 73.02],
  ["1", "bottom", 73.015, 73.015],
  ["2", "top", 73.06, 73.035],
  ["2", "bottom", 73.035, 73.025],
  [null],
  ["Cylinder", "Taper", "Verdict", "Wear", "Verdict"],
  ["1", "=HATCH.TAPER(C3:D4)", "=HATCH.VERDICT(B9, , Limits!C2, 0.004)", "=HATCH.BOREWEAR(C3:D4, 73)", "=HATCH.VERDICT(D9, , Limits!C3)"],
  ["2", "=HATCH.TAPER(C5:D6)", "=HATCH.VERDICT(B10, , Limits!C2, 0.004)", "=HATCH.BOREWEAR(C5:D6, 73)", "=HATCH.VERDICT(D10, , Limits!C3)"],
];

const BOOK: Typed = [
  ["Cylinder", "Top thrust", "Top pin", "Bottom thrust", "Bottom pin", "Taper"],
  ["1", 73.025, 73.02, 73.015, 73.015, "=HATCH.TAPER(B2:E3, 2)"],
  ["2", 73.06, 73.035, null, 73.025, null],
];

const FORM: Typed = [
  ["Form of cylinder 1"],
  ["Reading", "Deviation (µm)"],
  ...[3, 6, 2, -4, -1, 5, 7, 1, -6, -2, 4, 0].map((deviation, i) => [String(i + 1), deviation]),
  [null],
  ["Roundness", "=HATCH.ROUNDNESS(B3:B14)"],
];

const TESTS: Typed = [
  ["Compression, pressures in bar"],
  ["Cylinder", "Dry", "Verdict"],
  ["1", 12.1, '=HATCH.COMPRESSIONCHECK(B3:B5, "difference", 1)'],
  ["2", 11.8, null],
  ["3", 9.9, null],
];

const WEAR: Typed = [
  ["Cylinder", "Build (mm)", "Strip-down (mm)", "Change"],
  ["1", 73.01, 73.05, "=HATCH.REALCHANGE(B2:B4, C2:C4, 0.006, 0.008)"],
  ["2", 73.01, 73.016, null],
  ["3", 73.01, null, null],
];

/** A workbook with something of everything that a report shows. */
export const everything = () => workbook({ Engine: ENGINE, Limits: LIMITS, Bores: BORES, "Bore book": BOOK, Form: FORM, Tests: TESTS, Wear: WEAR });

export const fullInput = (): ReportInput => ({ ...reportInput(everything()), name: "engine-a.xlsx", fingerprint: { sha256: "ab".repeat(32), of: "file" } });

/** An input without anything in it, but for what is given. */
export const inputWith = (given: Partial<ReportInput>): ReportInput => ({
  name: "engine-a.xlsx",
  result: { findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0 },
  judged: new JudgedRows(),
  content: NO_SHEET_CONTENT,
  notes: [],
  ...given,
});

export const pageOf = (...inputs: ReportInput[]): string => renderReport(inputs, { date: DATE, withDetails: true });

/** The text of a page as a person reads it, without its drawings and looks. */
export const textOf = (page: string): string =>
  page
    .replace(/<svg[\s\S]*?<\/svg>|<style>[\s\S]*?<\/style>|<head>[\s\S]*?<\/head>/g, "")
    .replace(/<(?:wbr|\/?strong|\/?a|\/?span)\b[^>]*>/g, "")
    .replace(/<[^>]*>/g, " ")
    .replace(/&(lt|gt|amp|quot|#39);/g, (_, name: string) => ({ lt: "<", gt: ">", amp: "&", quot: '"', "#39": "'" })[name]!)
    .replace(/\s+/g, " ");
