import type { Model } from "@odoo/o-spreadsheet";
import { areaText } from "../../workbook/address.ts";
import type { NameSnapshot } from "../../workbook/port.ts";

/** The engine's named ranges. It has no names for anything else, and tables of the engine have none. */
export const namesIn = ({ getters }: Model): NameSnapshot[] =>
  getters.getNamedRanges().map(({ name, range: { sheetId, zone } }) => {
    const { left, top, right, bottom } = zone;
    const place = areaText({ sheet: getters.getSheetName(sheetId), row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 });
    const mark = place.lastIndexOf("!");
    // A named range stays where it is, whatever formula uses it.
    return { name, formula: `=${place.slice(0, mark)}${place.slice(mark).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2")}` };
  });
