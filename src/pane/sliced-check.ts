import { checkSteps } from "../buildsheet/check.ts";
import { inSlices } from "./in-slices.ts";
import type { Checker } from "./use-check.ts";

/** The check that the pane brings along: beside the page's own work, and stopped when it is told so. */
export const checkInSlices: Checker = (snapshot, mapping, going) => inSlices(checkSteps(snapshot, mapping), going);
