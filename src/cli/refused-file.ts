import { csvField } from "./csv-field.ts";
import { refuseAsInput } from "./inputs.ts";
import { SafeFile } from "./safe-file.ts";

const HEADINGS = ["file", "line or cell", "reason", "as written"];
const PIECE = 1 << 16;

/** A file that lists what was refused: one line each, with the reason and the text that could not be judged. */
export class RefusedFile {
  readonly #file: SafeFile;
  #text = `${HEADINGS.join(",")}\n`;

  /** What is there is replaced, with `force` only, once the list is complete. */
  constructor(path: string, inputs: readonly string[], force = false) {
    refuseAsInput(path, inputs, "what is refused");
    this.#file = new SafeFile(path, force);
    // A reader of ours that goes ends the program at once, wherever it is.
    process.once("exit", this.abandon);
  }

  add(file: string, place: string | number, reason: string, text: string): void {
    this.#text += `${[file, place, reason, text].map(csvField).join(",")}\n`;
    if (this.#text.length > PIECE) this.#write();
  }

  /** Puts the list in its place. */
  close(): void {
    this.#write();
    process.off("exit", this.abandon);
    this.#file.close();
  }

  /** The run came to nothing: what was there before stays. */
  readonly abandon = (): void => {
    process.off("exit", this.abandon);
    this.#file.abandon();
  };

  #write(): void {
    this.#file.write(this.#text);
    this.#text = "";
  }
}
