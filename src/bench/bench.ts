import type { Model } from "@odoo/o-spreadsheet";
import { benchHost, storedTexts } from "../hosts/bench/host.ts";
import type { SheetHost } from "../workbook/port.ts";
import { PANE_KEY } from "../workbook/storage.ts";
import { mustFit, UnreadableFile } from "../xlsx/file-limits.ts";
import type { DefinedName } from "../xlsx/model.ts";
import { ask, askName, elements } from "./elements.ts";
import { chosenFile, chosenPlace, download, hasPickers, writeTo } from "./files.ts";
import { type Grid, mountGrid } from "./grid-view.ts";
import { KeptWork } from "./kept-work.ts";
import { localeOf } from "./language.ts";
import type { Engine, Screen } from "./load-grid.ts";
import { openInGrid } from "./open.ts";
import { saveWorkbook } from "./save.ts";
import type {} from "./shared.ts";
import { uncalculatedNote, Workbook } from "./workbook.ts";

const SAMPLE = "samples/build-sheet.xlsx";

const NEW = "workbook.xlsx";

/** The file that a workbook is saved in; one that was opened here is written over only after asking. */
interface Place {
  handle: FileSystemFileHandle;
  isOriginal: boolean;
}

/** One workbook at a time, its grid and its pane. Nothing here loses work without asking. */
export class Bench {
  #workbook: Workbook | undefined;
  #grid: Grid | undefined;
  #place: Place | undefined;
  readonly #kept = new KeptWork(
    () => this.#unsaved(),
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
    return this.#workbook?.unsaved === true || this.#grid?.isTyping === true;
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

  async newWorkbook(): Promise<void> {
    this.tell("");
    if (await this.#mayLeave("a new workbook")) await this.#show(this.#model(), NEW);
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
  async #open(name: string, read: () => Promise<Uint8Array>, place?: Place): Promise<void> {
    this.tell("");
    try {
      const { data, names, storedTexts: texts, note } = openInGrid(this.engine, await read(), name);
      const model = this.#model(data);
      for (const [key, text] of texts) storedTexts(model).set(key, text);
      if (!(await this.#mayLeave(name))) return;
      await this.#show(model, name, names, place);
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

  async #show(model: Model, name: string, otherNames: readonly DefinedName[] = [], place?: Place): Promise<void> {
    const { grid, pane, save, saveAs } = elements;
    const workbook = new Workbook(this.engine, model, name, otherNames, () => this.#showState());
    const host = telling(benchHost(model, name), workbook);
    this.#grid?.remove();
    this.#workbook = workbook;
    this.#place = place;
    window.crosshatchBench = { host, model, openFile: (file) => this.openFile(file), save: () => this.save() };
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

  /** Into its own file, where there is one and the person agrees; otherwise wherever they choose. Says whether it is there. */
  async save(): Promise<boolean> {
    const place = this.#place;
    if (!this.#workbook || !place) return this.saveAs();
    if (place.isOriginal) {
      const answer = await ask(`${this.#workbook.name} would be written over. Charts and other things that the bench does not show would be lost from it.`, {
        over: "Write over it",
        other: "Save as another file…",
        stay: "Do not save",
      });
      if (answer === "stay") return false;
      if (answer === "other") return this.saveAs();
    }
    return this.#write(async (bytes) => {
      await writeTo(place.handle, bytes);
      place.isOriginal = false;
    });
  }

  async saveAs(): Promise<boolean> {
    this.#grid?.finishTyping();
    if (!this.#workbook) return false;
    const { name } = this.#workbook;
    if (!hasPickers()) return this.#write(async (bytes) => download(bytes, name));
    const handle = await chosenPlace(name);
    if (!handle) return false;
    const isThere = await this.#write((bytes) => writeTo(handle, bytes));
    if (isThere) {
      this.#place = { handle, isOriginal: false };
      this.#rename(handle.name);
    }
    return isThere;
  }

  /** Another name: the workbook is no longer that of its file, which stays as it is. */
  async rename(): Promise<void> {
    const workbook = this.#workbook;
    if (!workbook) return;
    const name = (await askName("What is the workbook to be called?", workbook.name))?.trim();
    if (!name || name === workbook.name) return;
    this.#place = undefined;
    this.#rename(/\.xlsx$/i.test(name) ? name : `${name}.xlsx`);
    workbook.touch();
  }

  #rename(name: string): void {
    if (this.#workbook) this.#workbook.name = name;
    this.#showState();
  }

  /** Writes the workbook as a file and puts it where it belongs. One that does not read back as it is stays unsaved. */
  async #write(put: (bytes: Uint8Array) => Promise<void>): Promise<boolean> {
    this.#grid?.finishTyping();
    const workbook = this.#workbook!;
    const tooLong = longName(workbook.model);
    if (tooLong) {
      this.tell(tooLong);
      return false;
    }
    try {
      const saved = workbook.saving();
      const { bytes, differences } = await saveWorkbook(workbook.model, workbook.otherNames, this.engine.helpers.toXC);
      if (differences.length > 0) return this.#doubt(workbook.name, bytes, differences);
      await put(bytes);
      saved();
      this.tell("");
      this.#showState();
      return true;
    } catch (reason) {
      this.tell(`${workbook.name} could not be saved: ${(reason as Error).message} The workbook is still open here.`);
      return false;
    }
  }

  /** It is handed over as a download alone, never into a file that is there. The workbook stays unsaved: whoever leaves the page is asked. */
  #doubt(name: string, bytes: Uint8Array, places: readonly string[]): false {
    download(bytes, name);
    this.tell(
      `${name} was written and read again, and does not hold the same in ${places.slice(0, 5).join(", ")}: look at these cells in the file before you rely on it.`,
    );
    return false;
  }

  async #unsaved(): Promise<{ name: string; bytes: Uint8Array } | undefined> {
    const workbook = this.#workbook;
    if (!workbook?.unsaved || longName(workbook.model)) return undefined;
    const { bytes } = await saveWorkbook(workbook.model, workbook.otherNames, this.engine.helpers.toXC);
    return { name: workbook.name, bytes };
  }

  #notKept({ message }: Error): void {
    if (!this.#toldNotKept) this.tell(`This browser cannot keep your work until it is saved (${message}): save it now and then.`);
    this.#toldNotKept = true;
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
  return { ...host, storeText };
}

const LONGEST_SHEET_NAME = 31;

/** Workbook files hold sheet names of at most 31 characters (ECMA-376 part 1, 18.2.19, as Excel applies it); the grid holds longer ones. */
function longName({ getters }: Model): string {
  const long = getters
    .getSheetIds()
    .map((id) => getters.getSheetName(id))
    .find((name) => name.length > LONGEST_SHEET_NAME);
  return long
    ? `The sheet "${long}" has a name of more than ${LONGEST_SHEET_NAME} characters, which a workbook file cannot hold: give it a shorter one, then save.`
    : "";
}

const isDark = () => matchMedia("(prefers-color-scheme: dark)").matches;
