import { keyOf, MOST_COLUMNS } from "../../workbook/address.ts";
import { MARK_FILL, type Mark } from "../../workbook/port.ts";
import type { KeptMark } from "../../workbook/storage.ts";
import type { Looks } from "./styles.ts";

/** The marks of one sheet: those that it remembers, and those that it is to have. */
export class SheetMarks {
  readonly #earlier = new Map<number, KeptMark>();
  readonly #colours = new Map<number, string>();
  readonly #kept = new Map<number, KeptMark>();

  constructor(
    readonly sheet: string,
    remembered: readonly KeptMark[],
    marks: readonly Mark[],
  ) {
    for (const mark of remembered) if (mark.cell.sheet === sheet) this.#earlier.set(keyOf(mark.cell), mark);
    for (const { cell, tone } of marks) if (cell.sheet === sheet) this.#colours.set(keyOf(cell), MARK_FILL[tone]);
  }

  /** The cells that have a mark, get one, or both. */
  cells(): Set<number> {
    return new Set([...this.#earlier.keys(), ...this.#colours.keys()]);
  }

  /** Gives a cell its look: its mark, or the one that it had before. */
  restyle(key: number, style: number, looks: Looks): number {
    const earlier = this.#earlier.get(key);
    const colour = this.#colours.get(key);
    const now = looks.fillOf(style);
    // Filled by a person since it was marked: that is how they want it.
    const own = earlier !== undefined && now?.toUpperCase() !== earlier.mark.toUpperCase();
    if (colour === undefined) return earlier && !own ? looks.unfilled(style, earlier.before) : style;
    const place = { row: Math.floor(key / MOST_COLUMNS), column: key % MOST_COLUMNS };
    const before = earlier && !own ? earlier.before : now;
    this.#kept.set(key, { ...(earlier ?? {}), cell: { sheet: this.sheet, ...place }, before, mark: colour });
    return earlier && !own && earlier.mark === colour ? style : looks.filled(style, colour);
  }

  /** What is to be remembered, in the order of the cells. */
  kept(): KeptMark[] {
    return [...this.#kept].sort(([a], [b]) => a - b).map(([, mark]) => mark);
  }
}
