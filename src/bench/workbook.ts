import type { Model } from "@odoo/o-spreadsheet";
import { placeName } from "../workbook/address.ts";
import type { DefinedName, PrintElement } from "../xlsx/model.ts";
import type { KeptLooks } from "./kept-looks.ts";
import type { Engine } from "./load-grid.ts";

/** What the grid says of a formula that it cannot read, or whose function it does not know. */
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

/** What of a file the grid cannot hold, for saving. */
export interface BesideGrid {
  names: readonly DefinedName[];
  /** How its sheets are printed, by the grid's ids of them; the ranges of names are without their sheet. */
  print: ReadonlyMap<string, { elements: readonly PrintElement[]; names: readonly DefinedName[] }>;
  looks: KeptLooks | undefined;
}

export const NOTHING_BESIDE: BesideGrid = { names: [], print: new Map(), looks: undefined };

/** The workbook that is open, and whether the file on disk is behind it. */
export class Workbook {
  #edits = 0;
  #savedAt = 0;
  readonly #changed: () => void;

  constructor(
    engine: Engine,
    readonly model: Model,
    public name: string,
    readonly beside: BesideGrid,
    changed: () => void,
  ) {
    this.#changed = changed;
    const on = model.on as unknown as (event: string, owner: object, heard: (command: { type: string }) => void) => void;
    on.call(model, "command-dispatched", this, ({ type }) => {
      if (!engine.isCoreCommand({ type } as never) && type !== "UNDO" && type !== "REDO") return;
      this.#edits++;
      changed();
    });
  }

  get unsaved(): boolean {
    return this.#edits !== this.#savedAt;
  }

  /** Something other than cells has changed that is saved with them. */
  touch(): void {
    this.#edits++;
    this.#changed();
  }

  /** Call when saving begins; what it gives back, call when it has succeeded: edits made meanwhile stay unsaved. */
  saving(): () => void {
    const edits = this.#edits;
    return () => {
      this.#savedAt = edits;
    };
  }
}
