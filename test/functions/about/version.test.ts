import { readFileSync } from "node:fs";
import { version } from "../../../src/functions/about/version.ts";
import { ask } from "../ask.ts";

const declared = JSON.parse(readFileSync(new URL("../../../package.json", import.meta.url), "utf8")).version as string;

describe("cited values", () => {
  test("the version is the one that package.json declares", () => {
    expect(ask(version)).toBe(declared);
  });

  // Semantic versioning 2.0.0, section 2.
  test("it has the form of a semantic version", () => {
    expect(declared).toMatch(/^\d+\.\d+\.\d+(-[0-9A-Za-z.-]+)?$/);
  });
});

describe("faults", () => {
  test("it takes nothing", () => {
    expect(ask(version, 1)).toEqual({ code: "surplus", sentence: "VERSION: takes no inputs, 1 is given" });
  });
});
