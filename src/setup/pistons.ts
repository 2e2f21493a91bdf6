import { Page, type TableAt } from "./page.ts";
import { cylinderColumn, type Given, lengthColumn, lengthFormat, resultColumn, verdictColumn } from "./parts.ts";
import { boreHeadings } from "./words.ts";

/** Piston skirts and pins, and the clearances that they leave. */
export function pistonsPage(given: Given, bores: TableAt): { page: Page; pistons: TableAt } {
  const { choices } = given;
  const headings = boreHeadings(choices.heights, choices.axes);
  const format = lengthFormat(choices);
  const page = new Page("Pistons", "Pistons and pins", [
    `Diameters in ${choices.unit}. Skirt at 90° to the pin, at the height that the maker's service manual says. Clearance is to the smallest reading of the bore.`,
  ]);
  const readings = (index: number) => bores.span(headings[0]!, headings.at(-1)!, index);
  const pistons = page.table(
    "PistonReadings",
    2,
    [
      cylinderColumn,
      lengthColumn("Skirt", choices),
      resultColumn("Piston clearance", format, (row) => `=HATCH.PISTONCLEARANCE(${readings(row.index)},${row.ref("Skirt")},"smallest",${choices.axes})`),
      verdictColumn(given, "Piston clearance", "Piston clearance", "Piston clearance"),
      lengthColumn("Pin bore", choices),
      lengthColumn("Pin", choices),
      resultColumn("Pin clearance", format, (row) => `=HATCH.CLEARANCE(${row.ref("Pin bore")},${row.ref("Pin")})`),
      verdictColumn(given, "Pin clearance", "Pin clearance", "Pin clearance"),
      { heading: "Remarks", look: "typed", width: 30 },
    ],
    choices.cylinders,
  );
  page.freeze(3, 1);
  return { page, pistons };
}
