import { callsOf, type OwnCall } from "../formula/own-calls.ts";
import { SpillSources } from "../formula/precedents.ts";
import { type Recalculation, recalculated } from "../formula/recalculate.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import { SheetLabels } from "../layout/labels.ts";
import { type Mapped, readLayout } from "../layout/mapped-readings.ts";
import type { Mapping } from "../layout/mapping.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";

/**
 * A workbook as it is looked through once, for all who read it afterwards: its cells with
 * the results that our functions give from them (whatever the host shows), which formula a cell comes from, the words beside a cell, every call of our functions and what a layout of the shop's
 * own makes of it. Check goes through it step by step; Report and Compare find it there.
 */
export class Analysis {
  readonly book: WorkbookCells;
  /** What the host shows otherwise, or not yet. */
  readonly shown: Pick<Recalculation, "wrong" | "without">;
  readonly origins: SpillSources;
  readonly labels: SheetLabels;
  readonly #keepsCalls: boolean;
  #calls: readonly OwnCall[] | undefined;
  #mapped: { mapping: Mapping; mapped: Mapped } | undefined;

  /** Where nobody asks for the calls once they have been gone through, they need not be kept: they take as much room as the workbook. */
  constructor(snapshot: Pick<WorkbookSnapshot, "sheets">, keepsCalls = true, recalculation = recalculated(snapshot)) {
    this.book = recalculation.book;
    this.shown = recalculation;
    this.origins = new SpillSources(this.book);
    this.labels = new SheetLabels(this.book);
    this.#keepsCalls = keepsCalls;
  }

  /** Every call of our functions in the workbook, sheet by sheet in reading order. */
  get calls(): readonly OwnCall[] {
    this.#calls ??= [...this.readCalls()].flat();
    return this.#calls;
  }

  /** The same row by row of the workbook, for whoever wants to do something in between. */
  *readCalls(): Generator<readonly OwnCall[]> {
    const all: OwnCall[] = [];
    for (const { name, row, column, formulas } of this.book.sheets) {
      for (const [r, line] of formulas.entries()) {
        const found: OwnCall[] = [];
        for (let c = 0; c < line.length; c++) {
          const formula = line[c]!;
          if (formula !== null) found.push(...callsOf(this.book, { sheet: name, row: row + r, column: column + c }, formula));
        }
        if (this.#keepsCalls) for (const call of found) all.push(call);
        yield found;
      }
    }
    if (this.#keepsCalls) this.#calls = all;
  }

  /** What a layout knows of the workbook. */
  mapped(mapping: Mapping): Mapped {
    if (this.#mapped?.mapping !== mapping) this.#mapped = { mapping, mapped: readLayout(this.book, mapping) };
    return this.#mapped.mapped;
  }
}
