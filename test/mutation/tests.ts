import { expect } from "expect";
import fc from "fast-check";
import * as circus from "jest-circus";
import { freshLoader } from "./modules.ts";

/** What became of one test. */
export interface Ran {
  name: string;
  errors: readonly unknown[];
  milliseconds: number;
}

type Block = ReturnType<typeof circus.getState>["rootDescribeBlock"];
type Test = Extract<Block["children"][number], { type: "test" }>;

const { describe, test, it, beforeAll, beforeEach, afterAll, afterEach } = circus;
/** Longer than any test; a run that does not end is ended from outside. */
const PATIENCE = 600_000;

/** Makes the names that our tests use known to them, and random inputs the same in every run. */
export function prepare(): void {
  Object.assign(globalThis, { describe, test, it, beforeAll, beforeEach, afterAll, afterEach, expect });
  // One counterexample is enough, however large; half the inputs keep a run short.
  fc.configureGlobal({ seed: 73, numRuns: 50, endOnFailure: true });
}

const nameOf = (test: { name: string; parent: Block }): string => {
  const names = [test.name];
  for (let block: Block | undefined = test.parent; block?.parent; block = block.parent) names.unshift(block.name);
  return names.join(" ");
};

const testsOf = (block: Block): Test[] => block.children.flatMap((child) => (child.type === "test" ? [child] : testsOf(child)));

export interface RunOptions {
  /** Only the tests of these names; all without. */
  only?: ReadonlySet<string> | undefined;
  /** Leave the others once one has failed. */
  bail: boolean;
  /** Told before and after each test. */
  onTest?: (name: string | undefined) => void;
}

/** Loads one test file, with everything of ours that it imports, anew, and runs its tests in this process. */
export async function runTests(file: string, { only, bail, onTest }: RunOptions): Promise<Ran[]> {
  circus.resetState();
  circus.getState().testTimeout = PATIENCE;
  freshLoader()(file);
  const all = testsOf(circus.getState().rootDescribeBlock);
  const skip = (one: Test) => {
    one.mode = "skip";
  };
  if (only) for (const one of all) if (!only.has(nameOf(one))) skip(one);
  const handler = (event: circus.Event): void => {
    if (event.name === "test_start") onTest?.(nameOf(event.test));
    if (event.name !== "test_done") return;
    onTest?.(undefined);
    if (bail && event.test.errors.length) for (const one of all) if (one.status === null) skip(one);
  };
  circus.addEventHandler(handler);
  const { testResults } = await circus.run();
  circus.removeEventHandler(handler);
  return testResults
    .filter(({ status }) => status === "done")
    .map(({ testPath, errors, duration }) => ({ name: testPath.slice(1).join(" "), errors, milliseconds: duration ?? 0 }));
}
