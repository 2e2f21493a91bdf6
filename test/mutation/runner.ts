/**
 * How Stryker runs our tests: jest's own test functions in one process, each test file loaded anew for
 * each mutant. A mutant is run against the files that reach it, likeliest first, until a test fails. So
 * one in code that runs only when a file is loaded, as the declarations of functions are, is as quick as
 * any other; through jest's command line each would take seconds.
 */
import { resolve } from "node:path";
import { declareClassPlugin, PluginKind, tokens } from "@stryker-mutator/api/plugin";
import {
  type CompleteDryRunResult,
  type DryRunResult,
  DryRunStatus,
  type MutantRunOptions,
  type MutantRunResult,
  MutantRunStatus,
  type TestRunner,
  TestStatus,
} from "@stryker-mutator/api/test-runner";
import { globSync } from "tinyglobby";
import { loadPackages } from "./modules.ts";
import { byFile, idOf, likelyFirst } from "./test-files.ts";
import { prepare, runTests } from "./tests.ts";

/** Asked more often than this within one test file, the sources are in a loop without an end. */
const ENDLESS = 120_000_000;
/** So many times as often as any test file does when nothing is changed; one that asks more often is not run at all. */
const MARGIN = 3;

/** What the mutated sources and we know of one another: before each of their places they ask which mutant is on. */
class Switchboard {
  currentTestId: string | undefined;
  mutantCoverage: Required<CompleteDryRunResult>["mutantCoverage"] | undefined;
  #active: string | undefined;
  #asked = 0;

  get activeMutant(): string | undefined {
    if (++this.#asked > ENDLESS) throw new Error("this does not come to an end");
    return this.#active;
  }

  get isEndless(): boolean {
    return this.#asked > ENDLESS;
  }

  get asked(): number {
    return this.#asked;
  }

  /** A test file begins, with this mutant or with none. */
  start(mutant?: string): void {
    this.#active = mutant;
    this.#asked = 0;
  }
}

const TEST_FILES = "test/{core,functions,math,reference}/**/*.test.ts";

export class InProcessRunner implements TestRunner {
  readonly #board = new Switchboard();
  /** Milliseconds of work that all tests of a file took last. */
  readonly #costs = new Map<string, number>();

  async init(): Promise<void> {
    Object.assign(globalThis, { __stryker__: this.#board });
    prepare();
    await loadPackages();
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  async dryRun(): Promise<DryRunResult> {
    const whole: Required<CompleteDryRunResult> = { status: DryRunStatus.Complete, tests: [], mutantCoverage: { static: {}, perTest: {} } };
    for (const file of globSync(TEST_FILES, { ignore: "test/functions/added/**" }).sort()) {
      const coverage = { static: {}, perTest: {} as Record<string, Record<string, number>> };
      this.#board.mutantCoverage = coverage;
      this.#board.start();
      const onTest = (name: string | undefined) => {
        this.#board.currentTestId = name && idOf(file, name);
      };
      const ran = await runTests(resolve(file), { bail: false, onTest });
      if (this.#board.asked * MARGIN > ENDLESS) continue;
      for (const { name, errors, milliseconds } of ran) {
        const id = idOf(file, name);
        const base = { id, name: id, timeSpentMs: milliseconds, fileName: file };
        whole.tests.push(errors.length ? { ...base, status: TestStatus.Failed, failureMessage: String(errors[0]) } : { ...base, status: TestStatus.Success });
        // What runs when the file is loaded counts for each of its tests.
        whole.mutantCoverage.perTest[id] = { ...coverage.static, ...coverage.perTest[id] };
      }
    }
    return whole;
  }

  async mutantRun({ activeMutant, testFilter = [], sandboxFileName }: MutantRunOptions): Promise<MutantRunResult> {
    const tests = byFile(testFilter);
    this.#board.mutantCoverage = undefined;
    let nrOfTests = 0;
    for (const file of likelyFirst(tests.keys(), sandboxFileName, this.#costs)) {
      const names = tests.get(file)!;
      const before = process.cpuUsage();
      this.#board.start(activeMutant.id);
      try {
        const ran = await runTests(resolve(file), { only: new Set(names), bail: true });
        nrOfTests += ran.length;
        const { user, system } = process.cpuUsage(before);
        if (ran.length === names.length) this.#costs.set(file, (user + system) / 1000);
        const failed = ran.find(({ errors }) => errors.length > 0);
        if (this.#board.isEndless) return { status: MutantRunStatus.Timeout };
        if (failed) return { status: MutantRunStatus.Killed, killedBy: [idOf(file, failed.name)], failureMessage: String(failed.errors[0]), nrOfTests };
      } catch (error) {
        // A file that cannot even be loaded with the mutant has noticed it.
        return { status: MutantRunStatus.Killed, killedBy: [idOf(file, names[0]!)], failureMessage: String(error), nrOfTests };
      }
    }
    return { status: MutantRunStatus.Survived, nrOfTests };
  }
}
Object.assign(InProcessRunner, { inject: tokens() });

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, "in-process", InProcessRunner as never)];
