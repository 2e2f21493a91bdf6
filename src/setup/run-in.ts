import { Page, type TableAt } from "./page.ts";
import { dateColumn, type Given, lengthFormat, numberColumn, resultColumn, valveClearanceColumn, whenFilled } from "./parts.ts";
import { valveRows } from "./valves.ts";

const STAGES = 8;
const JOBS = ["Oil change", "Oil filter change", "Fuel filter change", "Re-check of valve clearance", "Re-tightening", "", "", ""];

/** Running in: stages, what falls due at which hours, and the valve clearances measured again. */
export function runInPage(given: Given, valves: TableAt): { page: Page; recheck: TableAt } {
  const { choices, engine, limits } = given;
  const page = new Page("Run-in log", "Run-in log", [
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
  const { columns, rows, isInlet } = valveRows(choices);
  const limitOf = (index: number) => `Valve clearance, ${isInlet(index) ? "inlet" : "exhaust"}`;
  const limitBeside = (heading: string, limit: (index: number) => string) =>
    resultColumn(heading, lengthFormat(choices), ({ ref, index }) => whenFilled([ref("Re-checked"), limit(index)], limit(index)));
  const [u, again] = [engine.uncertainty("Valve clearances"), engine.uncertainty("Valve clearances, re-check")];
  const recheck = page.table(
    "ClearanceRecheck",
    jobsRow + JOBS.length + 3,
    [
      ...columns,
      resultColumn("As built", lengthFormat(choices), ({ index, ref }) =>
        whenFilled([ref("Re-checked"), valves.relative("Clearance", index)], valves.relative("Clearance", index)),
      ),
      valveClearanceColumn("Re-checked", choices),
      resultColumn(
        "Change",
        "General",
        ({ ref }) => whenFilled([ref("Re-checked"), u, again], `HATCH.REALCHANGE(${ref("As built")},${ref("Re-checked")},${u},${again})`),
        16,
      ),
      // Limits, like the clearance as built, only beside readings: a valve that is not yet due is not missing.
      limitBeside("Least", (index) => limits.lower(limitOf(index))),
      limitBeside("Most", (index) => limits.upper(limitOf(index))),
      {
        heading: "Re-checked verdict",
        look: "result",
        width: 12,
        isVerdict: true,
        cell: ({ ref, index }) => `=HATCH.VERDICT(${ref("Re-checked")},${ref("Least")},${ref("Most")},${again},${limits.near(limitOf(index))})`,
      },
    ],
    rows,
  );
  return { page, recheck };
}
