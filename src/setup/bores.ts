import { Page, type TableAt } from "./page.ts";
import { cylinderColumn, type Given, lengthColumn, lengthFormat, resultColumn, verdictColumn } from "./parts.ts";
import { boreHeadings } from "./words.ts";

/** Bore readings, one bore a row, and what they come to. */
export function boresPage(given: Given): { page: Page; bores: TableAt } {
  const { choices, engine } = given;
  const headings = boreHeadings(choices.heights, choices.axes);
  const [first, last] = [headings[0]!, headings.at(-1)!];
  const format = lengthFormat(choices);
  const page = new Page("Bores", "Bores", [
    `Diameters in ${choices.unit}. Heights from the top: just below the top of ring travel first. Thrust is across the crankshaft, pin along it; the other axes by their angle from thrust.`,
  ]);
  const bores = page.table(
    "BoreReadings",
    2,
    [
      cylinderColumn,
      ...headings.map((heading) => lengthColumn(heading, choices)),
      resultColumn("Taper", format, (row) => `=HATCH.TAPER(${row.span(first, last)},${choices.axes})`),
      verdictColumn(given, "Taper", "Taper", "Taper and out-of-round"),
      resultColumn("Out-of-round", format, (row) => `=HATCH.OUTOFROUND(${row.span(first, last)},${choices.axes})`),
      verdictColumn(given, "Out-of-round", "Out-of-round", "Taper and out-of-round"),
      resultColumn("Wear", format, (row) => `=HATCH.BOREWEAR(${row.span(first, last)},${engine.item("Standard bore")},${choices.axes})`),
      verdictColumn(given, "Wear", "Bore wear", "Bores"),
    ],
    choices.cylinders,
  );
  page.freeze(3, 1);
  return { page, bores };
}
