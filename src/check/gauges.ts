import { type Cell, isBlank, isCellError } from "../core/cell.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import type { SheetLabels } from "../layout/labels.ts";
import { dayOf, dayText } from "../vocabulary/dates.ts";
import type { GaugeField } from "../vocabulary/heading-words.ts";
import { gaugeFieldOf } from "../vocabulary/headings.ts";
import { headingKey, measuredTogether } from "../vocabulary/measured-together.ts";
import { isLengthUnit, lengthUnitIn, unitIn, unitOf } from "../vocabulary/units.ts";
import type { CellAddress } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import { type FindingCollector, unjudged } from "./collect.ts";

/** Blank rows inside a table; behind more of them something else may stand in the same columns. */
const LONGEST_GAP = 1;

/** What the sheets say of one gauge. */
interface Gauge {
  id: string;
  /** The last day on which its calibration holds; of several, the latest. */
  due?: number | undefined;
  uncertainty?: number | undefined;
  unit?: string | undefined;
  /** Where that unit stands. */
  unitCell?: CellAddress | undefined;
  /** Two rows give it different uncertainties. */
  isDoubtful?: boolean;
}

/** A day on which something was measured with a gauge. */
interface Use {
  gauge: string;
  day: number;
  due: number | undefined;
  cell: CellAddress;
}

/** Gauges, by tables that name them and by entries such as `Gauge | BG-1`, in whatever sheets. */
export class Gauges {
  readonly #gauges = new Map<string, Gauge>();
  readonly #uses: Use[] = [];
  /** Gauges with which lengths were measured, by the rows that say so: `Bores | BG-1`. */
  readonly #ofLengths = new Set<string>();
  /** In what the workbook keeps its lengths, where it says so. */
  readonly #lengths: string | undefined;
  /** Entries of sheets that may tell of a use, once all gauges are known. */
  readonly #entries: Partial<Record<GaugeField, Entry>>[] = [];

  constructor(book: WorkbookCells) {
    this.#lengths = lengthUnitIn(book.sheets);
    for (const sheet of book.sheets) {
      this.#readTables(sheet);
      this.#entries.push(entriesOf(sheet));
    }
  }

  /** The expanded uncertainty of a gauge for readings in a unit, where both are known. */
  uncertaintyOf(id: string, unit: string | undefined): number | undefined {
    const gauge = this.#gauges.get(keyOf(id));
    if (!gauge || gauge.isDoubtful || (gauge.unit !== undefined && unit !== undefined && gauge.unit !== unit)) return undefined;
    return gauge.uncertainty;
  }

  /** The unit of a gauge's U, where that is known. */
  unitOf = (id: string): string | undefined => this.#gauges.get(keyOf(id))?.unit;

  /** Gauges whose U is in another unit of length than the readings: the sheet takes the bare number. */
  reportUnits(report: FindingCollector): void {
    for (const [key, { id, unit, unitCell: cell, uncertainty }] of this.#gauges) {
      const likeUnit = this.#lengths;
      if (likeUnit === undefined || unit === undefined || cell === undefined || uncertainty === undefined) continue;
      if (!isLengthUnit(unit) || unit === likeUnit || !this.#ofLengths.has(key)) continue;
      const details = { unit, likeUnit, expected: null, beside: null, converted: null, causes: [] };
      report.find("mixed units", unjudged({ cell, label: `U of gauge ${id}` }, null), details);
    }
  }

  /** Gauges that were past their date on the day of use; without such a day nothing is said. */
  reportOverdue(report: FindingCollector, labels: SheetLabels): void {
    const told = new Map<string, { use: Use; due: number; times: number }>();
    for (const use of [...this.#uses, ...this.#usesByEntries()]) {
      const due = use.due ?? this.#gauges.get(keyOf(use.gauge))?.due;
      if (due === undefined || use.day <= due) continue;
      const key = `${use.cell.sheet}|${keyOf(use.gauge)}|${use.day}|${due}`;
      const known = told.get(key);
      if (known) known.times++;
      else told.set(key, { use, due, times: 1 });
    }
    for (const { use, due, times } of told.values()) {
      report.find("calibration overdue", unjudged({ cell: use.cell, label: labels.of(use.cell) }, null), {
        gauge: use.gauge,
        usedOn: dayText(use.day),
        due: dayText(due),
        daysPast: use.day - due,
        uses: times,
      });
    }
  }

  #readTables({ name: sheet, row: top, column: left, values }: SheetSnapshot): void {
    let at: Partial<Record<GaugeField, number>> | undefined;
    let headings: readonly Cell[] = [];
    let blanks = 0;
    for (const [r, line] of values.entries()) {
      const heads = headsOf(line);
      blanks = line.every(isBlank) ? blanks + 1 : 0;
      if (heads) [at, headings] = [heads, line];
      else if (blanks > LONGEST_GAP) at = undefined;
      else if (at && blanks === 0) {
        const cells = Object.fromEntries(Object.entries(at).map(([field, c]) => [field, line[c]])) as Partial<Record<GaugeField, Cell>>;
        const place = (column: number | undefined) => (column === undefined ? undefined : { sheet, row: top + r, column: left + column });
        // `U (µm)` where no column of its own says it.
        const inHeading = at.uncertainty === undefined ? undefined : unitIn(trimmedText(headings[at.uncertainty]));
        const typed = unitOf(trimmedText(cells.unit));
        const unitCell = place(typed === undefined ? at.uncertainty : at.unit);
        this.#take(cells, { used: place(at.used), unit: typed ?? inHeading, unitCell });
        const what = trimmedText(line.slice(0, at.gauge).find((cell) => !isBlank(cell)));
        // A surface is measured in units of its own.
        if (what !== "" && !measuredTogether(what)?.includes(headingKey("ra"))) this.#ofLengths.add(keyOf(trimmedText(cells.gauge)));
      }
    }
  }

  #take(
    cells: Partial<Record<GaugeField, Cell>>,
    { used: place, unit, unitCell }: { used: CellAddress | undefined; unit: string | undefined; unitCell: CellAddress | undefined },
  ): void {
    const id = trimmedText(cells.gauge);
    if (id === "") return;
    const day = dayOf(cells.used);
    const due = dayOf(cells.due);
    if (day !== undefined && place) this.#uses.push({ gauge: id, day, due, cell: place });
    this.#learn(id, due, cells.uncertainty, unit, unitCell);
  }

