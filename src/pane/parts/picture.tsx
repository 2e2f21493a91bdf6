import { useMemo } from "preact/hooks";
import { type Drawn, isDrawing } from "../../drawings/drawing.ts";
import { FileLink } from "./file-link.tsx";

/** Room for a drawing in the narrowest pane, in CSS pixels. */
const ROOM = 296;

/** A drawing, the same in words, and a file of it; or why there is none. `draw` stays the same while what it draws does. */
export function Picture({ draw }: { draw(width: number): Drawn }) {
  const drawn = useMemo(() => draw(ROOM), [draw]);
  if (!isDrawing(drawn)) return <p class="advice">{drawn.sentence}.</p>;
  return (
    <>
      {/* The drawing module escapes every text that it is given. */}
      <div class="picture" dangerouslySetInnerHTML={{ __html: drawn.svg }} />
      <details>
        <summary>In words</summary>
        <p class="notice">{drawn.description}</p>
      </details>
      <FileLink name={`${drawn.title}.svg`} type="image/svg+xml" text={drawn.svg} />
    </>
  );
}
