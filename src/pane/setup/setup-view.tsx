import { useMemo, useState } from "preact/hooks";
import { counted } from "../../core/number-text.ts";
import { asSentence, capitalised } from "../../core/words.ts";
import { buildSheetSpec } from "../../setup/build-sheet.ts";
import { type BuildSheetChoices, COUNT_WORDS, COUNTS, type CountName, LENGTH_UNITS, type LengthUnit, readChoices } from "../../setup/choices.ts";
import { type LimitsModel, withLimits } from "../../setup/limits-book.ts";
import { type LimitsForWorkbook, limitsFor, type OtherLimit } from "../../setup/limits-for-workbook.ts";
import type { BuildSheet } from "../../setup/model.ts";
import { SHEET_WORDS, SHEETS, type SheetWord } from "../../setup/sheets.ts";
import { placeName } from "../../workbook/address.ts";
import type { SheetHost } from "../../workbook/port.ts";
import type { ViewProps } from "../parts/loading.ts";
import { part } from "../parts/loading.ts";
import { fieldsLike, useStored } from "../parts/stored-choices.ts";
import { TaskLines, useTask } from "../parts/use-task.tsx";
import { insert } from "./insert.ts";

const USUAL: BuildSheetChoices = { cylinders: 4, heights: 3, axes: 2, valves: 2, unit: "mm", secondReadings: false, without: [] };

const UNIT_WORDS: Readonly<Record<LengthUnit, string>> = { mm: "millimetres", in: "inches" };

/** Counts and units that are not to be had any more count as not chosen. */
function choicesFrom(given: unknown): BuildSheetChoices | undefined {
  const like = fieldsLike(USUAL, given);
  const choices = like && { ...like, without: Array.isArray(like.without) ? like.without.filter((word) => SHEET_WORDS.includes(word)) : [] };
  const isCounted = (name: CountName) => Number.isInteger(choices![name]) && choices![name] >= COUNTS[name].least && choices![name] <= COUNTS[name].most;
  return choices && LENGTH_UNITS.includes(choices.unit) && (Object.keys(COUNTS) as CountName[]).every(isCounted) ? choices : undefined;
}

/** A build sheet for one engine by what is chosen here, in new sheets of the workbook. */
export function SetupView({ host }: ViewProps) {
  const [choices, setChoices] = useStored("setup", USUAL, choicesFrom);
  const work = useTask();
  const [limits, setLimits] = useState<ChosenLimits | null>(null);
  const read = useMemo(() => {
    const checked = readChoices(choices);
    return "sentences" in checked ? { sentence: checked.sentences.join("; ") } : { book: buildSheetSpec(checked.choices) };
  }, [choices]);
  const choose = (choice: Partial<BuildSheetChoices>) => setChoices((before) => ({ ...before, ...choice }));
  return (
    <>
      <h2>Set up a build sheet</h2>
      <p class="notice">For one engine: tables to type into, with the functions beside them. Every limit is blank until you type it.</p>
      <div class="fields">
        {(Object.keys(COUNTS) as CountName[]).map((name) => (
          <CountField key={name} name={name} count={choices[name]} onCount={(count) => choose({ [name]: count })} />
        ))}
        <label class="field beside">
          <span>Lengths in</span>
          <select value={choices.unit} onChange={(event) => choose({ unit: event.currentTarget.value as LengthUnit })}>
            {LENGTH_UNITS.map((unit) => (
              <option key={unit} value={unit}>
                {UNIT_WORDS[unit]}
              </option>
            ))}
          </select>
        </label>
        <label class="tick">
          <input type="checkbox" checked={choices.secondReadings} onChange={(event) => choose({ secondReadings: event.currentTarget.checked })} />
          <span>Second readings by a second person</span>
        </label>
      </div>
      <SheetTicks without={choices.without} onWithout={(without) => choose({ without })} />
      <LimitsBook chosen={limits} onChosen={setLimits} host={host} />
      {read.book ? (
        <>
          <p>Adds the sheets {read.book.sheets.map(({ name }) => name).join(", ")}. What is in the workbook stays as it is.</p>
          <div class="tools">
            <button
              type="button"
              class="primary"
              aria-disabled={work.doing !== ""}
              onClick={() => work.act("Adding the sheets …", () => insertWith(limits, host, read.book))}
            >
              Add these sheets
            </button>
          </div>
        </>
      ) : (
        <p class="refusal" role="alert">
          Leave in at least one sheet that takes readings.
        </p>
      )}
      <TaskLines {...work} />
    </>
  );
}

interface ChosenLimits {
  file: string;
  models: readonly LimitsModel[];
  model: string;
}

/** The build sheet with the limits that were chosen, and what was not copied. */
async function insertWith(chosen: ChosenLimits | null, host: SheetHost, book: BuildSheet): Promise<string> {
  const model = chosen?.models.find(({ name }) => name === chosen.model);
  if (!chosen || !model) return insert(host, book);
  const filled = withLimits(book, model, chosen.file);
  const added = await insert(host, filled.book);
  const copied = `${counted(filled.copied, "limit was", "limits were")} copied from ${chosen.file}, ${model.name}: look them over against the maker's service manual.`;
  return [added, copied, ...filled.notes.map(asSentence)].join(" ");
}

