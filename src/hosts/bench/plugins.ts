import type { CompiledFormula, CorePlugin, Model, UIPlugin } from "@odoo/o-spreadsheet";
import { fromGridFormula, toGridFormula } from "../../calc/grid/grid-text.ts";
import { HostRefusal } from "../../workbook/port.ts";
import { protectedSheet } from "../../workbook/refusals.ts";
import { forgetOldSteps, type GridHistory } from "./undo-steps.ts";

/** A command of the grid, as data. */
export interface GridCommand {
  type: string;
  [key: string]: unknown;
}

/** One marked cell: where it is, the fill it got and the fill it had (`""` for none). */
export interface MarkedCell {
  sheetId: string;
  col: number;
  row: number;
  fill: string;
  earlier: string;
}

/** The parts of the grid that the bench's own commands need; its whole module or browser global fits. */
export interface PluginGrid {
  CompiledFormula: typeof CompiledFormula;
  CorePlugin: typeof CorePlugin;
  UIPlugin: typeof UIPlugin;
  coreTypes: { add(type: never): unknown };
  registries: {
    corePluginRegistry: Registry;
    featurePluginRegistry: Registry;
    inverseCommandRegistry: Registry;
  };
}

interface Registry {
  add(key: string, value: never): unknown;
  contains(key: string): boolean;
}

const STEP = "HATCH_STEP";
const REMEMBER = "HATCH_REMEMBER_MARKS";

/** Name of the plugins in the grid's registries, and of the marks in its workbook data. */
export const MARKS_KEY = "hatchMarks";

/**
 * Performs commands as one step of the grid's undo history, or none of them.
 *
 * @throws HostRefusal when the grid refuses one.
 */
export function step(model: Model, commands: readonly GridCommand[]): void {
  const outcome: Outcome = {};
  outcomes.set(model.getters, outcome);
  const { reasons } = dispatching(model.dispatch)(STEP, { commands });
  outcomes.delete(model.getters);
  if (outcome.fault) throw outcome.fault;
  if (reasons.includes("SheetLocked")) throw protectedSheet(model.getters.getActiveSheetName());
  outcome.refused ??= reasons.join(", ");
  if (outcome.refused) throw new HostRefusal(`The grid refused a part of this (${outcome.refused}), so nothing of it was done.`);
}

/** How a step went, by the model's getters, which its plugins have too. */
const outcomes = new WeakMap<object, Outcome>();
interface Outcome {
  refused?: string;
  fault?: unknown;
}

type Dispatch = (type: string, payload: object) => { isSuccessful: boolean; reasons: string[] };
const dispatching = (dispatch: unknown): Dispatch => dispatch as Dispatch;

/** A command that replaces the remembered marks; for `step`. */
export const remember = (marks: readonly MarkedCell[]): GridCommand => ({ type: REMEMBER, marks });

export function rememberedMarks(model: Model): readonly MarkedCell[] {
  return (model.getters as unknown as { getHatchMarks(): readonly MarkedCell[] }).getHatchMarks();
}

/**
 * Teaches the grid, before a model is made, two commands and one spelling: several changes as one
 * step back; the memory of marks, which moves with inserted and removed rows, follows undo and redo,
 * and is part of the workbook's data; and formulas as people and files write them. Doing it again
 * changes nothing.
 */
export function extendGrid(engine: PluginGrid): void {
  const { corePluginRegistry, featurePluginRegistry, inverseCommandRegistry } = engine.registries;
  if (corePluginRegistry.contains(MARKS_KEY)) return;
  engine.coreTypes.add(REMEMBER as never);
  inverseCommandRegistry.add(REMEMBER, ((command: unknown) => [command]) as never);
  corePluginRegistry.add(MARKS_KEY, marksPlugin(engine) as never);
  featurePluginRegistry.add(MARKS_KEY, stepPlugin(engine) as never);
  teachSpelling(engine.CompiledFormula);
}

/** Whatever makes a formula cell compiles its text, and whatever shows or stores one asks for its text. */
function teachSpelling(formulas: typeof CompiledFormula): void {
  const { Compile } = formulas;
  const { toFormulaString } = formulas.prototype;
  formulas.Compile = (text, ...where) => Compile.call(formulas, toGridFormula(text), ...where);
  formulas.prototype.toFormulaString = function (...how) {
    return fromGridFormula(toFormulaString.apply(this, how));
  };
}

