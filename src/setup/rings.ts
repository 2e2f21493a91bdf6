import { Page, type TableAt } from "./page.ts";
import { type Given, lengthColumn, lengthFormat, resultColumn, verdictColumn } from "./parts.ts";
import { RINGS } from "./words.ts";

/** Ring end gaps and side clearances, one ring a row. */
export function ringsPage(given: Given): { page: Page; rings: TableAt } {
  const { choices, limits } = given;
  const format = lengthFormat(choices);
  const ringOf = (index: number) => RINGS[index % RINGS.length]!;
  const limitOf = (kind: string) => (index: number) => `${kind}, ${ringOf(index).toLowerCase()}`;
  const page = new Page("Rings", "Rings", [
    `In ${choices.unit}. End gap with the ring square in its own bore, at the bottom of ring travel. To file: what is missing to the least gap of the limits.`,
  ]);
  const rings = page.table(
    "RingReadings",
    2,
    [
      { heading: "Cylinder", look: "label", width: 9, cell: ({ index }) => Math.floor(index / RINGS.length) + 1 },
      { heading: "Ring", look: "label", width: 9, cell: ({ index }) => ringOf(index) },
      lengthColumn("End gap", choices),
      verdictColumn(given, "End gap", limitOf("Ring end gap"), "Ring end gaps"),
      resultColumn("To file", format, (row) => `=HATCH.RINGGAPFILE(${row.ref("End gap")},${limits.lower(limitOf("Ring end gap")(row.index))})`),
      lengthColumn("Groove", choices),
      lengthColumn("Ring width", choices),
      resultColumn("Side clearance", format, (row) => `=HATCH.RINGSIDE(${row.ref("Groove")},${row.ref("Ring width")})`),
      verdictColumn(given, "Side clearance", limitOf("Ring side clearance"), "Ring side clearance"),
    ],
    choices.cylinders * RINGS.length,
  );
  page.freeze(3, 2);
  return { page, rings };
}
