import type { SheetHost } from "../workbook/port.ts";
import { part } from "./parts/parts.ts";
import { useWork, WorkLines } from "./parts/use-work.tsx";

/** For somebody who has just come: a sample to look round in. */
export function FirstSheet({ host }: { host: SheetHost }) {
  const work = useWork();
  const insert = () => work.act("Putting the sample in …", async () => (await part(import("./setup/insert.ts"))).insertSample(host));
  return (
    <div class="advice">
      <p>No build sheet yet? In an empty workbook, look round in a sample first.</p>
      <div class="tools">
        <button type="button" aria-disabled={work.doing !== ""} onClick={insert}>
          Insert a sample build sheet
        </button>
      </div>
      <WorkLines {...work} />
    </div>
  );
}
