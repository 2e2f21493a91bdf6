import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import type { Cell } from "../../src/core/cell.ts";
import type { Office } from "./office.ts";
import { officeWithExtension } from "./stand.ts";

const ROWS = 3000;

let office: Office;
beforeAll(async () => {
  office = await officeWithExtension();
}, 120_000);
afterAll(() => office.close());

const results = async (key: string): Promise<Cell[]> =>
  (await office.ask<Cell[][]>("cells", { key, sheet: "Sheet1", box: [2, 0, 2, ROWS - 1] })).map(([cell]) => cell);
const RIGHT = Array.from({ length: ROWS }, (_, i) => (i % 100) / 100);

beforeAll(async () => {
  await office.ask("open", { key: "a" });
  const lines = RIGHT.map((clearance, i) => [`${(7300 + Math.round(clearance * 100)) / 100}`, "73", `=HATCH.CLEARANCE(A${i + 1};B${i + 1})`]);
  await office.ask("type", { key: "a", sheet: "Sheet1", column: 0, row: 0, formulas: lines });
}, 60_000);

test("one Node process serves all documents", async () => {
  expect(await results("a")).toEqual(RIGHT);
  await office.ask("open", { key: "b" });
  await office.ask("type", { key: "b", sheet: "Sheet1", column: 0, row: 0, formulas: [["=HATCH.CLEARANCE(73.04;73)"]] });
  expect(await office.ask("cells", { key: "b", sheet: "Sheet1" })).toEqual([[0.04]]);
  expect(office.children()).toHaveLength(1);
});

test("killed between two calls it is started anew", async () => {
  const [old] = office.children();
  process.kill(old!, "SIGKILL");
  await office.ask("calculate", { key: "a" });
  expect(await results("a")).toEqual(RIGHT);
  expect(office.children()).not.toContain(old);
});

test("killed in the middle of a recalculation it loses no cell", async () => {
  const [old] = office.children();
  const calculated = office.ask("calculate", { key: "a" });
  await setTimeout(60);
  process.kill(old!, "SIGKILL");
  await calculated;
  expect(await results("a")).toEqual(RIGHT);
  expect(office.children()).not.toContain(old);
});

test("a call that takes too long is stopped and says so, and the next one is answered", async () => {
  const [old] = office.children();
  process.kill(old!, "SIGSTOP");
  await office.ask("calculate", { key: "b" });
  expect(await office.ask("cells", { key: "b", sheet: "Sheet1" })).toEqual([["check: took longer than 20 s and was stopped: give it fewer cells"]]);
  await office.ask("calculate", { key: "b" });
  expect(await office.ask("cells", { key: "b", sheet: "Sheet1" })).toEqual([[0.04]]);
}, 60_000);

describe("where Node is", () => {
  const say = (path: string): string =>
    `check: Crosshatch needs Node.js 20 or newer (${path}): install it from nodejs.org, or give its place under Tools > Options > Crosshatch`;

  const calculatedWith = async (path: string): Promise<Cell[]> => {
    await office.ask("set_node", { path });
    for (const child of office.children()) process.kill(child, "SIGKILL");
    // A start that failed is not tried again at once.
    await setTimeout(5500);
    await office.ask("calculate", { key: "a" });
    return results("a");
  };

  test("a place that holds none is said in every cell, and so is a version that is too old", async () => {
    expect(new Set(await calculatedWith("/nowhere/node"))).toEqual(new Set([say("/nowhere/node could not be started: No such file or directory")]));
    const old = office.put(
      "node",
      Buffer.from("#!/bin/sh\nprintf '\\034\\0\\0\\0\\1\\0\\0\\0\\2\\0\\0\\0\\2\\7\\0\\0\\0%s\\2\\3\\0\\0\\0%s' 16.20.0 0.1\ncat >/dev/null\n"),
    );
    expect(new Set(await calculatedWith(old))).toEqual(new Set([say(`${old} is version 16.20.0`)]));
  }, 60_000);

  test("a place that is set, its folder too, is taken, and without one it is found", async () => {
    expect(await calculatedWith(process.execPath)).toEqual(RIGHT);
    expect(await calculatedWith(join(process.execPath, ".."))).toEqual(RIGHT);
    expect(await calculatedWith("")).toEqual(RIGHT);
  }, 60_000);
});

test("it ends with the office program", async () => {
  expect(office.children()).toHaveLength(1);
  await office.stop();
  await setTimeout(500);
  expect(office.children()).toEqual([]);
}, 60_000);
