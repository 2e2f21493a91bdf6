import type { Model } from "@odoo/o-spreadsheet";
import { benchHost, storedTexts } from "../hosts/bench/host.ts";
import type { SheetHost } from "../workbook/port.ts";
import { PANE_KEY } from "../workbook/storage.ts";
import { mustFit, UnreadableFile } from "../xlsx/file-limits.ts";
import type { DefinedName } from "../xlsx/model.ts";
import { ask, elements } from "./elements.ts";
import { type Grid, mountGrid } from "./grid-view.ts";
import type { Engine, Screen } from "./load-grid.ts";
import { openInGrid } from "./open.ts";
import { saveWorkbook } from "./save.ts";
import type {} from "./shared.ts";
import { uncalculatedNote, Workbook } from "./workbook.ts";

const SAMPLE = "samples/build-sheet.xlsx";
const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** One workbook at a time, its grid and its pane. Nothing here loses work without asking. */
export class Bench {
  #workbook: Workbook | undefined;
  #grid: Grid | undefined;

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

  async openFile(file: File): Promise<void> {
    await this.#open(file.name, async () => {
      mustFit(file.size);
      return new Uint8Array(await file.arrayBuffer());
    });
  }

  async openSample(): Promise<void> {
    await this.#open("build-sheet.xlsx", async () => {
      const answer = await fetch(SAMPLE);
      if (!answer.ok) throw new UnreadableFile("is not there: npm run samples makes it", "The sample build sheet");
      return new Uint8Array(await answer.arrayBuffer());
    });
    if (!this.#workbook) await this.#show(new this.engine.Model(), "workbook.xlsx");
  }

  /** The file is read and calculated before anything of the open workbook is given up. */
  async #open(name: string, read: () => Promise<Uint8Array>): Promise<void> {
    this.tell("");
    try {
      const { data, names, storedTexts: texts, note } = openInGrid(this.engine, await read(), name);
      const model = new this.engine.Model(data);
      for (const [key, text] of texts) storedTexts(model).set(key, text);
      if (!(await this.#mayLeave(name))) return;
      await this.#show(model, name, names);
      this.tell([note, uncalculatedNote(model)].filter(Boolean).join(" "));
    } catch (reason) {
      this.tell(whyUnopened(reason as Error, name));
    }
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

  async #show(model: Model, name: string, otherNames: readonly DefinedName[] = []): Promise<void> {
    const { grid, pane, save } = elements;
    const workbook = new Workbook(this.engine, model, name, otherNames, () => this.#showState());
    const host = telling(benchHost(model, name), workbook);
    this.#grid?.remove();
    this.#workbook = workbook;
    window.crosshatchBench = { host, model, openFile: (file) => this.openFile(file), save: () => this.save() };
    this.#grid = await mountGrid(grid, model, { ...this, dark: isDark(), tell: (sentence) => this.tell(sentence) });
    // The pane starts afresh: what it showed was of the other workbook.
    pane.src = "pane.html";
    save.disabled = false;
    this.#showState();
  }

  #showState(): void {
    const { name, unsaved } = this.#workbook!;
    elements.book.textContent = name;
    elements.book.title = name;
    elements.unsaved.classList.toggle("bench-unseen", !unsaved);
    document.title = `${unsaved ? "* " : ""}${name} – Crosshatch bench`;
  }

  /** Hands the workbook to the browser as a file; says whether that went well. */
  async save(): Promise<boolean> {
    this.#grid?.finishTyping();
    const workbook = this.#workbook;
    if (!workbook) return false;
    const tooLong = longName(workbook.model);
    if (tooLong) {
      this.tell(tooLong);
      return false;
    }
    try {
      const saved = workbook.saving();
      const { bytes, differences } = await saveWorkbook(workbook.model, workbook.otherNames, this.engine.helpers.toXC);
      download(bytes, workbook.name);
      if (differences.length > 0) return this.#doubt(workbook.name, differences);
      saved();
      this.tell("");
      this.#showState();
      return true;
    } catch (reason) {
      this.tell(`${workbook.name} could not be saved, through a fault in Crosshatch: ${(reason as Error).message}. The workbook is still open here.`);
      return false;
    }
  }

  /** The workbook stays unsaved: whoever leaves the page is asked. */
  #doubt(name: string, places: readonly string[]): false {
    this.tell(
      `${name} was written and read again, and does not hold the same in ${places.slice(0, 5).join(", ")}: look at these cells in the file before you rely on it.`,
    );
    return false;
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

function download(bytes: Uint8Array, name: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: XLSX }));
  link.download = name;
  link.click();
  // The browser has taken the bytes over by then.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
