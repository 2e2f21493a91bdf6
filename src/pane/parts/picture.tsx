import { useEffect, useMemo, useState } from "preact/hooks";
import { type Drawn, isDrawing } from "../../drawings/svg.ts";

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

interface Props {
  name: string;
  type: string;
  text: string;
}

/**
 * A link that saves a text as a file. A page made here and opened in a window of its own would stand
 * under the pane's policy, and without its style; saved and opened from there it does not.
 */
export function FileLink({ name, type, text }: Props) {
  const file = fileName(name);
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [text, type]);
  return (
    <p class="file-link">
      <a href={address} download={file}>
        Save {file}
      </a>
    </p>
  );
}

/** Signs that some system does not take in the name of a file. */
const fileName = (name: string): string =>
  name
    .replace(/[\\/:*?"<>|]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();