/** A workbook of the shop's own with limits for each engine model. */
function LimitsBook({ chosen, onChosen, host }: { chosen: ChosenLimits | null; onChosen(chosen: ChosenLimits | null): void; host: SheetHost }) {
  const work = useTask();
  const read = (file: File | undefined) =>
    work.act("Reading the limits …", async () => {
      onChosen(null);
      if (!file) return "";
      const { modelsOfFile } = await part(import("./limits-file.ts"));
      const models = await modelsOfFile(file);
      onChosen({ file: file.name, models, model: models[0]!.name });
      return "";
    });
  return (
    <details>
      <summary>{chosen ? `Limits from ${chosen.file}` : "Limits from a limits book of your own"}</summary>
      <label class="field">
        <span>Limits book</span>
        <input type="file" accept=".xlsx" aria-describedby="limits-book-hint" onChange={({ currentTarget }) => void read(currentTarget.files?.[0])} />
      </label>
      <p id="limits-book-hint" class="hint">
        An .xlsx with a sheet for each engine model, headed Characteristic, Lower, Upper, Unit and Source, as the Limits sheet of a build sheet is. Read here,
        sent nowhere.
      </p>
      {chosen && (
        <>
          <label class="field">
            <span>Engine model</span>
            <select value={chosen.model} onChange={({ currentTarget }) => onChosen({ ...chosen, model: currentTarget.value })}>
              {chosen.models.map(({ name, limits }) => (
                <option key={name} value={name}>
                  {`${name} (${counted(limits.length, "limit")})`}
                </option>
              ))}
            </select>
          </label>
          <IntoWorkbook key={`${chosen.file}, ${chosen.model}`} chosen={chosen} host={host} />
        </>
      )}
      <TaskLines {...work} />
    </details>
  );
}

/** The limits for the tables of limits that the workbook has already. What is typed otherwise stays until somebody ticks it. */
function IntoWorkbook({ chosen, host }: { chosen: ChosenLimits; host: SheetHost }) {
  const work = useTask();
  const [others, setOthers] = useState<readonly OtherLimit[]>([]);
  const [ticked, setTicked] = useState<readonly OtherLimit[]>([]);
  const copy = () =>
    work.act("Copying the limits …", async () => {
      const model = chosen.models.find(({ name }) => name === chosen.model)!;
      const found = limitsFor((await host.read()).sheets, model, chosen.file);
      if (found.edits.length > 0) await host.write(found.edits);
      setTicked([]);
      setOthers(found.others);
      return copiedText(found, chosen);
    });
  const replace = () =>
    work.act("Replacing the limits …", async () => {
      await host.write(ticked.flatMap(({ edits }) => edits));
      setOthers(others.filter((other) => !ticked.includes(other)));
      setTicked([]);
      return `${counted(ticked.length, "limit was", "limits were")} replaced.`;
    });
  return (
    <>
      <p class="hint">New sheets get them when they are added. To put them on the Limits sheet that is here already:</p>
      <div class="tools">
        <button type="button" aria-disabled={work.doing !== ""} onClick={copy}>
          Copy into the sheets that are here
        </button>
      </div>
      <TaskLines {...work} />
      {others.length > 0 && (
        <fieldset>
          <legend>Typed differently here, and left as they are. Tick those to be replaced from the limits book:</legend>
          {others.map((other) => (
            <label key={placeName(other.cell)} class="tick">
              <input
                type="checkbox"
                checked={ticked.includes(other)}
                onChange={({ currentTarget: { checked } }) => setTicked(checked ? [...ticked, other] : ticked.filter((one) => one !== other))}
              />
              <span>
                {other.characteristic}, {placeName(other.cell)}: here {other.typed}, in the limits book {other.inBook}
              </span>
            </label>
          ))}
          <div class="tools">
            <button type="button" aria-disabled={work.doing !== "" || ticked.length === 0} onClick={() => ticked.length > 0 && void replace()}>
              Replace the ticked ones
            </button>
          </div>
        </fieldset>
      )}
    </>
  );
}

function copiedText({ copied, same, others, notes }: LimitsForWorkbook, { file, model }: ChosenLimits): string {
  const sentences = [
    `${counted(copied, "limit was", "limits were")} copied from ${file}, ${model}${copied > 0 ? ": look them over against the maker's service manual" : ""}.`,
    same > 0 && `${counted(same, "limit is", "limits are")} the same already.`,
    others.length > 0 && `${counted(others.length, "limit is", "limits are")} typed differently here and ${others.length === 1 ? "was" : "were"} left.`,
    ...notes.map(asSentence),
  ];
  return sentences.filter(Boolean).join(" ");
}

/** Sheets that can be left out, with their names. */
function SheetTicks({ without, onWithout }: { without: readonly SheetWord[]; onWithout(without: SheetWord[]): void }) {
  return (
    <details>
      <summary>{without.length ? `Sheets: ${without.length} of ${SHEET_WORDS.length} left out` : "Sheets: none left out"}</summary>
      {SHEET_WORDS.map((word) => (
        <label key={word} class="tick">
          <input
            type="checkbox"
            checked={!without.includes(word)}
            onChange={({ currentTarget: { checked } }) => onWithout(SHEET_WORDS.filter((one) => (one === word ? !checked : without.includes(one))))}
          />
          <span>{SHEETS[word]}</span>
        </label>
      ))}
    </details>
  );
}

function CountField({ name, count, onCount }: { name: CountName; count: number; onCount(count: number): void }) {
  const { least, most } = COUNTS[name];
  const words = COUNT_WORDS[name];
  return (
    <label class="field beside">
      <span>{capitalised(words)}</span>
      <select value={count} onChange={(event) => onCount(Number(event.currentTarget.value))}>
        {Array.from({ length: most - least + 1 }, (_, i) => (
          <option key={least + i} value={least + i}>
            {least + i}
          </option>
        ))}
      </select>
    </label>
  );
}
