import { roughCount } from "../../core/number-text.ts";
import { countSteps, declared, type GridParts, type Outcome, type OwnFunction, Reader, SheetFault } from "./own-function.ts";

/** Of a sheet of office programs; the grid's own are smaller. */
const MOST_ROWS = 1_048_576;
const MOST_COLUMNS = 16_384;
/** Cells of a block that are calculated at a time. */
const MOST_CELLS = 500_000;

interface Box {
  top: number;
  left: number;
  bottom: number;
  right: number;
}

const CELLS = /^(?:.+!)?\$?([a-z]{1,3})\$?(\d{1,7})(?::\$?([a-z]{1,3})\$?(\d{1,7}))?$/i;
const COLUMNS = /^(?:.+!)?\$?([a-z]{1,3}):\$?([a-z]{1,3})$/i;
const ROWS = /^(?:.+!)?\$?(\d{1,7}):\$?(\d{1,7})$/;

const columnOf = (letters: string): number => [...letters.toUpperCase()].reduce((number, letter) => 26 * number + letter.charCodeAt(0) - 64, 0);

function boxOf(text: string): Box | undefined {
  const box = (a: number, b: number, c: number, d: number): Box | undefined => {
    const found = { top: Math.min(a, c), left: Math.min(b, d), bottom: Math.max(a, c), right: Math.max(b, d) };
    return found.top >= 1 && found.bottom <= MOST_ROWS && found.right <= MOST_COLUMNS ? found : undefined;
  };
  const [, left, top, right, bottom] = CELLS.exec(text) ?? [];
  if (left && top) return box(Number(top), columnOf(left), Number(bottom ?? top), columnOf(right ?? left));
  const [, first, last] = COLUMNS.exec(text) ?? [];
  if (first && last) return box(1, columnOf(first), MOST_ROWS, columnOf(last));
  const [, from, to] = ROWS.exec(text) ?? [];
  return from && to ? box(Number(from), 1, Number(to), MOST_COLUMNS) : undefined;
}

interface Zoned {
  getters: { getNamedRange(name: string): { range: { zone: Box } } | undefined };
}

const NUMBERS: Readonly<Record<string, (box: Box) => Outcome>> = {
  ROWS: ({ top, bottom }) => bottom - top + 1,
  COLUMNS: ({ left, right }) => right - left + 1,
  ROW: ({ top, bottom }) => line(top, bottom, (numbers) => [numbers]),
  COLUMN: ({ left, right }) => line(left, right, (numbers) => numbers.map((one) => [one])),
};

function line(from: number, to: number, laid: (numbers: { value: number }[]) => { value: number }[][]): Outcome {
  const count = to - from + 1;
  if (count === 1) return from;
  if (count > MOST_CELLS)
    return new SheetFault("#VALUE!", `This would fill ${roughCount(count)} cells, and at most ${roughCount(MOST_CELLS)} are calculated at a time.`);
  countSteps(count);
  return laid(Array.from({ length: count }, (_, i) => ({ value: from + i })));
}

/**
 * `ROW(INDIRECT("1:9"))` and its like: where the cells stand that a text names, and how many they are. None of them is looked into,
 * so a formula may stand among them itself.
 */
export function placeFunctions(grid: GridParts): Record<string, OwnFunction> {
  const reader = new Reader(grid.helpers);
  return {
    "SHEET.PLACE": declared(grid.helpers, "where cells stand that a text names", ["what (string)", "text (string)"], function (what, given) {
      const text = reader.text(given).trim();
      const box = boxOf(text) ?? zoneOf((this as unknown as Zoned).getters.getNamedRange(text)?.range.zone);
      return box ? NUMBERS[reader.text(what)]!(box) : new SheetFault("#REF!", `${JSON.stringify(text)} names no cells.`);
    }),
  };
}

/** The grid counts from 0. */
const zoneOf = (zone: Box | undefined): Box | undefined => zone && { top: zone.top + 1, left: zone.left + 1, bottom: zone.bottom + 1, right: zone.right + 1 };
