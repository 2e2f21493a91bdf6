import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { LoadView, ViewProps } from "./parts/parts.ts";

/** A view that is loaded when it is first opened. */
export function Later({ load, ...props }: ViewProps & { load: LoadView }) {
  const [view, setView] = useState<{ View: ComponentType<ViewProps> } | null>(null);
  const [trouble, setTrouble] = useState("");
  useEffect(() => {
    load().then(
      (View) => setView({ View }),
      (error: Error) => setTrouble(error.message),
    );
  }, [load]);
  if (view) return <view.View {...props} />;
  return (
    <>
      <p class="refusal" role="alert">
        {trouble}
      </p>
      {trouble ? (
        <button type="button" onClick={() => location.reload()}>
          Reload the pane
        </button>
      ) : (
        <p class="notice">Loading …</p>
      )}
    </>
  );
}
