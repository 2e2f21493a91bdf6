import type { Model } from "@odoo/o-spreadsheet";
import { placeName } from "../sheet/address.ts";

/** What the engine says of a formula that it cannot read, or whose function it does not know. */
const UNKNOWN = new Set(["#BAD_EXPR", "#NAME?"]);
const MOST_NAMED = 3;

/** Which formulas are not calculated on the bench, as a sentence; empty when all are. */
export function uncalculatedNote(model: Model): string {
  const { getters } = model;
  const places = getters.getSheetIds().flatMap((sheetId) =>
    getters
      .getEvaluatedCellsPositions(sheetId)
      .filter((position) => getters.getCell(position)?.isFormula && UNKNOWN.has(String(getters.getEvaluatedCell(position).value)))
      .map(({ row, col }) => placeName({ sheet: getters.getSheetName(sheetId), row, column: col })),
  );
  if (places.length === 0) return "";
  const named = places.slice(0, MOST_NAMED).join(", ");
  const rest = places.length > MOST_NAMED ? ` and ${places.length - MOST_NAMED} more` : "";
  return `Not calculated here, because the bench cannot read the formula or does not know its function, but kept as it is: ${named}${rest}.`;
}