  #learn(id: string, due: number | undefined, uncertainty: Cell, unit: string | undefined, unitCell: CellAddress | undefined): void {
    const known = this.#gauges.get(keyOf(id)) ?? { id };
    this.#gauges.set(keyOf(id), known);
    if (due !== undefined) known.due = Math.max(due, known.due ?? due);
    if (typeof uncertainty !== "number" || uncertainty < 0) return;
    if (known.uncertainty !== undefined && known.uncertainty !== uncertainty) known.isDoubtful = true;
    known.uncertainty = uncertainty;
    if (known.unit === undefined && unit !== undefined) Object.assign(known, { unit, unitCell });
  }

  /** `Gauge | BG-1` and `Measured on | 2026-03-21` on one sheet, each there once. */
  #usesByEntries(): Use[] {
    return this.#entries.flatMap(({ gauge, used, due }) => {
      const id = trimmedText(gauge?.value);
      const day = used && dayOf(used.value);
      if (id === "" || day === undefined) return [];
      return [{ gauge: id, day, due: dayOf(due?.value), cell: used!.cell }];
    });
  }
}

const keyOf = (id: string): string => id.trim().toLowerCase();
const trimmedText = (cell: Cell): string => (isBlank(cell) || isCellError(cell) ? "" : String(cell).trim());

const fieldOf = (cell: Cell): GaugeField | undefined => (typeof cell === "string" ? gaugeFieldOf(cell) : undefined);

/** Columns of a row of headings that names gauges and something about them. */
function headsOf(line: readonly Cell[]): Partial<Record<GaugeField, number>> | undefined {
  const at: Partial<Record<GaugeField, number>> = {};
  for (const [c, cell] of line.entries()) {
    const field = fieldOf(cell);
    if (!field) continue;
    // A number or a date beside it is its entry: `Gauge | BG-1 | Measured on | 2026-03-21`.
    if (typeof line[c + 1] === "number" || dayOf(line[c + 1]) !== undefined) return undefined;
    at[field] ??= c;
  }
  return at.gauge !== undefined && (at.due ?? at.used ?? at.uncertainty) !== undefined ? at : undefined;
}

/** The column of a row of headings in which gauges are named. */
export function gaugeColumn(line: readonly Cell[]): number | undefined {
  const at = line.findIndex((cell) => fieldOf(cell) === "gauge");
  return at < 0 ? undefined : at;
}

interface Entry {
  value: Cell;
  cell: CellAddress;
}

/** Names at the head of a row with what was typed right of them; one that comes twice tells nothing. */
function entriesOf({ name: sheet, row, column, values }: SheetSnapshot): Partial<Record<GaugeField, Entry>> {
  const found: Partial<Record<GaugeField, Entry>> = {};
  const doubled = new Set<GaugeField>();
  for (const [r, line] of values.entries()) {
    if (headsOf(line)) continue;
    for (const [c, cell] of line.entries()) {
      const field = fieldOf(cell);
      const isName = isBlank(line[c - 1]) || fieldOf(line[c - 2]) !== undefined;
      if (!field || !isName || isBlank(line[c + 1]) || fieldOf(line[c + 1])) continue;
      if (found[field]) doubled.add(field);
      found[field] = { value: line[c + 1], cell: { sheet, row: row + r, column: column + c + 1 } };
    }
  }
  for (const field of doubled) delete found[field];
  return found;
}
