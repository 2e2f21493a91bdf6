import { useCallback, useRef, useState } from "preact/hooks";
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

/** The lines in which a view says what it does and what came of it; screen readers hear them as they change. */
export function TaskLines({ doing, notice, refusal }: Lines) {
  return (
    <>
      <div class="progress">{doing && <div role="progressbar" aria-label={doing} />}</div>
      <p class="refusal" role="alert">
        {refusal}
      </p>
      <p class="notice" role="status">
        {doing || notice}
      </p>
    </>
  );
}
