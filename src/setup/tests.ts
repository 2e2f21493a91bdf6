import { Page, type TableAt } from "./page.ts";
import { cylinderColumn, type Given, numberColumn, pressureUnit, resultColumn, verdictColumn, whenFilled } from "./parts.ts";

/** Compression and leak-down tests of the assembled engine. */
export function testsPage(given: Given): { page: Page; tests: TableAt; spread: TableAt | undefined } {
  const { choices } = given;
  const unit = pressureUnit(choices);
  const page = new Page("Tests", "Compression and leak-down tests", [
    `Pressures in ${unit}. For a compression test ignition off and fuel shut off, all plugs out, throttle open. Stand clear of all that turns.`,
    "Under leak-down air the engine can turn over with great force: piston at top dead centre, crank held, hands and tools clear.",
  ]);
  // A dead cylinder shows 0, and holds 0.
  const pressure = (heading: string) => numberColumn(heading, "0.0#", `A pressure in ${unit}, typed as a number.`, "at least zero");
  const tests = page.table(
    "PressureTests",
    3,
    [
      cylinderColumn,
      pressure("Dry"),
      verdictColumn(given, "Dry", "Compression pressure", "Compression"),
      pressure("Wet"),
      resultColumn(
        "Wet points at",
        "General",
        ({ index, ref, body }) => whenFilled([ref("Dry"), ref("Wet")], `INDEX(HATCH.WETTEST(${body("Dry")},${body("Wet")}),${index + 1})`),
        34,
      ),
      pressure("Supply"),
      pressure("Held"),
      resultColumn("Leak-down", "0.0", ({ ref }) => whenFilled([ref("Held")], `HATCH.LEAKDOWN(${ref("Supply")},${ref("Held")})`)),
      verdictColumn(given, "Leak-down", "Leak-down"),
    ],
    choices.cylinders,
  );
  const spread = choices.cylinders > 1 ? spreadTable(page, given, tests) : undefined;
  page.freeze(4, 1);
  return { page, tests, spread };
}

/** What the highest of several cylinders has more than the lowest. */
const spreadTable = (page: Page, given: Given, tests: TableAt): TableAt =>
  page.table(
    "PressureSpread",
    3 + given.choices.cylinders + 3,
    [
      { heading: "Of", look: "label", cell: () => "all, dry" },
      resultColumn("Spread", "0.0#", () => `=HATCH.COMPRESSIONSPREAD(${tests.body("Dry")})`),
      verdictColumn(given, "Spread", "Compression spread", "Compression spread"),
    ],
    1,
  );
