import { useState } from "preact/hooks";
import { counted } from "../../buildsheet/counts.ts";
import type { ViewProps } from "../parts/parts.ts";
import { Picture } from "../parts/picture.tsx";
import { textFrom, useKept } from "../parts/stored-choices.ts";
import { useWork, WorkLines } from "../parts/use-work.tsx";
import { type Drawable, drawablesIn } from "./drawables.ts";
import { putInSheet } from "./put-in-sheet.ts";
import { seen } from "./workbook-content.ts";

/** Bores, roundness traces, compression tests and changes of the workbook as drawings, one at a time. */
export function DrawView({ host, changes }: ViewProps) {
  const [found, setFound] = useState<{ drawables: readonly Drawable[]; changes: number } | null>(null);
  const [title, setTitle] = useKept("draw", "", textFrom);
  const work = useWork();
  const look = () =>
    work.act("Looking for what can be drawn …", async () => {
      const drawables = drawablesIn((await seen(host)).input.content);
      setFound({ drawables, changes });
      return drawables.length === 0 ? "" : `${counted(drawables.length, "drawing")}.`;
    });
  const put = (drawable: Drawable) => work.act("Putting the picture in …", () => putInSheet(host, drawable));
  const chosen = Math.max(0, found?.drawables.findIndex((drawable) => drawable.title === title) ?? 0);
  return (
    <>
      <h2 class="heard-only">Draw</h2>
      <p class="notice">Draws the bores, roundness traces, compression tests and changes that the functions in the sheet read.</p>
      <div class="tools">
        <button type="button" class="primary" aria-disabled={work.doing !== ""} onClick={look}>
          Draw
        </button>
      </div>
      <WorkLines {...work} />
      {found?.drawables.length === 0 && <NothingToDraw />}
      {found && found.drawables.length > 0 && (
        <>
          {found.changes !== changes && <p class="stale">The sheet changed since this was drawn.</p>}
          <label class="field">
            <span>Drawing</span>
            <select value={chosen} onChange={(event) => setTitle(found.drawables[Number(event.currentTarget.value)]!.title)}>
              {found.drawables.map((drawable, at) => (
                <option key={drawable} value={at}>
                  {drawable.title}
                </option>
              ))}
            </select>
          </label>
          <Picture draw={found.drawables[chosen]!.draw} />
          <div class="tools">
            <button type="button" aria-disabled={work.doing !== ""} onClick={() => put(found.drawables[chosen]!)}>
              Put in the sheet
            </button>
          </div>
          <p class="notice">Its top left corner comes to the cell that is selected.</p>
        </>
      )}
    </>
  );
}

function NothingToDraw() {
  return (
    <div class="advice">
      <p>Nothing in this workbook can be drawn yet. Drawn is what these functions read:</p>
      <ul>
        <li>TAPER, OUTOFROUND, BORESUMMARY and the like: the profile of each bore</li>
        <li>ROUNDNESS: the trace</li>
        <li>COMPRESSIONCHECK and COMPRESSIONSPREAD: the bars of a compression test</li>
        <li>REALCHANGE: the changes with what the gauge explains</li>
      </ul>
    </div>
  );
}
