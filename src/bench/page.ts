import "./bench.css";
import { Bench } from "./bench.ts";
import { elements } from "./elements.ts";
import { loadEngine } from "./load-grid.ts";
import { takeRegionKeys } from "./regions.ts";

/** Where the grid's templates leave something to be desired, by template and element, and what is put there. */
const MENDED: readonly [template: string, element: string, attributes: Readonly<Record<string, string>>][] = [
  // Fields without a name for those who do not see them.
  ["o-spreadsheet-NumberEditor", "input", { "t-att-aria-label": "props.title" }],
  ["o-spreadsheet-NamedRangeSelector", "TextInput", { placeholder: "'Cell or name'" }],
  ["o-spreadsheet-GridAddRowsFooter", "input", { "aria-label": "How many rows to add" }],
  // A list that scrolls, and so must be reached by keys.
  ["o-spreadsheet-BottomBar", "div.o-sheet-list", { tabindex: "0" }],
  // Pictures say the same in words.
  ["o-spreadsheet-ImageFigure", "img", { "t-att-alt": "env.model.getters.getImage(figureId).description || ''" }],
  // The field of a cell is reached in its turn, not before everything else on the page.
  ["o-spreadsheet-Composer", "div.o-composer", { tabindex: "0", role: "textbox", "aria-label": "Content of the cell" }],
];

/** Asks a server elsewhere for the icon of every site that a cell links to. */
const UNWANTED: readonly [template: string, element: string][] = [["o-spreadsheet-LinkDisplay", "img"]];

/** The grid's templates, mended. Templates of another version of the grid that lack such a place are taken as they are. */
function mendTemplates(xml: string): XMLDocument {
  const templates = new DOMParser().parseFromString(xml, "application/xml");
  const find = (template: string, element: string) => templates.querySelectorAll(`[t-name="${template}"] ${element}`);
  for (const [template, element, attributes] of MENDED) {
    for (const found of find(template, element)) for (const [name, value] of Object.entries(attributes)) found.setAttribute(name, value);
  }
  for (const [template, element] of UNWANTED) for (const found of find(template, element)) found.remove();
  return templates;
}

const TEMPLATES = "vendor/@odoo/o-spreadsheet/dist/o_spreadsheet.xml";

async function start(): Promise<void> {
  const engine = loadEngine();
  const templates = mendTemplates(await (await fetch(TEMPLATES)).text());
  const bench = new Bench(engine, globalThis.owl, templates);
  const { book, fresh, open, file, save, saveAs, sample, startNew, startOpen, startSample, paneToggle, messageClose } = elements;

  file.addEventListener("change", () => {
    const [chosen] = file.files ?? [];
    // Cleared, so that choosing the same file again is a change too.
    file.value = "";
    if (chosen) void bench.openFile(chosen);
  });
  fresh.addEventListener("click", () => void bench.newWorkbook());
  open.addEventListener("click", () => void bench.choose());
  book.addEventListener("click", () => void bench.rename());
  save.addEventListener("click", () => void bench.save());
  saveAs.addEventListener("click", () => void bench.saveAs());
  sample.addEventListener("click", () => void bench.openSample());
  startNew.addEventListener("click", () => void bench.newWorkbook());
  startOpen.addEventListener("click", () => void bench.choose());
  startSample.addEventListener("click", () => bench.leaveStart());
  paneToggle.addEventListener("click", () => bench.togglePane());
  messageClose.addEventListener("click", () => bench.tell(""));
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => bench.wearScheme());
  addEventListener("beforeunload", (event) => {
    if (bench.wouldLose) event.preventDefault();
  });
  addEventListener("keydown", (event) => shortcut(bench, event), { capture: true });
  takeRegionKeys(() => bench.isTyping);
  takeDrops(bench);
  reportFailures(bench);
  const given = new URLSearchParams(location.search).get("file");
  await (given === null ? bench.openStart() : bench.openGiven(given));
  performance.mark("bench-ready");
  await bench.offerKept();
}

function shortcut(bench: Bench, event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || event.shiftKey) return;
  const key = event.key.toLowerCase();
  if (key !== "s" && key !== "o") return;
  event.preventDefault();
  event.stopPropagation();
  if (key === "s") void bench.save();
  else void bench.choose();
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
