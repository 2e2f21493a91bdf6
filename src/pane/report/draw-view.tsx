import { useState } from "preact/hooks";
import type { DrawnInputs } from "../../core/define.ts";
import { counted } from "../../core/number-text.ts";
import { type Drawing, isDrawing } from "../../drawings/svg.ts";
import { specs } from "../../functions/index.ts";
import { placeName } from "../../workbook/address.ts";
import type { SheetHost } from "../../workbook/port.ts";
import type { ViewProps } from "../parts/loading.ts";
import { Picture } from "../parts/picture.tsx";
import { textFrom, useStored } from "../parts/stored-choices.ts";
import { TaskLines, useTask } from "../parts/use-task.tsx";
import { type Drawable, drawablesIn } from "./drawables.ts";
import { workbookContent } from "./workbook-content.ts";

/** Dots of the picture for one of the drawing, so that it is sharp on paper too. */
const SHARPNESS = 3;

/**
 * A drawing as a PNG file in Base64, black on white whatever the theme. The drawing goes through an
 * address of its own (`data:`), which the pane's policy allows for pictures already.
 */
async function pngOf({ svg, width, height }: Drawing): Promise<string> {
  const drawn = await loaded(`data:image/svg+xml,${encodeURIComponent(svg.replace("<svg", '<svg color="#000000"'))}`);
  const canvas = document.createElement("canvas");
  canvas.width = width * SHARPNESS;
  canvas.height = height * SHARPNESS;
  const ink = canvas.getContext("2d")!;
  ink.fillStyle = "#FFFFFF";
  ink.fillRect(0, 0, canvas.width, canvas.height);
  ink.drawImage(drawn, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL("image/png").replace(/^[^,]*,/, "");
}

function loaded(address: string): Promise<HTMLImageElement> {
  return new Promise((resolve, reject) => {
    const image = new Image();
    image.onload = () => resolve(image);
    image.onerror = () => reject(new Error("this drawing did not become a picture"));
    image.src = address;
  });
}

/** Room for a drawing in a sheet, in pixels: some seven columns of the usual width. */
const ROOM = 480;

/** Puts the picture of a drawing where the person has selected a cell, and says so. */
async function putInSheet(host: SheetHost, { draw }: Drawable): Promise<string> {
  const drawn = draw(ROOM);
  if (!isDrawing(drawn)) return `${drawn.sentence}.`;
  const corner = await host.selection();
  const { title: name, description, width, height } = drawn;
  await host.insertPicture(corner, { name, description, png: await pngOf(drawn), width, height });
  return `Put in at ${placeName(corner)}. It shows the readings of now: it does not change with the sheet.`;
}

/** Whatever the functions of the workbook read that can be drawn, one drawing at a time. */
export function DrawView({ host, changes }: ViewProps) {
  const [found, setFound] = useState<{ drawables: readonly Drawable[]; changes: number } | null>(null);
  const [title, setTitle] = useStored("draw", "", textFrom);
  const work = useTask();
  const look = () =>
    work.act("Looking for what can be drawn …", async () => {
      const drawables = drawablesIn((await workbookContent(host)).input.content);
      setFound({ drawables, changes });
      return drawables.length === 0 ? "" : `${counted(drawables.length, "drawing")}.`;
    });
  const putting = useTask();
  const put = (drawable: Drawable) => putting.act("Putting the picture in …", () => putInSheet(host, drawable));
  const chosen = Math.max(0, found?.drawables.findIndex((drawable) => drawable.title === title) ?? 0);
  return (
    <>
      <h2 class="heard-only">Draw</h2>
      <p class="notice">Draws the bores, traces, faces, surface profiles, compression tests and changes that the functions in the sheet read.</p>
      <div class="tools">
        <button type="button" class="primary" aria-disabled={work.doing !== ""} onClick={look}>
          Draw
        </button>
      </div>
      <TaskLines {...work} />
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
            <button type="button" aria-disabled={putting.doing !== ""} onClick={() => put(found.drawables[chosen]!)}>
              Put in the sheet
            </button>
          </div>
          <p class="notice">Its top left corner comes to the cell that is selected.</p>
          <TaskLines {...putting} />
        </>
      )}
    </>
  );
}

const DRAWINGS: Readonly<Record<DrawnInputs["kind"], string>> = {
  bore: "the profile of each bore",
  roundness: "the trace",
  runout: "the readings round a turn, with what being off centre makes of them",
  face: "the heights of the face, from above",
  surface: "the profile and its material ratio curve",
  compression: "the bars of a compression test",
  change: "the changes with what the gauge explains",
};

const namesOf = (kind: string): string =>
  specs
    .filter(({ draws }) => draws?.kind === kind)
    .map(({ name }) => name)
    .join(", ");

function NothingToDraw() {
  return (
    <div class="advice">
      <p>Nothing in this workbook can be drawn yet. Drawn is what these functions read:</p>
      <ul>
        {Object.entries(DRAWINGS).map(([kind, what]) => (
          <li key={kind}>
            {namesOf(kind)}: {what}
          </li>
        ))}
      </ul>
    </div>
  );
}
