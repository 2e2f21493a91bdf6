import "./bench.css";
import { Bench } from "./bench.ts";
import { elements } from "./elements.ts";
import { loadEngine } from "./load-grid.ts";
import { mendTemplates } from "./templates.ts";

const TEMPLATES = "vendor/@odoo/o-spreadsheet/dist/o_spreadsheet.xml";

async function start(): Promise<void> {
  const engine = loadEngine();
  const templates = mendTemplates(await (await fetch(TEMPLATES)).text());
  const bench = new Bench(engine, globalThis.owl, templates);
  const { file, save, sample, paneToggle, messageClose } = elements;

  file.addEventListener("change", () => {
    const [chosen] = file.files ?? [];
    // Cleared, so that choosing the same file again is a change too.
    file.value = "";
    if (chosen) void bench.openFile(chosen);
  });
  save.addEventListener("click", () => void bench.save());
  sample.addEventListener("click", () => void bench.openSample());
  paneToggle.addEventListener("click", () => bench.togglePane());
  messageClose.addEventListener("click", () => bench.tell(""));
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => bench.wearScheme());
  addEventListener("beforeunload", (event) => {
    if (bench.wouldLose) event.preventDefault();
  });
  addEventListener("keydown", (event) => shortcut(bench, event), { capture: true });
  takeDrops(bench);
  reportFailures(bench);
  await bench.openSample();
  performance.mark("bench-ready");
}

function shortcut(bench: Bench, event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || event.shiftKey) return;
  const key = event.key.toLowerCase();
  if (key !== "s" && key !== "o") return;
  event.preventDefault();
  event.stopPropagation();
  if (key === "s") void bench.save();
  else elements.file.click();
}

/** A file let go over the page is opened; without this the browser would leave the page for it. */
function takeDrops(bench: Bench): void {
  const { drop } = elements;
  const carriesFiles = ({ dataTransfer }: DragEvent) => dataTransfer?.types.includes("Files") ?? false;
  addEventListener("dragover", (event) => {
    if (!carriesFiles(event)) return;
    event.preventDefault();
    drop.hidden = false;
  });
  addEventListener("dragleave", (event) => {
    if (event.relatedTarget === null) drop.hidden = true;
  });
  addEventListener("drop", (event) => {
    if (!carriesFiles(event)) return;
    event.preventDefault();
    drop.hidden = true;
    const [file] = event.dataTransfer?.files ?? [];
    if (file) void bench.openFile(file);
  });
}

/** A failure of ours is said, so that nobody works on in a page that no longer does. */
function reportFailures(bench: Bench): void {
  const report = (reason: unknown) =>
    bench.tell(`Something in Crosshatch did not work: ${reason instanceof Error ? reason.message : reason}. Save your work and load the page again.`);
  addEventListener("error", (event) => report(event.error ?? event.message));
  addEventListener("unhandledrejection", (event) => report(event.reason));
}

await start();
