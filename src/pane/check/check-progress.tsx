import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { canStop, type Work } from "./check-state.ts";

export const DOING: Readonly<Record<Work, string>> = {
  reading: "Reading the workbook …",
  checking: "Checking every reading against its limits …",
  marking: "Marking the cells …",
  unmarking: "Taking the marks off …",
};

/** Work that takes longer than this shows how far it is and can be stopped by a button, in milliseconds. */
const LONG = 1000;

interface ProgressProps {
  work: Work | null;
  share: number | null;
  stop(): void;
  /** Gets the focus that the button had when it goes. */
  afterwards: { readonly current: HTMLElement | null };
}

/** At once a line that says that work goes on; what work, the status line says. */
export function CheckProgress({ work, share, stop, afterwards }: ProgressProps) {
  const isLong = useLong(work !== null);
  if (work === null || !isLong) return <div class="progress">{work && <div role="progressbar" aria-label={DOING[work]} />}</div>;
  return (
    <div class="long">
      {share === null ? (
        <progress aria-label={DOING[work]} />
      ) : (
        <>
          <progress aria-label={DOING[work]} max={1} value={share} />
          <span class="figure">{Math.round(share * 100)} %</span>
        </>
      )}
      {canStop(work) && <StopButton stop={stop} afterwards={afterwards} />}
    </div>
  );
}

function StopButton({ stop, afterwards }: Pick<ProgressProps, "stop" | "afterwards">) {
  const button = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => {
    const own = button.current;
    return () => {
      if (document.activeElement === own) afterwards.current?.focus();
    };
  }, [afterwards]);
  return (
    <button ref={button} type="button" aria-keyshortcuts="Escape" onClick={stop}>
      Stop
    </button>
  );
}

function useLong(isGoing: boolean): boolean {
  const [isLong, setLong] = useState(false);
  useEffect(() => {
    if (!isGoing) return;
    const wait = setTimeout(() => setLong(true), LONG);
    return () => {
      clearTimeout(wait);
      setLong(false);
    };
  }, [isGoing]);
  return isGoing && isLong;
}
