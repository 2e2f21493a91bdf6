import { checkSteps } from "../../buildsheet/check.ts";
import type { CheckResult } from "../../buildsheet/finding.ts";
import type { Mapping } from "../../buildsheet/layout/mapping.ts";
import type { WorkbookSnapshot } from "../../workbook/port.ts";
import type { Going } from "./in-slices.ts";
import { inSlices } from "./in-slices.ts";

/** Checks a workbook, by its own layout where it keeps one. */
export type Checker = (snapshot: WorkbookSnapshot, mapping: Mapping | undefined, going: Going) => CheckResult | Promise<CheckResult>;

/** The check that the pane brings along: beside the page's own work, and stopped when it is told so. */
export const checkInSlices: Checker = (snapshot, mapping, going) => inSlices(checkSteps(snapshot, mapping), going);
