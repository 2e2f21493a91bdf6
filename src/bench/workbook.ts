import type { Model } from "@odoo/o-spreadsheet";
import type { DefinedName } from "../sheet/xlsx/model.ts";
import type { Engine } from "./load-grid.ts";

/** The workbook that is open, and whether the file on disk is behind it. */
export class Workbook {
  #edits = 0;
  #savedAt = 0;
  readonly #changed: () => void;

  constructor(
    engine: Engine,
    readonly model: Model,
    readonly name: string,
    /** Names that the engine cannot hold. */
    readonly otherNames: readonly DefinedName[],
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
