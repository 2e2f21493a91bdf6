import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { counted } from "../../core/number-text.ts";
import { areaOf } from "../../workbook/address.ts";
import type { SheetHost, WorkbookSnapshot } from "../../workbook/port.ts";
import type { ViewProps } from "../parts/loading.ts";
import { FileLink } from "../parts/picture.tsx";
import { Answer, sentenceOf, TaskLines, useTask } from "../parts/use-task.tsx";
import { measuringForm } from "./form.ts";
import { groupsIn, heldIn, type PlaceGroup, selectedGroup } from "./places.ts";
import { type EntryWay, type Round, seen, startRound } from "./round.ts";
import { RoundView } from "./round-view.tsx";

const SELECTED = "selected";

/** What is read is typed here, one place after the other, and stands in the sheet at once. */
export function MeasureView({ host, changes }: ViewProps) {
  const { snapshot, trouble } = useSheets(host, changes);
  const [running, setRunning] = useState<Round | null>(null);
  const [form, setForm] = useState<{ name: string; text: string } | null>(null);
  const work = useTask();
  const groups = snapshot ? groupsIn(snapshot) : [];
  const [chosen, setChosen] = useState("");
  const id = groups.some((group) => group.id === chosen) || chosen === SELECTED ? chosen : (groups[0]?.id ?? SELECTED);
  const unit = groups.find((group) => group.id === id)?.places[0]?.unit ?? "";
  const [step, setStep] = useState<EntryWay["scale"]>(1);
  const [nominal, setNominal] = useState("");
  const [isBlind, setBlind] = useState(false);
  useEffect(() => {
    if (snapshot) setRunning((round) => round && seen(round, heldIn(snapshot, round.places)));
  }, [snapshot]);
  const start = () =>
    work.act("Looking at the sheet …", async () => {
      const now = await host.read();
      const group = id === SELECTED ? selectedGroup(now, areaOf(await host.selection())) : groupsIn(now).find((one) => one.id === id);
      if (!group) return "The sheet has changed: choose again what is measured.";
      if ("sentence" in group) return group.sentence;
      const size = nominal.trim() === "" ? null : Number(nominal.replace(",", "."));
      if (size !== null && !(size > 0)) return `The nominal size "${nominal}" is no number above 0.`;
      setRunning(startRound(group.places, heldIn(now, group.places), isBlind || group.isSecond, { scale: unit ? step : 1, nominal: size }));
      return "";
    });
  const printed = () =>
    work.act("Making the form …", async () => {
      const own = groups.filter((group) => !group.isSecond);
      if (own.length === 0) return "There is no sheet of Set up in this workbook for which a form could be made.";
      setForm({ name: `Measuring form ${snapshot!.name.replace(/\.[^.]*$/, "")}.html`, text: measuringForm(snapshot!.name, own, own[0]!.places[0]!.unit) });
      return "The form is made; save it below, and print it from a browser.";
    });
  const choice = useRef<HTMLSelectElement>(null);
  const [ended, setEnded] = useState(0);
  useLayoutEffect(() => {
    if (ended > 0) choice.current?.focus();
  }, [ended]);
  const done = (round: Round) => {
    // What is through makes room for what is still blank behind it; a round that was left is the one to go on with.
    const at = groups.findIndex((group) => group.id === id);
    const isThrough = at >= 0 && round.at === round.places.length;
    const following = isThrough ? groups.slice(at + 1).find(({ places }) => heldIn(snapshot!, places).includes(null)) : undefined;
    if (following) setChosen(following.id);
    setRunning(null);
    setEnded(ended + 1);
  };
  if (running) return <RoundView host={host} round={running} onRound={setRunning} onDone={() => done(running)} />;
  return (
    <>
      <h2>Measure</h2>
      <p class="notice">
        One place after the other, from a gauge that types or by hand. Each reading stands in the sheet at once; undo takes the last one off.
      </p>
      <div class="fields">
        <label class="field">
          <span>What is measured</span>
          <select ref={choice} value={id} onChange={(event) => setChosen(event.currentTarget.value)}>
            {groups.map((group) => (
              <option key={group.id} value={group.id}>
                {group.title} ({blanksIn(snapshot!, group)})
              </option>
            ))}
            <option value={SELECTED}>the cells that are selected on the sheet</option>
          </select>
        </label>
        {unit && (
          <label class="field">
            <span>Typed in</span>
            <select value={String(step)} onChange={(event) => setStep(event.currentTarget.value === "1" ? 1 : 0.001)}>
              <option value="1">{unit}</option>
              <option value="0.001">{unit === "in" ? "thou (0.001 in)" : "microns (0.001 mm)"}</option>
            </select>
          </label>
        )}
        <label class="field">
          <span>Nominal size, for deviations such as +.0015</span>
          <input type="text" inputMode="decimal" value={nominal} onInput={(event) => setNominal(event.currentTarget.value)} />
        </label>
        <label class="tick">
          <input type="checkbox" checked={isBlind} onChange={(event) => setBlind(event.currentTarget.checked)} />
          <span>Blind: show nothing that was read before</span>
        </label>
      </div>
      <div class="tools">
        <button type="button" class="primary" aria-disabled={work.doing !== "" || !snapshot} onClick={start}>
          Start measuring
        </button>
        <button type="button" aria-disabled={work.doing !== "" || !snapshot} onClick={printed}>
          Make a form to write on
        </button>
      </div>
      <TaskLines {...work} refusal={work.refusal || trouble} />
      {form && (
        <Answer label="Measuring form" made={form}>
          <FileLink name={form.name} type="text/html" text={form.text} />
        </Answer>
      )}
    </>
  );
}

function blanksIn(snapshot: WorkbookSnapshot, { places }: PlaceGroup): string {
  const blank = heldIn(snapshot, places).filter((value) => value === null).length;
  return blank === 0 ? `all ${places.length} read` : `${counted(blank, "place")} blank`;
}

/** The sheets as they are, read again after they have changed. */
function useSheets(host: SheetHost, changes: number): { snapshot: WorkbookSnapshot | null; trouble: string } {
  const [sheets, setSheets] = useState<{ snapshot: WorkbookSnapshot | null; trouble: string }>({ snapshot: null, trouble: "" });
  const latest = useRef(0);
  useEffect(() => {
    const asked = ++latest.current;
    const timer = setTimeout(
      () => {
        host.read().then(
          (snapshot) => asked === latest.current && setSheets({ snapshot, trouble: "" }),
          (error) => asked === latest.current && setSheets((before) => ({ ...before, trouble: sentenceOf(error) })),
        );
      },
      asked === 1 ? 0 : SETTLED,
    );
    return () => clearTimeout(timer);
  }, [host, changes]);
  return sheets;
}

/** Time in ms within which further readings come before the sheet is looked at again. */
const SETTLED = 400;
