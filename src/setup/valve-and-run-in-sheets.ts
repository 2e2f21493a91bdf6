import { unitWords } from "../core/words.ts";
import type { BuildSheetChoices } from "./choices.ts";
import {
  dateColumn,
  lengthColumn,
  lengthFormat,
  numberColumn,
  resultColumn,
  type SetupContext,
  valveClearanceColumn,
  valveNames,
  verdictColumn,
  whenFilled,
} from "./columns.ts";
import { SheetBuilder, type SheetColumn, type TableAt } from "./page.ts";

/** Which cylinder and valve a row is about, on every page with one valve a row. */
export function valveRows({ cylinders, valves }: BuildSheetChoices): { columns: SheetColumn[]; rows: number; isInlet(index: number): boolean } {
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

/** Valve clearances and shims, one valve a row. */
export function valvesPage(given: SetupContext): { page: SheetBuilder; valves: TableAt } {
  const { choices, engine, limits } = given;
  const { columns, rows, isInlet } = valveRows(choices);
  const format = lengthFormat(choices);
  const limitOf = (kind: string) => (index: number) => `${kind}, ${isInlet(index) ? "inlet" : "exhaust"}`;
  const page = new SheetBuilder("Valves", "Valves", [
    `In ${unitWords(choices.unit)}. Clearances cold unless the maker's service manual says otherwise. Valve springs are under load: use a compressor made for them, and keep clear.`,
    "Shim to fit: a valve inside its limits keeps its shim, the others get the step nearest the middle. Which shim another valve or a spare can give: Plan, Shims.",
  ]);
  const valves = page.table(
    "ValveReadings",
    3,
    [
      ...columns,
      valveClearanceColumn("Clearance", choices),
      lengthColumn("Shim", choices),
      verdictColumn(given, "Clearance", limitOf("Valve clearance"), "Valve clearances"),
      resultColumn("Shim to fit", format, (row) => {
        const [lower, upper] = (["Lower", "Upper"] as const).map((side) => limits.cell(side, limitOf("Valve clearance")(row.index)));
        const step = engine.item("Shim step");
        const [shim, clearance] = [row.ref("Shim"), row.ref("Clearance")];
        return whenFilled(
          [shim, clearance, step, lower!, upper!],
          `IF(HATCH.MARGIN(${clearance},${lower},${upper})>=0,${shim},HATCH.SHIMSIZE(${shim},${clearance},${lower},${upper},${step}))`,
        );
      }),
    ],
    rows,
  );
  page.freeze(4, 2);
  return { page, valves };
}

const STAGES = 8;

const JOBS = ["Oil change", "Oil filter change", "Fuel filter change", "Re-check of valve clearance", "Re-tightening", "", "", ""];

/** Which function is for which question: the same valves twice are pairs, those of two engines are groups. */
const TOGETHER =
  "Change: each valve by itself. Whether these valves have moved together: HATCH.PAIREDCHANGE over As built and Re-checked, inlet and exhaust apart. HATCH.COMPAREGROUPS is for two engines.";

/** Running in: stages, what falls due at which hours, and the valve clearances measured again. */
export function runInPage(given: SetupContext, valves: TableAt | undefined): { page: SheetBuilder; recheck: TableAt | undefined } {
  const page = new SheetBuilder("Run-in log", "Run-in log", [
    "Stages and hours come from the maker's service manual. Running engines are hot and turn: guards on, sleeves tight, the space aired.",
  ]);
  const hours = (heading: string) => numberColumn(heading, "0.0", "Hours, typed as a number.", "at least zero");
  page.put(2, 0, "Hours run now", "label");
  page.put(2, 1, "", "typed", "0.0");
  page.allow(2, 1, { kind: "at least zero" }, "Hours, typed as a number.");
  page.table(
    "RunInStages",
    4,
    [
      { heading: "Stage", look: "label", width: 26, cell: ({ index }) => index + 1 },
      hours("From hours"),
      hours("To hours"),
      { heading: "Speed and load", look: "typed", width: 18 },
      dateColumn("Done on"),
      { heading: "Remarks", look: "typed", width: 24 },
    ],
    STAGES,
  );
  const jobsRow = 4 + STAGES + 3;
  page.table(
    "ServiceJobs",
    jobsRow,
    [
      { heading: "Job", look: "typed", cell: ({ index }) => JOBS[index]! },
      hours("Due at hours"),
      hours("Done at hours"),
      { heading: "Done by", look: "typed" },
      resultColumn("State", "General", ({ ref }) =>
        whenFilled([ref("Due at hours")], `IF(${ref("Done at hours")}<>"","done",IF($B$3="","",IF($B$3<${ref("Due at hours")},"later","due")))`),
      ),
    ],
    JOBS.length,
  );
  return { page, recheck: valves && recheckTable(page, given, valves, jobsRow + JOBS.length + 3) };
}

/** The valves measured again, beside what they were built to. */
function recheckTable(page: SheetBuilder, { choices, engine, limits }: SetupContext, valves: TableAt, recheckRow: number): TableAt {
  const { columns, rows, isInlet } = valveRows(choices);
  const limitOf = (index: number) => `Valve clearance, ${isInlet(index) ? "inlet" : "exhaust"}`;
  const limitBeside = (heading: string, limit: (index: number) => string) =>
    resultColumn(heading, lengthFormat(choices), ({ ref, index }) => whenFilled([ref("Re-checked")], limit(index)));
  const [u, again] = [engine.uncertainty("Valve clearances"), engine.uncertainty("Valve clearances, re-check")];
  page.note(recheckRow - 1, TOGETHER);
  return page.table(
    "ClearanceRecheck",
    recheckRow,
    [
      ...columns,
      valveClearanceColumn("Re-checked", choices),
      resultColumn("As built", lengthFormat(choices), ({ index, ref }) =>
        whenFilled([ref("Re-checked"), valves.relative("Clearance", index)], valves.relative("Clearance", index)),
      ),
      resultColumn(
        "Change",
        "General",
        ({ ref }) => whenFilled([ref("Re-checked"), u, again], `HATCH.REALCHANGE(${ref("As built")},${ref("Re-checked")},${u},${again})`),
        34,
      ),
      // Limits, like the clearance as built, only beside readings: a valve that is not yet due is not missing.
      limitBeside("Least", (index) => limits.lower(limitOf(index))),
      limitBeside("Most", (index) => limits.upper(limitOf(index))),
      {
        heading: "Re-checked verdict",
        look: "result",
        width: 12,
        isVerdict: true,
        cell: ({ ref, index }) =>
          whenFilled([ref("Re-checked")], `HATCH.VERDICT(${ref("Re-checked")},${ref("Least")},${ref("Most")},${again},${limits.near(limitOf(index))})`),
      },
    ],
    rows,
  );
}
