import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { decimal } from "../../core/decimal.ts";
import type { SheetHost } from "../../workbook/port.ts";
import { sentenceOf } from "../parts/use-task.tsx";
import { accepted, back, declined, entered, next, type Round, refused, spoken } from "./round.ts";
import { say } from "./speech.ts";

interface Props {
  host: SheetHost;
  round: Round;
  onRound(next: Round | ((now: Round | null) => Round | null)): void;
  onDone(): void;
}

/** The place that is on, in figures that can be read from across the bench, and the field that takes its reading. */
export function RoundView({ host, round, onRound, onDone }: Props) {
  const [text, setText] = useState("");
  const [isSaid, setSaid] = useState(false);
  const [noVoice, setNoVoice] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  const done = useRef<HTMLButtonElement>(null);
  const { places, readings, at, asked, trouble, last, isBlind } = round;
  const place = places[at];
  // Before anything is shown: a gauge that types does not wait.
  useLayoutEffect(() => (field.current ?? done.current)?.focus(), [at, asked]);
  const tell = (words: string) => setNoVoice(say(words) === "no voice");
  const take = ({ round: after, write }: { round: Round; write?: number }) => {
    onRound(after);
    setText("");
    if (write === undefined || !place) return;
    if (isSaid) tell(spoken(place, write));
    host.write([{ ...place.cell, cells: [[write]] }]).catch((error) => onRound((now) => now && refused(now, round, sentenceOf(error))));
  };
  const go = (to: Round) => {
    setText("");
    onRound(to);
  };
  const stands = place && !isBlind ? (readings[at] ?? null) : null;
  const lastRead = last === null ? null : (readings[last] ?? null);
  return (
    <section class="round" aria-label="Measuring">
      <p class="notice" role="status">
        {place ? `${at + 1} of ${places.length}` : `All ${places.length} places are through; ${readings.filter((one) => one !== null).length} read.`}
      </p>
      {place && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            take(entered(round, text));
          }}
        >
          <label class="place-on">
            <span>{place.name}</span>
            <input
              ref={field}
              type="text"
              inputMode="decimal"
              autocomplete="off"
              value={text}
              placeholder={stands === null ? "" : String(decimal(stands))}
              onInput={(event) => setText(event.currentTarget.value)}
            />
          </label>
          <p class="refusal" role="alert">
            {asked?.sentence ?? trouble}
          </p>
          {asked ? (
            <div class="tools">
              <button type="button" class="primary" onClick={() => take(accepted(round))}>
                Yes, write {asked.value}
              </button>
              <button type="button" onClick={() => go(declined(round))}>
                No, read again
              </button>
            </div>
          ) : (
            <div class="tools">
              <button type="submit" class="primary">
                Enter
              </button>
              <button type="button" onClick={() => go(next(round))}>
                Skip
              </button>
              <button type="button" aria-disabled={at === 0} onClick={() => go(back(round))}>
                Back
              </button>
            </div>
          )}
        </form>
      )}
      {lastRead !== null && (
        <p class="last-read">
          {places[last!]!.name}: <strong>{decimal(lastRead)}</strong>
        </p>
      )}
      <div class="tools">
        {lastRead !== null && (
          <button type="button" onClick={() => tell(spoken(places[last!]!, lastRead))}>
            Say it
          </button>
        )}
        <button ref={done} type="button" onClick={onDone}>
          {place ? "Stop measuring" : "Done"}
        </button>
        {!place && (
          <button type="button" onClick={() => go(back(round))}>
            Back
          </button>
        )}
      </div>
      <label class="tick">
        <input type="checkbox" checked={isSaid} onChange={(event) => setSaid(event.currentTarget.checked)} />
        <span>Say each reading back</span>
      </label>
      <p class="hint">
        {noVoice ? "There is no English voice on this machine, and none is fetched from elsewhere." : place ? "Enter takes the reading and goes on." : ""}
      </p>
    </section>
  );
}
