import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { helpText, type SyntaxPlace } from "./help-text.ts";
import { publish, score, summarise } from "./publish.ts";
import { byFile, idOf, likelyFirst } from "./test-files.ts";

/** A place in the tree from its outermost node in; each step says where the next one stands. */
function placed(...nodes: (Partial<SyntaxPlace> & { node: SyntaxPlace["node"] })[]): SyntaxPlace {
  return nodes.reduce<SyntaxPlace | null>((parentPath, one) => ({ ...one, parentPath }), null)!;
}

const literal = { type: "StringLiteral", value: "some words" };
const call = (name: string) => ({ type: "CallExpression", callee: { name } });
const argument = (name: string, key: number, node = literal) => placed({ node: call(name) }, { node, key, listKey: "arguments" });
const field = (name: string, called = "define", node: SyntaxPlace["node"] = literal) =>
  placed(
    { node: call(called) },
    { node: { type: "ObjectExpression" }, key: 0, listKey: "arguments" },
    { node: { type: "ObjectProperty", key: { name } }, key: 0 },
    { node, key: "value" },
  );

describe("what is left alone when the sources are changed", () => {
  test("words that explain a function: summary, definition, source, notes", () => {
    for (const name of ["summary", "definition", "source"]) expect(helpText(field(name))).toBe("words that explain a function");
    expect(helpText(field("notes", "define", { type: "ArrayExpression" }))).toBe("words that explain a function");
  });

  test("words that explain an input or a result, where they stand in its declaration", () => {
    for (const name of ["length", "choice", "value"]) expect(helpText(argument(name, 0))).toBe("words that explain an input or a result");
    expect(helpText(argument("list", 1))).toBe("words that explain an input or a result");
  });

  test("nothing else: names, groups, kinds of input, choices, examples, faults", () => {
    expect(helpText(field("name"))).toBeUndefined();
    expect(helpText(field("group"))).toBeUndefined();
    expect(helpText(field("examples", "define", { type: "ArrayExpression" }))).toBeUndefined();
    expect(helpText(field("summary", "other"))).toBeUndefined();
    expect(helpText(argument("list", 0))).toBeUndefined();
    expect(helpText(argument("choice", 1, { type: "ArrayExpression" } as never))).toBeUndefined();
    expect(helpText(argument("refuse", 0))).toBeUndefined();
    expect(helpText(argument("default", 0))).toBeUndefined();
  });
});

describe("which tests are run first", () => {
  const files = [
    "test/core/broadcast.test.ts",
    "test/functions/every-function.test.ts",
    "test/functions/rings/ring-wear.test.ts",
    "test/functions/cylinder/bore-wear.test.ts",
    "test/functions/cylinder/taper.test.ts",
  ];

  test("those of the changed file, then of its folder and area, then the quick ones", () => {
    const costs = new Map([
      ["test/core/broadcast.test.ts", 300],
      ["test/functions/rings/ring-wear.test.ts", 20],
      ["test/functions/cylinder/bore-wear.test.ts", 50],
    ]);
    expect(likelyFirst(files, "/tmp/sandbox/src/functions/cylinder/taper.ts", costs)).toEqual([
      "test/functions/cylinder/taper.test.ts",
      "test/functions/every-function.test.ts",
      "test/functions/cylinder/bore-wear.test.ts",
      "test/functions/rings/ring-wear.test.ts",
      "test/core/broadcast.test.ts",
    ]);
  });

  test("dear ones are run for changes of their own source, or of one in their folder that has no test of its own", () => {
    const costs = new Map([
      ["test/functions/cylinder/taper.test.ts", 900],
      ["test/functions/every-function.test.ts", 900],
    ]);
    expect(likelyFirst(files, "/src/functions/cylinder/taper.ts", costs)).toHaveLength(files.length);
    expect(likelyFirst(files, "/src/functions/cylinder/oversize.ts", costs)).toHaveLength(files.length);
    // What tries every function is run for each of them.
    expect(likelyFirst(files, "/src/functions/cylinder/bore-wear.ts", costs)).toHaveLength(files.length - 1);
    expect(likelyFirst(files, "/src/core/decimal.ts", costs)).toHaveLength(files.length - 2);
  });

  test("a test's id leads back to its file and its name", () => {
    const ids = [idOf("test/a.test.ts", "one"), idOf("test/b.test.ts", "two › three"), idOf("test/a.test.ts", "four")];
    expect([...byFile(ids)]).toEqual([
      ["test/a.test.ts", ["one", "four"]],
      ["test/b.test.ts", ["two › three"]],
    ]);
  });
});

