/**
 * Threads that check workbooks, kept by a worker of jest from one command to the next. A command that is a process of its own starts them
 * anew; of those that tests call in their own process each would load the engine once more, which takes longer than what is asked of it.
 */
const { Piscina } = require("piscina");

/** As many threads as a command may leave behind: jest does not count what they hold. */
const MOST_THREADS = 2;
/** Those that commands have left behind, by what was asked of them. */
const resting = new Map();

/** The part of piscina that the command line uses. */
exports.Piscina = class {
  #key;
  #threads;
  #complain;
  /** Tasks that have not ended well. */
  #open = 0;

  constructor(options) {
    // A thread sees the environment as it was when it started.
    this.#key = JSON.stringify([options, process.env]);
    this.#threads = resting.get(this.#key) ?? new Piscina(options);
    resting.delete(this.#key);
  }

  on(event, listener) {
    this.#complain = listener;
    this.#threads.on(event, listener);
  }

  async run(task) {
    this.#open++;
    const answer = await this.#threads.run(task);
    this.#open--;
    return answer;
  }

  async destroy() {
    this.#threads.off("error", this.#complain);
    const isFit = this.#open === 0 && this.#threads.options.maxThreads <= MOST_THREADS && !resting.has(this.#key);
    if (isFit) resting.set(this.#key, this.#threads);
    else await this.#threads.destroy();
  }
};
