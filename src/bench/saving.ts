import type { Model } from "@odoo/o-spreadsheet";
import { ask, askName } from "./elements.ts";
import { chosenPlace, download, hasPickers, writeTo } from "./files.ts";
import type { Engine } from "./load-grid.ts";
import { saveWorkbook } from "./save.ts";
import type { Workbook } from "./workbook.ts";

/** The file that a workbook is saved in; one that was opened here is written over only after asking. */
export interface SavePlace {
  handle: FileSystemFileHandle;
  isOriginal: boolean;
}

/** The page that a workbook is saved from. */
interface SavedFrom {
  /** A sentence in the page; an empty one takes the last away. */
  tell: (sentence: string) => void;
  /** What is being typed goes into its cell. */
  finishTyping: () => void;
  /** The name, or whether all is saved, is another. */
  changed: () => void;
}

/** Puts one workbook into files. */
export class Saving {
  constructor(
    readonly engine: Engine,
    readonly workbook: Workbook,
    public place: SavePlace | undefined,
    readonly page: SavedFrom,
  ) {}

  /** Into its own file, where there is one and the person agrees; otherwise wherever they choose. Says whether it is there. */
  async save(): Promise<boolean> {
    const { place } = this;
    if (!place) return this.saveAs();
    if (place.isOriginal) {
      const answer = await ask(`${this.workbook.name} would be written over. Charts and other things that the bench does not show would be lost from it.`, {
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
    this.page.finishTyping();
    const { name } = this.workbook;
    if (!hasPickers()) return this.#write(async (bytes) => download(bytes, name));
    const handle = await chosenPlace(name);
    if (!handle) return false;
    const isThere = await this.#write((bytes) => writeTo(handle, bytes));
    if (isThere) {
      this.place = { handle, isOriginal: false };
      this.#rename(handle.name);
    }
    return isThere;
  }

  /** Another name: the workbook is no longer that of its file, which stays as it is. */
  async rename(): Promise<void> {
    const { workbook } = this;
    const name = (await askName("What is the workbook to be called?", workbook.name))?.trim();
    if (!name || name === workbook.name) return;
    this.place = undefined;
    this.#rename(/\.xlsx$/i.test(name) ? name : `${name}.xlsx`);
    workbook.touch();
  }

  /** The workbook as it is now, to be kept in the browser; nothing where all of it is saved, or it cannot be a file. */
  async unsaved(): Promise<{ name: string; bytes: Uint8Array } | undefined> {
    const { name, unsaved, model } = this.workbook;
    return unsaved && !longName(model) ? { name, bytes: (await this.#file()).bytes } : undefined;
  }

  #file(): ReturnType<typeof saveWorkbook> {
    return saveWorkbook(this.workbook.model, this.workbook.beside, this.engine.helpers.toXC);
  }

  #rename(name: string): void {
    this.workbook.name = name;
    this.page.changed();
  }

  /** Writes the workbook as a file and puts it where it belongs. One that does not read back as it is stays unsaved. */
  async #write(put: (bytes: Uint8Array) => Promise<void>): Promise<boolean> {
    const { workbook, page } = this;
    page.finishTyping();
    const tooLong = longName(workbook.model);
    if (tooLong) {
      page.tell(tooLong);
      return false;
    }
    try {
      const saved = workbook.saving();
      const { bytes, differences } = await this.#file();
      if (differences.length > 0) return this.#doubt(bytes, differences);
      await put(bytes);
      saved();
      page.tell("");
      page.changed();
      return true;
    } catch (reason) {
      page.tell(`${workbook.name} could not be saved: ${(reason as Error).message} The workbook is still open here.`);
      return false;
    }
  }

  /** It is handed over as a download alone, never into a file that is there. The workbook stays unsaved: whoever leaves the page is asked. */
  #doubt(bytes: Uint8Array, places: readonly string[]): false {
    const { name } = this.workbook;
    download(bytes, name);
    this.page.tell(
      `${name} was written and read again, and does not hold the same in ${places.slice(0, 5).join(", ")}: look at these cells in the file before you rely on it.`,
    );
    return false;
  }
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