describe("what is published", () => {
  const source = "const a = 1 +\n  2;\n";
  const at = (startLine: number, startColumn: number, endLine: number, endColumn: number) => ({
    start: { line: startLine, column: startColumn },
    end: { line: endLine, column: endColumn },
  });
  const reports = new Map([
    [
      "core",
      {
        files: {
          "src/core/a.ts": {
            source,
            mutants: [
              { status: "Killed", location: at(1, 11, 1, 12), replacement: "0" },
              { status: "Timeout", location: at(1, 11, 1, 12), replacement: "9" },
              { status: "Survived", location: at(1, 11, 2, 4), replacement: "1 - 2" },
              { status: "NoCoverage", location: at(2, 3, 2, 4), replacement: "a | b" },
              { status: "Ignored", location: at(2, 3, 2, 4), replacement: "" },
            ],
          },
        },
      },
    ],
  ]);

  test("a change counts as noticed when a test fails or never ends, and not when no test comes by", () => {
    expect(summarise(reports)).toEqual({
      figures: [{ folder: "core", files: 1, tried: 4, noticed: 2, leftAlone: 1 }],
      survivors: [
        { file: "src/core/a.ts", line: 1, was: "1 + 2", now: "1 - 2" },
        { file: "src/core/a.ts", line: 2, was: "2", now: "a | b" },
      ],
    });
  });

  test("the score is rounded down", () => {
    expect(score({ tried: 3, noticed: 2 })).toBe(66.6);
    expect(score({ tried: 1000, noticed: 1000 })).toBe(100);
  });

  test("what was published of a folder stays where only another one has been run here", () => {
    const folder = mkdtempSync(join(tmpdir(), "mutation-"));
    publish(reports, folder);
    const survived = { status: "Survived", location: at(2, 3, 2, 4), replacement: "3" };
    const other = new Map([["cylinder", { files: { "src/functions/cylinder/b.ts": { source, mutants: [survived, survived] } } }]]);
    expect(publish(other, folder)).toEqual({ folder: "all", files: 2, tried: 6, noticed: 2, leftAlone: 1 });
    const list = () =>
      readFileSync(join(folder, "survivors.md"), "utf8")
        .split("\n")
        .filter((line) => line.startsWith("| src/"));
    expect(list().map((line) => line.split(" ")[1])).toEqual([
      "src/core/a.ts:1",
      "src/core/a.ts:2",
      "src/functions/cylinder/b.ts:2",
      "src/functions/cylinder/b.ts:2",
    ]);
    expect(publish(reports, folder).tried).toBe(6);
    expect(list()).toHaveLength(4);
    rmSync(folder, { recursive: true });
  });

  test("a reason holds for as many places as it says: the same change elsewhere is not yet tested", () => {
    const folder = mkdtempSync(join(tmpdir(), "mutation-"));
    const survived = { status: "Survived", location: at(2, 3, 2, 4), replacement: "3" };
    const thrice = new Map([["core", { files: { "src/core/a.ts": { source, mutants: [survived, survived, survived] } } }]]);
    const reason = { file: "src/core/a.ts", was: "2", now: "3", why: "it is not used" };
    for (const [given, untested] of [
      [reason, 2],
      [{ ...reason, places: 2 }, 1],
      [{ ...reason, places: 3 }, 0],
    ] as const) {
      writeFileSync(join(folder, "reasons.json"), JSON.stringify([given]));
      publish(thrice, folder);
      const list = readFileSync(join(folder, "survivors.md"), "utf8");
      expect([list.split("it is not used").length - 1, list.split("no test yet").length - 1]).toEqual([3 - untested, untested]);
    }
    rmSync(folder, { recursive: true });
  });

  test("in this project each survivor has its reason, and no reason is left of a change that tests notice by now", () => {
    const kept = (name: string) => readFileSync(join("test", "mutation", name), "utf8");
    const list = kept("survivors.md");
    expect(list).not.toContain("no test yet");
    const places = (JSON.parse(kept("reasons.json")) as { places?: number }[]).map(({ places = 1 }) => places);
    expect(list.split("\n").filter((line) => line.startsWith("| src/"))).toHaveLength(places.reduce((a, b) => a + b));
  });

  test("each survivor stands in the list with its reason, or as not yet tested", () => {
    const folder = mkdtempSync(join(tmpdir(), "mutation-"));
    writeFileSync(join(folder, "reasons.json"), JSON.stringify([{ file: "src/core/a.ts", was: "1 + 2", now: "1 - 2", why: "a is not used" }]));
    expect(publish(reports, folder)).toEqual({ folder: "all", files: 1, tried: 4, noticed: 2, leftAlone: 1 });
    const list = readFileSync(join(folder, "survivors.md"), "utf8");
    expect(list).toContain("| src/core/a.ts:1 | `1 + 2` | `1 - 2` | a is not used |");
    expect(list).toContain("| src/core/a.ts:2 | `2` | `a \\| b` | no test yet |");
    expect(JSON.parse(readFileSync(join(folder, "score.json"), "utf8"))).toEqual([
      { folder: "core", files: 1, tried: 4, noticed: 2, leftAlone: 1, score: 50 },
      { folder: "all", files: 1, tried: 4, noticed: 2, leftAlone: 1, score: 50 },
    ]);
    rmSync(folder, { recursive: true });
  });
});
