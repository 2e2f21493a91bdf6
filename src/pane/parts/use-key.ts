import { useLayoutEffect, useRef } from "preact/hooks";

/** A key that works wherever in a view somebody is, or nowhere in particular; `inside` is an element of the view. */
export function useKey(key: string, inside: { readonly current: HTMLElement | null }, act: (() => void) | undefined): void {
  const now = useRef(act);
  now.current = act;
  // At once: somebody may press it as soon as there is something to be seen.
  useLayoutEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const isPlain = !event.ctrlKey && !event.altKey && !event.metaKey && !event.shiftKey;
      if (event.key !== key || !isPlain || !now.current || inside.current?.closest("[hidden]")) return;
      event.preventDefault();
      now.current();
    };
    document.addEventListener("keydown", onKeyDown);
    return () => document.removeEventListener("keydown", onKeyDown);
  }, [key, inside]);
}
