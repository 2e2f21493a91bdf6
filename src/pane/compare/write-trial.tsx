import { LENGTH_UNITS } from "../../setup/choices.ts";
import { LARGEST_SEED, MOST_ENGINES, USE_UNITS } from "../../setup/trial/choices.ts";
import { trialWorkbookSpec } from "../../setup/trial/trial-workbook.ts";
import { ABILITIES, type Ability, HostRefusal, type SheetHost } from "../../workbook/port.ts";
import { fieldsLike, useStored } from "../parts/stored-choices.ts";
import { TaskLines, useTask } from "../parts/use-task.tsx";
import { insert } from "../setup/insert.ts";

const FIRST = { heights: "3", axes: "2", unit: "mm", use: "hours", seed: "1" };

const ENTRIES = [
  ["heights", "Heights at which each bore is measured", 2, 5],
  ["axes", "Axes along which each bore is measured", 2, 4],
  ["seed", "Number with which the order of measuring is drawn", 1, LARGEST_SEED],
] as const;

const UNITS = [
  ["unit", "Lengths in", LENGTH_UNITS],
  ["use", "Use counted in", USE_UNITS],
] as const;

const MOST_CYLINDERS = 16;

/** What of a trial's sheets some program does not have. */
const ASKED: readonly Ability[] = ["tables", "styles", "print set-up"];

const lackingIn = ({ abilities }: SheetHost): string[] => ASKED.filter((ability) => abilities[ability] !== "yes").map((ability) => ABILITIES[ability]);

function whole(what: string, text: string, least: number, most: number): number {
  const value = Number(text);
  if (!/^\s*\d+\s*$/.test(text) || value < least || value > most)
    throw new HostRefusal(`${what}: a whole number from ${least} to ${most} is wanted, and there is ${text.trim() || "nothing"}.`);
  return value;
}

/** Writes the trial's sheets into the open workbook as one step; what this program cannot do of them is said. */
export function WriteTrial({ host, cylinders, engines }: { host: SheetHost; cylinders: string; engines: string }) {
  const [choices, setChoices] = useStored("trial workbook", FIRST, (given) => fieldsLike(FIRST, given));
  const work = useTask();
  const lacking = lackingIn(host);
  const write = () =>
    work.act("Adding the sheets …", async () => {
      const [heights, axes, seed] = ENTRIES.map(([key, what, least, most]) => whole(what, choices[key], least, most)) as [number, number, number];
      const book = trialWorkbookSpec({
        ...{ heights, axes, seed, unit: LENGTH_UNITS.find((unit) => unit === choices.unit) ?? "mm" },
        use: USE_UNITS.find((unit) => unit === choices.use) ?? "hours",
        cylinders: whole("Cylinders of each engine", cylinders, 1, MOST_CYLINDERS),
        engines: whole("Engines in each group", engines, 1, MOST_ENGINES),
      });
      return insert(host, book);
    });
  return (
    <section class="fields write" aria-label="Write the workbook of the trial">
      <h3>Workbook for this trial</h3>
      <p class="hint">
        New sheets for the cylinders and engines above: groups, limits with what matters, gauges and a study of one, campaigns with masters and temperatures,
        readings before and after, sheets for a second person without the first readings, verdicts. An empty workbook is best.
      </p>
      {ENTRIES.map(([key, what]) => (
        <label key={key} class="field beside">
          <span>{what}</span>
          <input
            type="text"
            inputMode="numeric"
            autocomplete="off"
            value={choices[key]}
            onInput={(event) => setChoices((before) => ({ ...before, [key]: event.currentTarget.value }))}
          />
        </label>
      ))}
      {UNITS.map(([key, what, units]) => (
        <label key={key} class="field beside">
          <span>{what}</span>
          <select value={choices[key]} onChange={(event) => setChoices((before) => ({ ...before, [key]: event.currentTarget.value }))}>
            {units.map((unit) => (
              <option key={unit} value={unit}>
                {unit}
              </option>
            ))}
          </select>
        </label>
      ))}
      {lacking.length > 0 && <p class="hint">This program leaves out: {lacking.join("; ")}. Written by crosshatch new --trial, the file has them.</p>}
      <div class="tools">
        <button type="button" aria-disabled={work.doing !== ""} onClick={write}>
          Add these sheets
        </button>
      </div>
      <TaskLines {...work} />
    </section>
  );
}
