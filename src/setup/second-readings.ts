import { type Column, Page, type TableAt } from "./page.ts";
import { cylinderColumn, type Given, lengthColumn, lengthFormat, resultColumn, whenFilled } from "./parts.ts";
import { axisNames, boreHeadings, heightNames } from "./words.ts";

/** The same parts measured by a second person: where the two disagree by more than their gauges can. */
export function secondReadingsPage(given: Given, bores: TableAt, pistons: TableAt): { page: Page; tables: TableAt[] } {
  const { choices } = given;
  const { cylinders, heights, axes, unit } = choices;
  const page = new Page("Second readings", "Second readings", [
    `Diameters in ${unit}, read by a second person who has not seen the first readings. The two may differ by the uncertainty of their difference.`,
  ]);
  const headings = boreHeadings(heights, axes);
  const inOne = headings.length;
  const boresRow = 2;
  const first = page.table(
    "SecondBores",
    boresRow,
    [
      { heading: "Cylinder", look: "label", width: 9, cell: ({ index }) => Math.floor(index / inOne) + 1 },
      { heading: "Height", look: "label", width: 13, cell: ({ index }) => heightNames(heights)[Math.floor((index % inOne) / axes)]! },
      { heading: "Axis", look: "label", width: 9, cell: ({ index }) => axisNames(axes)[index % axes]! },
      ...comparing(given, ({ index }) => bores.relative(headings[index % inOne]!, Math.floor(index / inOne)), "Bores, both readings"),
    ],
    cylinders * inOne,
  );
  const second = page.table(
    "SecondSkirts",
    boresRow + cylinders * inOne + 3,
    [
      { ...cylinderColumn },
      { heading: "Part", look: "label", cell: () => "skirt" },
      { heading: "Place", look: "label", cell: () => "90° to pin" },
      ...comparing(given, ({ index }) => pistons.relative("Skirt", index), "Piston skirts, both readings"),
    ],
    cylinders,
  );
  page.freeze(3, 3);
  return { page, tables: [first, second] };
}

function comparing({ choices, engine }: Given, firstReading: (row: { index: number }) => string, of: string): Column[] {
  const format = lengthFormat(choices);
  const allowed = engine.uncertainty(of);
  return [
    resultColumn("First", format, (row) => whenFilled([firstReading(row)], firstReading(row))),
    lengthColumn("Second", choices),
    resultColumn("Disagreement", format, ({ ref }) => whenFilled([ref("First"), ref("Second")], `ABS(${ref("Second")}-${ref("First")})`), 13),
    resultColumn("May differ by", format, () => whenFilled([allowed], allowed), 13),
    {
      heading: "Disagreement verdict",
      look: "result",
      width: 13,
      isVerdict: true,
      cell: ({ ref }) => `=HATCH.VERDICT(${ref("Disagreement")},,${ref("May differ by")})`,
    },
  ];
}
