import type { Choices } from "./choices.ts";
import { type Column, Page, type TableAt } from "./page.ts";
import { type Given, lengthColumn, lengthFormat, resultColumn, valveClearanceColumn, verdictColumn, whenFilled } from "./parts.ts";
import { valveNames } from "./words.ts";

/** Which cylinder and valve a row is about, on every page with one valve a row. */
export function valveRows({ cylinders, valves }: Choices): { columns: Column[]; rows: number; isInlet(index: number): boolean } {
  const names = valveNames(valves);
  return {
    columns: [
      { heading: "Cylinder", look: "label", width: 9, cell: ({ index }) => Math.floor(index / valves) + 1 },
      { heading: "Valve", look: "label", width: 10, cell: ({ index }) => names[index % valves]! },
    ],
    rows: cylinders * valves,
    isInlet: (index) => names[index % valves]!.startsWith("Inlet"),
  };
}

/** Valve clearances, shims and stems, one valve a row. */
export function valvesPage(given: Given): { page: Page; valves: TableAt } {
  const { choices, engine, limits } = given;
  const { columns, rows, isInlet } = valveRows(choices);
  const format = lengthFormat(choices);
  const limitOf = (kind: string) => (index: number) => `${kind}, ${isInlet(index) ? "inlet" : "exhaust"}`;
  const page = new Page("Valves", "Valves", [
    `In ${choices.unit}. Clearances cold unless the maker's service manual says otherwise. Valve springs are under load: use a compressor made for them, and keep clear.`,
  ]);
  const valves = page.table(
    "ValveReadings",
    2,
    [
      ...columns,
      valveClearanceColumn("Clearance", choices),
      verdictColumn(given, "Clearance", limitOf("Valve clearance"), "Valve clearances"),
      lengthColumn("Shim", choices),
      resultColumn("Shim to fit", format, (row) => {
        const [lower, upper] = [limits.lower, limits.upper].map((side) => side(limitOf("Valve clearance")(row.index)));
        const step = engine.item("Shim step");
        return whenFilled(
          [row.ref("Shim"), row.ref("Clearance"), step],
          `HATCH.SHIMSIZE(${row.ref("Shim")},${row.ref("Clearance")},${lower},${upper},${step})`,
        );
      }),
      lengthColumn("Guide", choices),
      lengthColumn("Stem", choices),
      resultColumn("Stem clearance", format, (row) => `=HATCH.CLEARANCE(${row.ref("Guide")},${row.ref("Stem")})`),
      verdictColumn(given, "Stem clearance", limitOf("Stem clearance"), "Stem clearance"),
    ],
    rows,
  );
  page.freeze(3, 2);
  return { page, valves };
}
