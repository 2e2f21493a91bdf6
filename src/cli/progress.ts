import type { SingleBar } from "cli-progress";
import { streams } from "./streams.ts";

/** Milliseconds after which work is long enough to show how far it is. */
const LONG = 1000;

/** How far the work is, on a terminal and only while it takes long. */
export class Progress {
  #bar: SingleBar | undefined;
  #done = 0;
  #ended = 0;
  #isShowing = false;
  readonly #started = performance.now();

  constructor(
    readonly total: number,
    readonly files = 1,
    readonly screen = streams().stderr,
    readonly long = LONG,
  ) {}

  add(bytes: number): void {
    this.#done += bytes;
    this.#bar?.update(Math.min(this.#done, this.total), this.#words());
    if (!this.#isShowing && this.screen.isTTY && this.total > 0 && performance.now() - this.#started > this.long) void this.#show();
  }

  /** One more file has been dealt with. */
  ended(): void {
    this.#ended++;
  }

  /** How fast it goes: by files where there are many, by bytes of one. */
  #words(): { rate: string } {
    const seconds = (performance.now() - this.#started) / 1000;
    const ofFiles = `${this.#ended.toLocaleString("en")} of ${this.files.toLocaleString("en")} files, ${rounded(this.#ended / seconds)} a second`;
    return { rate: this.files > 1 ? ofFiles : `${rounded(this.#done / 1e6 / seconds)} MB a second` };
  }

  /** Takes the bar off the terminal, so that lines can be printed; it comes back with the next work done. */
  hide(): void {
    this.#bar?.stop();
    this.#bar = undefined;
    this.#isShowing = false;
  }

  async #show(): Promise<void> {
    this.#isShowing = true;
    const { SingleBar } = await import("cli-progress");
    const bar = new SingleBar({ format: "{bar} {percentage} %, {rate}, {eta_formatted} left", stream: this.screen, clearOnComplete: true, hideCursor: true });
    if (!this.#isShowing) return;
    bar.start(this.total, this.#done, this.#words());
    this.#bar = bar;
  }
}

const rounded = (rate: number): string => rate.toLocaleString("en", { maximumSignificantDigits: 2 });
