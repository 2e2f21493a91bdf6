import type { Model } from "@odoo/o-spreadsheet";
import { benchHost, storedTexts } from "../hosts/bench/host.ts";
import type { SheetHost } from "../workbook/port.ts";
import { PANE_KEY } from "../workbook/storage.ts";
import { mustFit, UnreadableFile } from "../xlsx/file-limits.ts";
import { ask, elements } from "./elements.ts";
import { chosenFile, hasPickers } from "./files.ts";
import { type Grid, mountGrid } from "./grid-view.ts";
import { KeptLooks } from "./kept-looks.ts";
import { KeptWork } from "./kept-work.ts";
import { localeOf } from "./language.ts";
import type { Engine, Screen } from "./load-grid.ts";
import { openInGrid } from "./open.ts";
import { focusSheet, goOn } from "./regions.ts";
import { type SavePlace, Saving } from "./saving.ts";
import type {} from "./shared.ts";
import { NOTHING_BESIDE, uncalculatedNote, Workbook } from "./workbook.ts";

const SAMPLE = "samples/build-sheet.xlsx";

const NEW = "workbook.xlsx";

/** One workbook at a time, its grid and its pane. Nothing here loses work without asking. */
export class Bench {
  #workbook: Workbook | undefined;
  #grid: Grid | undefined;
  #saving: Saving | undefined;
  readonly #kept = new KeptWork(
    async () => this.#saving?.unsaved(),
    (reason) => this.#notKept(reason),
  );
  #toldNotKept = false;

  constructor(
    readonly engine: Engine,
    readonly screen: Screen,
    readonly templates: XMLDocument,
  ) {}

  /** A sentence in the page; an empty one takes the last away. */
  tell(sentence: string): void {
    elements.message.hidden = sentence === "";
    elements.messageText.textContent = sentence;
  }

  get wouldLose(): boolean {
    return this.#workbook?.unsaved === true || this.isTyping;
  }

  /** Asks which file to open, in the way that this browser has. */
  async choose(): Promise<void> {
    if (!hasPickers()) {
      elements.file.click();
      return;
    }
    const handle = await chosenFile();
    if (handle) await this.openFile(await handle.getFile(), handle);
  }

  /** With a handle the workbook can be saved in its own place. */
  async openFile(file: File, handle?: FileSystemFileHandle): Promise<void> {
    await this.#open(
      file.name,
      async () => {
        mustFit(file.size);
        return new Uint8Array(await file.arrayBuffer());
      },
      handle && { handle, isOriginal: true },
    );
  }

  /** Empty, with the pane where a build sheet is set up. */
  async newWorkbook(): Promise<void> {
    this.tell("");
    if (!(await this.#mayLeave("a new workbook"))) return;
    const model = this.#model();
    storedTexts(model).set(PANE_KEY, JSON.stringify({ view: "setup" }));
    await this.#show(model, NEW);
    focusSheet();
  }

  /** Where no file is named: the sample, and above it what else one may have come for. */
  async openStart(): Promise<void> {
    await this.openSample();
    elements.start.hidden = false;
    elements.startNew.focus();
  }

  /** The sample stays, and the next keys go to its cells. */
  leaveStart(): void {
    elements.start.hidden = true;
    focusSheet();
  }

  /** The file that the bench was started with. */
  async openGiven(name: string): Promise<void> {
    await this.#open(name, async () => {
      const answer = await fetch(`file/${encodeURIComponent(name)}`);
      if (!answer.ok) throw new UnreadableFile("is not what this bench was started with: open it here");
      return new Uint8Array(await answer.arrayBuffer());
    });
    if (!this.#workbook) await this.#show(this.#model(), NEW);
  }

  /** Work of earlier pages that never came into a file is offered, one after the other, until some is taken up. */
  async offerKept(): Promise<void> {
    for (const { id, name, bytes, time } of await this.#kept.left()) {
      const when = new Date(time).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
      const answer = await ask(`${name} was open here until ${when}, with changes that were not saved. They are kept in this browser.`, {
        open: "Open them again",
        drop: "Throw them away",
        later: "Not now",
      });
      if (answer === "drop") await this.#kept.drop(id);
      if (answer !== "open") continue;
      await this.#open(name, () => Promise.resolve(bytes));
      if (this.#workbook?.name !== name) return;
      this.#workbook.touch();
      await this.#kept.now();
      await this.#kept.drop(id);
      return;
    }
  }

  async openSample(): Promise<void> {
    await this.#open("build-sheet.xlsx", async () => {
      const answer = await fetch(SAMPLE);
      if (!answer.ok) throw new UnreadableFile("is not there: npm run samples makes it", "The sample build sheet");
      return new Uint8Array(await answer.arrayBuffer());
    });
    if (!this.#workbook) await this.#show(this.#model(), NEW);
  }

  /** The file is read and calculated before anything of the open workbook is given up. */
  async #open(name: string, read: () => Promise<Uint8Array>, place?: SavePlace): Promise<void> {
    this.tell("");
    try {
      const { data, beside, storedTexts: texts, note } = openInGrid(this.engine, await read(), name);
      const model = this.#model(data);
      for (const [key, text] of texts) storedTexts(model).set(key, text);
      if (!(await this.#mayLeave(name))) return;
      await this.#show(model, name, { ...beside, looks: beside.looks && new KeptLooks(model, beside.looks) }, place);
      this.tell([note, uncalculatedNote(model)].filter(Boolean).join(" "));
    } catch (reason) {
      this.tell(whyUnopened(reason as Error, name));
    }
  }

  /** The grid of a workbook, or of an empty one, in which one types as in the language of the browser. */
  #model(data: object = this.engine.load(undefined) as object): Model {
    return new this.engine.Model({ ...data, settings: { locale: localeOf(navigator.language) } } as never);
  }

  async #mayLeave(next: string): Promise<boolean> {
    this.#grid?.finishTyping();
    if (!this.#workbook?.unsaved) return true;
    const answer = await ask(`${this.#workbook.name} has changes that are not saved. What is to happen before ${next} is opened?`, {
      save: "Save, then open",
      drop: "Open without saving",
      stay: "Keep working here",
    });
    return answer === "drop" || (answer === "save" && (await this.save()));
  }

  async #show(model: Model, name: string, beside = NOTHING_BESIDE, place?: SavePlace): Promise<void> {
    const { grid, pane, save, saveAs } = elements;
    const workbook = new Workbook(this.engine, model, name, beside, () => this.#showState());
    const host = telling(benchHost(model, name), workbook);
    this.#grid?.remove();
    elements.start.hidden = true;
    this.#workbook = workbook;
    this.#saving = new Saving(this.engine, workbook, place, {
      tell: (sentence) => this.tell(sentence),
      finishTyping: () => this.#grid?.finishTyping(),
      changed: () => this.#showState(),
    });
    window.crosshatchBench = { host, model, openFile: (file) => this.openFile(file), save: () => this.save(), goOn };
    this.#grid = await mountGrid(grid, model, { ...this, dark: isDark(), tell: (sentence) => this.tell(sentence) });
    // The pane starts afresh: what it showed was of the other workbook.
    pane.src = "pane.html";
    save.disabled = saveAs.disabled = false;
    this.#showState();
    await this.#kept.now();
  }

  #showState(): void {
    const { name, unsaved } = this.#workbook!;
    elements.book.textContent = name;
    elements.book.title = `${name}: rename`;
    elements.unsaved.classList.toggle("bench-unseen", !unsaved);
    this.#kept.soon();
    document.title = `${unsaved ? "* " : ""}${name} – Crosshatch bench`;
  }

  /** Says whether the workbook is in a file now. */
  save(): Promise<boolean> {
    return this.#saving?.save() ?? Promise.resolve(false);
  }

  async saveAs(): Promise<void> {
    await this.#saving?.saveAs();
  }

  async rename(): Promise<void> {
    await this.#saving?.rename();
  }

  #notKept({ message }: Error): void {
    if (!this.#toldNotKept) this.tell(`This browser cannot keep your work until it is saved (${message}): save it now and then.`);
    this.#toldNotKept = true;
  }

  /** Something is being typed into a cell. */
  get isTyping(): boolean {
    return this.#grid?.isTyping ?? false;
  }

  togglePane(): void {
    const { pane, paneToggle } = elements;
    pane.hidden = !pane.hidden;
    paneToggle.textContent = pane.hidden ? "Show pane" : "Hide pane";
    paneToggle.setAttribute("aria-expanded", String(!pane.hidden));
  }

  wearScheme(): void {
    document.documentElement.dataset.bsTheme = isDark() ? "dark" : "light";
    this.#grid?.setDark(isDark());
  }
}

function whyUnopened(reason: Error, name: string): string {
  if (reason instanceof UnreadableFile) return `${(reason.file ? reason : reason.of(name)).message}.`;
  return `${name} could not be opened, through a fault in Crosshatch: ${reason.message}`;
}

/** A layout that is kept is work which can be lost; what stands in the pane's fields is not worth a question. */
function telling(host: SheetHost, workbook: Workbook): SheetHost {
  const storeText = async (key: string, value: string) => {
    await host.storeText(key, value);
    if (key !== PANE_KEY) workbook.touch();
  };
  return { ...host, storeText, takeKeys: focusSheet };
}

const isDark = () => matchMedia("(prefers-color-scheme: dark)").matches;
