import { useEffect, useRef, useState } from "preact/hooks";
import { counted, rowsText } from "../../core/number-text.ts";
import { asSentence } from "../../core/words.ts";
import type { Fingerprint } from "../../report/content.ts";
import { renderReport } from "../../report/report.ts";
import { STYLE } from "../../report/style.ts";
import type { WorkbookSnapshot } from "../../workbook/port.ts";
import type { ViewProps } from "../parts/loading.ts";
import { FileLink } from "../parts/picture.tsx";
import { useStored } from "../parts/stored-choices.ts";
import { today } from "../parts/text.ts";
import { TaskLines, useTask } from "../parts/use-task.tsx";
import { workbookContent } from "./workbook-content.ts";

/**
 * What the workbook was, by its sheets, values and formulas: a host hands over no file. Nothing
 * where the page is served in a way in which browsers lend no hash.
 */
export async function fingerprintOf(workbook: Pick<WorkbookSnapshot, "sheets">): Promise<Fingerprint | undefined> {
  if (!globalThis.crypto?.subtle) return undefined;
  const hash = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(contentsText(workbook)));
  return { of: "contents", sha256: [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, "0")).join("") };
}

/** Cells with their place. Blank ones are left out: how far a host says that a sheet reaches can change by a fill alone. */
function contentsText({ sheets }: Pick<WorkbookSnapshot, "sheets">): string {
  return JSON.stringify(
    sheets.map(({ name, row, column, values, formulas }) => [
      name,
      values.flatMap((line, r) =>
        line.flatMap((value, c) => {
          const formula = formulas[r]?.[c] ?? null;
          const held = value === undefined || value === "" ? null : value;
          return held === null && formula === null ? [] : [[row + r, column + c, held, formula]];
        }),
      ),
    ]),
  );
}

interface Made {
  name: string;
  page: string;
  says: string;
  notes: readonly string[];
  changes: number;
}

/** The looks of a page where it is shown inside another. */
const SHOWN = STYLE.replaceAll(":root", ":host")
  .replace(/^html /m, ":host ")
  .replace(/^body /m, ".page ");

/**
 * The page as it will be saved. It stands in a tree of its own, so that neither its looks nor those of the pane reach the
 * other; the pane's policy takes style sheets that are made here, and none that stand in a page: of it comes what is behind them.
 */
function Preview({ page }: { page: string }) {
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const host = frame.current!;
    const tree = host.shadowRoot ?? host.attachShadow({ mode: "open" });
    const looks = new CSSStyleSheet();
    looks.replaceSync(SHOWN);
    tree.adoptedStyleSheets = [looks];
    const made = document.createElement("div");
    made.className = "page";
    // The page has escaped whatever was typed, and the pane's policy runs no script in it. Landmarks are those of the pane.
    const body = page.slice(page.indexOf("<body>"));
    for (const part of new DOMParser().parseFromString(body, "text/html").body.children) {
      const block = document.createElement("div");
      block.className = part.className;
      block.append(...part.cloneNode(true).childNodes);
      made.append(block);
    }
    tree.replaceChildren(made);
  }, [page]);
  return (
    <section aria-label="Preview">
      <div class="preview" ref={frame} />
    </section>
  );
}

/** One printable page of the workbook as it stands, that a customer can keep. */
export function ReportView({ host, changes }: ViewProps) {
  const [made, setMade] = useState<Made | null>(null);
  const [withDetails, setWithDetails] = useStored("report details", false, (given) => (typeof given === "boolean" ? given : undefined));
  const work = useTask();
  const make = () =>
    work.act("Making the report …", async () => {
      setMade(null);
      const { snapshot, input } = await workbookContent(host);
      const page = renderReport([{ ...input, fingerprint: await fingerprintOf(snapshot) }], { date: today(), withDetails });
      const { findings } = input.result;
      const says = `${findings.length === 0 ? "No findings" : counted(findings.length, "finding")}. ${rowsText(input.result)}.`;
      setMade({ name: `Report ${input.name.replace(/\.[^.]*$/, "")} ${today()}.html`, page, says, notes: input.notes, changes });
      return "The report is made; save it below.";
    });
  return (
    <>
      <h2>Report</h2>
      <p class="notice">
        The build sheet that the customer keeps, on two or three pages: engine, every reading with its limits and verdict, remarks, drawings, cautions,
        signatures. Your name, address and mark come from a sheet named Shop, which Set up makes.
      </p>
      <label class="tick">
        <input type="checkbox" checked={withDetails} onChange={(event) => setWithDetails(event.currentTarget.checked)} />
        <span>Add the findings, how verdicts are reached, gauges and limits in full</span>
      </label>
      <div class="tools">
        <button type="button" class="primary" aria-disabled={work.doing !== ""} onClick={make}>
          Make the report
        </button>
      </div>
      <TaskLines {...work} />
      {made && (
        <section aria-label="The report">
          {made.changes !== changes && <p class="stale">The sheet changed since this report was made.</p>}
          <p>{made.says}</p>
          {made.notes.map((note) => (
            <p key={note} class="notice">
              {asSentence(note)}
            </p>
          ))}
          <FileLink name={made.name} type="text/html" text={made.page} />
          <p class="hint">Open the saved file in a browser; from there it prints on A4 and on letter paper, or to a PDF.</p>
          <Preview page={made.page} />
        </section>
      )}
    </>
  );
}
