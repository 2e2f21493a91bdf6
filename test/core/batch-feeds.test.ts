import { BATCH_FROM, type Feed } from "../../src/core/batch.ts";
import type { Argument } from "../../src/core/cell.ts";
import { define, type Spec, value } from "../../src/core/define.ts";
import { count, length, number, ratio, text } from "../../src/core/param.ts";
import { ask } from "../functions/ask.ts";
import { about } from "./about.ts";

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

  test("is given bounds inside which every number is one, drawn in from open bounds by what decimals forgive", () => {
    const bounded = define({
      ...about,
      name: "BOUNDED",
      params: { a: length("a"), b: ratio("b").above(1).below(50), c: ratio("c").atLeast(0).atMost(1), d: number("d"), e: ratio("e").atLeast(1) },
      returns: value(""),
      compute: ({ a }) => a,
    });
    const given: (readonly Feed[])[] = [];
    const loop: Spec["loop"] = (_compute, feeds, _row, columns) => {
      given.push(feeds);
      return new Array(columns).fill(0);
    };
    const line = [new Array(100).fill(1)];
    ask({ ...bounded, loop }, line, line, line, line, line);
    expect(given[0]!.map(({ least, most }) => [least, most])).toEqual([
      [1e-9, Number.MAX_VALUE],
      [1 + 1e-9, 50 - 1e-9],
      [0, 1],
      [-Number.MAX_VALUE, Number.MAX_VALUE],
      [1 + 1e-9, Number.MAX_VALUE],
    ]);
    expect(given[0]!.every(({ block }) => block === line)).toBe(true);
  });

  test("is given what all elements share as a block of one cell, and is told of what is left out", () => {
    const worded = define({
      ...about,
      name: "WORDED",
      params: { a: number("a"), b: number("b").optional(), c: text("c") },
      returns: value(""),
      compute: ({ a }) => a,
    });
    let given: readonly Feed[] = [];
    const loop: Spec["loop"] = (_compute, feeds, _row, columns) => {
      given = feeds;
      return new Array(columns).fill(0);
    };
    ask({ ...worded, loop }, column(100), undefined, "iron");
    const whole = { down: 0, across: 0, least: -Number.MAX_VALUE, most: Number.MAX_VALUE };
    expect(given.slice(1)).toEqual([
      { ...whole, block: [[undefined]], isLeftOut: true, fixed: undefined },
      { ...whole, block: [[undefined]], isLeftOut: false, fixed: "iron" },
    ]);
    ask({ ...worded, loop }, column(100), 7, "iron");
    expect(given[1]).toEqual({ ...whole, block: [[7]], isLeftOut: false, fixed: 7 });
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
