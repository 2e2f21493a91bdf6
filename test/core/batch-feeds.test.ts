import { BATCH_FROM } from "../../src/core/batch.ts";
import type { Argument } from "../../src/core/cell.ts";
import { define, value } from "../../src/core/define.ts";
import { count, number } from "../../src/core/param.ts";
import { ask } from "../functions/ask.ts";

const about = { group: "about", summary: "", definition: "", source: "common practice", examples: [] } as const;

const product = define({
  ...about,
  name: "PRODUCT",
  params: { a: number("a"), b: number("b").default(2) },
  returns: value(""),
  compute: ({ a, b }) => a * b,
});

describe("the quick way through a block", () => {
  const asked: string[] = [];
  const watched = {
    ...product,
    loop: (_compute: unknown, feeds: readonly { down: number; across: number; isLeftOut: boolean; fixed: unknown }[], at: number, columns: number) => {
      asked.push(`${at}: ${feeds.map(({ down, across, isLeftOut, fixed }) => `${down} ${across} ${isLeftOut} ${fixed}`).join(", ")}`);
      return new Array(columns).fill(1);
    },
  };
  const column = (cells: number) => Array.from({ length: cells }, () => [3]);
  const feedsFor = (...args: Argument[]) => {
    asked.length = 0;
    ask(watched, ...args);
    return asked.slice(0, 2);
  };

  test("begins at a block worth it", () => {
    expect(feedsFor(column(BATCH_FROM))).toHaveLength(2);
    expect(feedsFor(column(BATCH_FROM - 1))).toEqual([]);
  });

  test("is told which way each input runs, and what all elements share", () => {
    expect(feedsFor(column(100), 5)).toEqual(["0: 1 0 false undefined, 0 0 false 5", "1: 1 0 false undefined, 0 0 false 5"]);
    expect(feedsFor([new Array(100).fill(1)], [[5]])).toEqual(["0: 0 -1 false undefined, 0 0 false 5"]);
    expect(feedsFor(column(100), [[1, 2]])).toEqual(["0: 1 0 false undefined, 0 -1 false undefined", "1: 1 0 false undefined, 0 -1 false undefined"]);
  });

  test("is left where what all share is blank or bad, or where words are looked up one by one", () => {
    expect(
      feedsFor(
        "",
        Array.from({ length: 100 }, () => [1]),
      ),
    ).toEqual([]);
    expect(feedsFor(column(100), "x")).toEqual([]);
    const counted = define({ ...about, name: "COUNTED", params: { n: count("n") }, returns: value(""), compute: ({ n }) => n });
    expect(ask({ ...counted, loop: () => [0] }, column(100))).toEqual(column(100));
  });
});
