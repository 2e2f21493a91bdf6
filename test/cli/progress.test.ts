import { Progress } from "../../src/cli/progress.ts";

/** A screen that remembers what is written to it. */
function screen(isTTY: boolean): { stream: NodeJS.WriteStream; written: () => string } {
  let text = "";
  const keep = (piece: unknown): boolean => {
    if (typeof piece === "string") text += piece;
    return true;
  };
  const stream = { isTTY, columns: 80, write: keep, cursorTo: keep, moveCursor: keep, clearLine: keep, clearScreenDown: keep, on: keep, removeListener: keep };
  return { stream: stream as unknown as NodeJS.WriteStream, written: () => text };
}

const shown = () => new Promise((resolve) => setTimeout(resolve, 300));

test("long work on a terminal shows how far it is, and is taken off before lines are printed", async () => {
  const { stream, written } = screen(true);
  const progress = new Progress(200, 1, stream, -1);
  progress.add(50);
  await shown();
  expect(written()).toMatch(/ 25 %, [\d.,]+ MB a second, .+ left/);
  progress.hide();
  const before = written();
  await shown();
  expect(written()).toBe(before);
});

test("of many files it is told how many are done and how fast that goes", async () => {
  const { stream, written } = screen(true);
  const progress = new Progress(200, 1234, stream, -1);
  progress.ended();
  progress.add(50);
  await shown();
  progress.add(50);
  progress.hide();
  expect(written()).toMatch(/ 25 %, 1 of 1,234 files, [\d.,]+ a second, .+ left/);
});

test("a bar that is called for and at once taken off never comes up", async () => {
  const { stream, written } = screen(true);
  const progress = new Progress(200, 1, stream, -1);
  progress.add(50);
  progress.hide();
  await shown();
  expect(written()).not.toContain("%");
});

test.each([
  ["in a pipe", screen(false), 200, -1],
  ["for work of unknown size", screen(true), 0, -1],
  ["for short work", screen(true), 200, 60_000],
] as const)("nothing is shown %s", async (_, { stream, written }, total, long) => {
  const progress = new Progress(total, 1, stream, long);
  progress.add(50);
  await shown();
  progress.hide();
  expect(written()).toBe("");
});
