import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model } from "@odoo/o-spreadsheet";
import type * as Owl from "@odoo/owl";
import { applyCompatibility } from "../calc/grid/compatibility.ts";
import { type FunctionGrid, registerFunctions } from "../calc/grid/register-functions.ts";
import { applyWorkLimits, WORK_LIMITS } from "../calc/grid/work-limits.ts";
import { specs } from "../functions/index.ts";
import { extendGrid, type PluginGrid } from "../hosts/bench/plugins.ts";
import { cellName } from "../workbook/address.ts";
import { meantBy } from "./language.ts";

export type Engine = typeof OSpreadsheet;
export type Screen = typeof Owl;

/** The spreadsheet engine and the library of its screen parts: files of their own, which the page loads before this script. */
declare global {
  var o_spreadsheet: Engine;
  var owl: Screen;
}

/** Menu entries that need what the bench has not: a chart library, a store for pictures, a data source, languages to choose from, a place for panels of the grid. */
const WITHOUT_USE: readonly [id: string, menu: string][] = [
  ["insert_chart", "insert"],
  ["insert_carousel", "insert"],
  ["insert_pivot", "insert"],
  ["insert_image", "insert"],
  ["settings", "file"],
  ["toggle_pin_panel", "view"],
  ["view_irregularity_map", "view"],
  ["pivot_data_sources", "data"],
  ["reinsert_dynamic_pivot", "data"],
  ["reinsert_static_pivot", "data"],
];

/** The grid with our functions and commands, ready to make models. */
export function loadEngine(): Engine {
  const engine = globalThis.o_spreadsheet;
  registerFunctions(specs, engine as unknown as FunctionGrid);
  applyCompatibility(engine);
  extendGrid(engine as unknown as PluginGrid);
  // Nobody says here where one calculation ends and the next begins, and whoever waits sees it. Blocks
  // would count once more each time they are calculated anew, until none was left to be calculated.
  applyWorkLimits(engine, { ...WORK_LIMITS, live: Number.POSITIVE_INFINITY, work: Number.POSITIVE_INFINITY, seconds: Number.POSITIVE_INFINITY });
  drawSheetsThatAreThere(engine);
  takeEntriesAsMeant(engine);
  leaveCalculatedUnmarked(engine);
  for (const [id, menu] of WITHOUT_USE) {
    engine.registries.topbarMenuRegistry.replaceChild(id, [menu], { name: "", isVisible: () => false });
  }
  return engine;
}

interface Drawing {
  context?: { sheetId: string };
  model: Model;
}

/** While a cell's change is shown moving, the grid draws once more what it drew last, and fails where that sheet has just been taken back. */
function drawSheetsThatAreThere({ stores }: Engine): void {
  const renderer = stores.RendererStore.prototype as unknown as { draw(this: Drawing, context?: Drawing["context"], time?: number): string };
  const { draw } = renderer;
  renderer.draw = function (context, time) {
    const sheetId = (context ?? this.context)?.sheetId;
    return sheetId === undefined || this.model.getters.tryGetSheet(sheetId) ? draw.call(this, context, time) : "noStateChange";
  };
}

type Place = { sheetId: string; col: number; row: number };
interface Judging {
  getters: Model["getters"];
  getValidationResultForCell(place: Place): { isValid: boolean };
}

/** A rule that nothing typed meets keeps a formula where it is; the grid would mark the formula's own value as wrong by it. */
function leaveCalculatedUnmarked({ registries }: Engine): void {
  const { prototype } = registries.coreViewsPluginRegistry.get("data_validation_ui") as unknown as { prototype: Judging };
  const { getValidationResultForCell } = prototype;
  prototype.getValidationResultForCell = function (place) {
    const rule = this.getters.getValidationRuleForCell(place);
    const isCalculated = rule?.criterion.type === "customFormula" && /^=?FALSE$/i.test(String(rule.criterion.values[0]));
    return isCalculated ? { isValid: true } : getValidationResultForCell.call(this, place);
  };
}

interface Composing {
  _currentContent: string;
  col: number;
  row: number;
  sheetId: string;
  getters: Model["getters"];
  notificationStore: { notifyUser(notification: { type: string; text: string; sticky: boolean }): void };
  confirmEdition(content: string | undefined): void;
}

/** What is typed into a cell is looked at before the grid reads it in its own way. */
function takeEntriesAsMeant({ stores }: Engine): void {
  const composer = stores.CellComposerStore.prototype as unknown as Composing;
  const { confirmEdition } = composer;
  composer.confirmEdition = function (content) {
    if (!content) return confirmEdition.call(this, content);
    const { sheetId, col, row } = this;
    const { content: meant, said } = meantBy(this._currentContent, content, {
      place: cellName({ row, column: col }),
      format: this.getters.getCell({ sheetId, col, row })?.format,
      locale: this.getters.getLocale(),
    });
    confirmEdition.call(this, meant);
    if (said) this.notificationStore.notifyUser({ type: "warning", text: said, sticky: false });
  };
}
