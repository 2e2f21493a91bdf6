import { inSlices } from "../../../src/pane/check/sliced-check.ts";

/** Steps that hold the page up for a while each; `taken` counts them. */
function* steps(count: number, milliseconds: number, taken = { count: 0 }): Generator<number, string> {
  for (let i = 1; i <= count; i++) {
    const end = performance.now() + milliseconds;
    while (performance.now() < end);
    taken.count++;
    yield i / count;
  }
  return "checked";
}

const going = (signal = new AbortController().signal) => {
  const shares: number[] = [];
  return { signal, shares, came: (share: number) => void shares.push(share) };
};

test("all steps are taken and what they come to comes back, with how far they are in between", async () => {
  const on = going();
  expect(await inSlices(steps(20, 4), on)).toBe("checked");
  expect(on.shares.length).toBeGreaterThan(2);
  expect(on.shares).toEqual([...on.shares].sort((a, b) => a - b));
  expect(on.shares.every((share) => share > 0 && share <= 1)).toBe(true);
});

test("other work has its turn meanwhile", async () => {
  let turns = 0;
  const timer = setInterval(() => turns++, 1);
  await inSlices(steps(30, 4), going());
  clearInterval(timer);
  expect(turns).toBeGreaterThan(2);
});

test("once stopped no further step is taken", async () => {
  const stop = new AbortController();
  const taken = { count: 0 };
  const work = inSlices(steps(1000, 4, taken), going(stop.signal));
  setTimeout(() => stop.abort(), 10);
  await expect(work).rejects.toThrow("abort");
  const then = taken.count;
  expect(then).toBeLessThan(500);
  await new Promise((resolve) => setTimeout(resolve, 30));
  expect(taken.count).toBe(then);
});

test("a step that fails is told", async () => {
  const failing = (function* (): Generator<number, string> {
    yield 0.5;
    throw new Error("no such thing");
  })();
  await expect(inSlices(failing, going())).rejects.toThrow("no such thing");
});