/** What the grid has changed since a command of a person's began. */
interface Observed {
  changes: { key: string; target: Record<string, unknown>; before: unknown }[];
  commands: GridCommand[];
}

/** What the grid sends to other people, as far as it is steered here. */
interface Session extends GridHistory {
  commandSquisher: { squish<T>(commands: T): T; unsquish<T>(commands: T): T };
}

function stepPlugin({ UIPlugin }: PluginGrid) {
  return class Step extends UIPlugin {
    readonly #observed: Observed;

    constructor(config: never) {
      super(config);
      const { stateObserver, session } = config as { stateObserver: Observed; session: Session };
      this.#observed = stateObserver;
      forgetOldSteps(session);
      // The grid shortens what it sends to other people of formulas that are alike, though on the bench there
      // are none, and fails where one refers to a range of one cell, as A1:A1, and the next to a larger one.
      session.commandSquisher = { squish: (commands) => commands, unsquish: (commands) => commands };
    }

    override handle(command: unknown): void {
      const { type, commands } = command as GridCommand & { commands: GridCommand[] };
      if (type !== STEP) return;
      const outcome = outcomes.get(this.getters) ?? {};
      try {
        for (const one of commands) {
          const { isSuccessful, reasons } = dispatching(this.dispatch)(one.type, one);
          // What would change nothing is as good as done.
          if (isSuccessful || reasons.every((reason) => reason === "NoChanges")) continue;
          outcome.refused = reasons.join(", ");
          this.#takeBack();
          return;
        }
      } catch (fault) {
        outcome.fault = fault;
        this.#takeBack();
      }
    }

    /** As the grid undoes: the changes backwards, then every part is told; and the history never hears of it. */
    #takeBack(): void {
      const dispatch = dispatching(this.dispatch);
      // Parts of the screen remember a new sheet by themselves until they are told that it goes.
      for (const { type, sheetId, name } of [...this.#observed.commands]) if (type === "CREATE_SHEET") dispatch("DELETE_SHEET", { sheetId, sheetName: name });
      const { changes, commands } = this.#observed;
      for (const { key, target, before } of changes.reverse()) {
        if (before === undefined) delete target[key];
        else target[key] = before;
      }
      dispatch("UNDO", { commands });
      this.#observed.changes = [];
      this.#observed.commands = [];
    }
  };
}

interface RangeMark {
  range: unknown;
  fill: string;
  earlier: string;
}

interface Zone {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

type ApplyChange = (range: unknown) => { changeType: string; range: unknown };

function marksPlugin({ CorePlugin }: PluginGrid) {
  return class Marks extends CorePlugin {
    static override getters = ["getHatchMarks"] as never;
    // The grid's history writes to this field by its name.
    marks: readonly RangeMark[] = [];

    getHatchMarks(): readonly MarkedCell[] {
      return this.marks.map(({ range, fill, earlier }) => {
        const { sheetId, zone } = range as { sheetId: string; zone: Zone };
        return { sheetId, col: zone.left, row: zone.top, fill, earlier };
      });
    }

    override handle(command: unknown): void {
      const { type, marks } = command as GridCommand & { marks: MarkedCell[] };
      if (type === REMEMBER) this.#keep(marks.map((mark) => this.#kept(mark)));
    }

    override adaptRanges({ applyChange }: never): void {
      if (this.marks.length === 0) return;
      const moved = this.marks.map((mark) => ({ mark, change: (applyChange as ApplyChange)(mark.range) }));
      if (moved.every(({ change }) => change.changeType === "NONE")) return;
      this.#keep(moved.filter(({ change }) => change.changeType !== "REMOVE").map(({ mark, change }) => ({ ...mark, range: change.range })));
    }

    override import(data: never): void {
      this.marks = ((data as Record<string, MarkedCell[]>)[MARKS_KEY] ?? []).map((mark) => this.#kept(mark));
    }

    override export(data: never): void {
      if (this.marks.length > 0) (data as Record<string, unknown>)[MARKS_KEY] = this.getHatchMarks();
    }

    #kept({ sheetId, col, row, fill, earlier }: MarkedCell): RangeMark {
      return { range: this.getters.getRangeFromZone(sheetId, { left: col, right: col, top: row, bottom: row }), fill, earlier };
    }

    #keep(marks: readonly RangeMark[]): void {
      (this.history.update as unknown as (field: string, value: unknown) => void)("marks", marks);
    }
  };
}
