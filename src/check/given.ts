import { type Cell, isCellError } from "../core/cell.ts";
import type { Fault } from "../core/fault.ts";
import { faultBody } from "../core/sentences.ts";
import { specByName } from "../functions/index.ts";
import { type Given, type Judged, judgeCells } from "./judge-cells.ts";

export { type Given, type Judged, NOT_GIVEN, plainValue } from "./judge-cells.ts";

export const judgeGiven = (given: Given): Judged => judgeCells(given, reasonOf);

const OUR_SENTENCE = /^([A-Z]{3,}): /;

/** Why a cell cannot be taken. An error that a function of ours left there speaks for itself. */
export function reasonOf(cell: Cell, fault: Fault): string {
  const said = isCellError(cell) ? (cell.message ?? "") : "";
  return specByName.has(OUR_SENTENCE.exec(said)?.[1] ?? "") ? said : faultBody(fault);
}
