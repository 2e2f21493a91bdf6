import { decimal } from "../../core/decimal.ts";
import { WorkbookCells } from "../../formula/workbook-cells.ts";
import { planSourcesIn } from "../../setup/found.ts";
import type { WorkbookSnapshot } from "../../workbook/port.ts";
import { readArea } from "../parts/range-text.ts";
import { FILLED_BY, type Form, type PlanName } from "./fields.ts";

/** What the sheets of Set up fill in a plan's form; one for each set of parts that it can be made for. */
export function formsFromSheets(name: PlanName, snapshot: WorkbookSnapshot): { about: string; form: Form }[] {
  const { spec, chosen } = FILLED_BY[name];
  const book = new WorkbookCells(snapshot);
  return planSourcesIn(snapshot, spec.name).map(({ about, inputs, middles = {} }) => {
    const middle = Object.entries(middles).map(([key, limits]) => [key, middleOf(book, limits)]);
    return { about, form: { ...chosen, ...Object.fromEntries(middle), ...inputs } };
  });
}

/** As a number, for no cell holds it; blank while one of the limits is. */
function middleOf(book: WorkbookCells, limits: readonly string[]): string {
  const numbers = limits.map((text) => {
    const read = readArea(text, book);
    return "given" in read ? book.value(read.given) : null;
  });
  return numbers.every((one): one is number => typeof one === "number") ? String(decimal(numbers.reduce((sum, one) => sum + one, 0) / numbers.length)) : "";
}
