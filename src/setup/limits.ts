import type { Choices } from "./choices.ts";
import { Page } from "./page.ts";
import { type LimitsAt, lengthFormat, numberColumn, pressureUnit } from "./parts.ts";

/** Rows for limits of the shop's own. */
const SPARE = 6;
const FIRST = 3;

/** What the sheets judge, with the unit of its limits. None has a limit until the shop types one. */
function characteristics(choices: Choices): [string, string][] {
  const { cylinders, unit } = choices;
  const pressure = pressureUnit(choices);
  return [
    ["Taper", unit],
    ["Out-of-round", unit],
    ["Bore wear", unit],
    ["Piston clearance", unit],
    ["Pin clearance", unit],
    ["Ring end gap, top", unit],
    ["Ring end gap, second", unit],
    ["Ring end gap, oil", unit],
    ["Ring side clearance, top", unit],
    ["Ring side clearance, second", unit],
    ["Ring side clearance, oil", unit],
    ["Valve clearance, inlet", unit],
    ["Valve clearance, exhaust", unit],
    ["Stem clearance, inlet", unit],
    ["Stem clearance, exhaust", unit],
    ["Compression ratio", ""],
    ["Squish", unit],
    ["Compression pressure", pressure],
    ...(cylinders > 1 ? ([["Compression spread", pressure]] as [string, string][]) : []),
    ["Leak-down", "%"],
  ];
}

/** The limits, typed by the shop from the maker's service manual. */
export function limitsPage(choices: Choices): { page: Page; limits: LimitsAt } {
  const list = characteristics(choices);
  const page = new Page("Limits", "Limits", [
    "Type them from the maker's service manual and say where they stand. One side may stay blank. Near: the distance from a limit inside which a value is called near it.",
  ]);
  const limit = (heading: string) =>
    numberColumn(heading, lengthFormat(choices).replace(/0+$/, "0##"), "A limit, typed as a number in the unit of the row.", "number");
  const table = page.table(
    "LimitList",
    FIRST - 1,
    [
      { heading: "Characteristic", look: "label", width: 28, cell: ({ index }) => list[index]?.[0] ?? "" },
      limit("Lower"),
      limit("Upper"),
      { heading: "Unit", look: "label", width: 8, cell: ({ index }) => list[index]?.[1] ?? "" },
      numberColumn("Near", "General", "A distance of at least 0.", "at least zero"),
      { heading: "Source", look: "typed", width: 40 },
    ],
    list.length + SPARE,
  );
  page.freeze(FIRST, 1);
  const row = (characteristic: string): number => list.findIndex(([name]) => name === characteristic);
  return {
    page,
    limits: {
      lower: (characteristic) => table.cell("Lower", row(characteristic)),
      upper: (characteristic) => table.cell("Upper", row(characteristic)),
      near: (characteristic) => table.cell("Near", row(characteristic)),
    },
  };
}
