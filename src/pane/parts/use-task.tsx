import type { ComponentChildren } from "preact";
import { useCallback, useLayoutEffect, useRef, useState } from "preact/hooks";
import { isRefusal } from "../../workbook/port.ts";
import { PartMissing } from "./loading.ts";

/** Some errors are sentences for people already; anything else is a fault of ours and says so. */
export function sentenceOf(error: unknown): string {
  if (isRefusal(error) || error instanceof PartMissing) return error.message;
  return `This did not work, through a fault in Crosshatch: ${(error as Error | null)?.message ?? error}`;
}

interface Lines {
  doing: string;
  notice: string;
  refusal: string;
}

/** One piece of work of a view at a time, and what came of it. */
interface ViewTask extends Lines {
  /** `run` says in a sentence what it came to; what it throws is shown as why it was not done. */
  act(doing: string, run: () => Promise<string>): void;
}

const NOTHING: Lines = { doing: "", notice: "", refusal: "" };

export function useTask(): ViewTask {
  const [lines, setLines] = useState(NOTHING);
  const isBusy = useRef(false);
  const act = useCallback((doing: string, run: () => Promise<string>) => {
    if (isBusy.current) return;
    isBusy.current = true;
    setLines({ ...NOTHING, doing });
    const ended = (came: Partial<Lines>) => {
      isBusy.current = false;
      setLines({ ...NOTHING, ...came });
    };
    run().then(
      (notice) => ended({ notice }),
      (error) => ended({ refusal: sentenceOf(error) }),
    );
  }, []);
  return { ...lines, act };
}

/**
 * The lines in which a view says what it does and what came of it; screen readers hear them as they change.
 * What came of it is brought into sight; a notice that has been left above, because its answer is in sight, stays there.
 */
export function TaskLines({ doing, notice, refusal }: Lines) {
  const lines = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (refusal || (notice && lines.current!.getBoundingClientRect().bottom > innerHeight)) lines.current!.scrollIntoView({ block: "nearest" });
  }, [notice, refusal]);
  return (
    <div ref={lines}>
      <div class="progress">{doing && <div role="progressbar" aria-label={doing} />}</div>
      <p class="refusal" role="alert">
        {refusal}
      </p>
      <p class="notice" role="status">
        {doing || notice}
      </p>
    </div>
  );
}

interface AnswerProps {
  label: string;
  /** What was made, as one object: each is brought into sight once, also where it is shown again later. */
  made: object;
  children: ComponentChildren;
}

const SHOWN = new WeakSet<object>();

/** What a view has come to. A new one gets the top of the pane and the focus, so that nobody looks for it below a long form. */
export function Answer({ label, made, children }: AnswerProps) {
  const section = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    if (SHOWN.has(made)) return;
    SHOWN.add(made);
    section.current!.focus({ preventScroll: true });
    section.current!.scrollIntoView({ block: "start" });
  }, [made]);
  return (
    <section ref={section} class="answer" aria-label={label} tabIndex={-1}>
      {children}
    </section>
  );
}
