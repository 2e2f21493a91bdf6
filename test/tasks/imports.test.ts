import { FOLDERS, type Folder } from "./allowed-imports.ts";
import { cycles, importFaults, importsOf, sources } from "./imports.ts";

const listed = (imports: Record<string, string[]>): Record<string, Folder> =>
  Object.fromEntries(Object.entries(imports).map(([name, allowed]) => [name, { holds: "", imports: allowed }]));
const faults = (files: Record<string, string>, folders: Record<string, string[]>) => importFaults(new Map(Object.entries(files)), listed(folders));

test("every import of this project stands in its list, every entry of the list is used, and nothing goes round", () => {
  const files = sources();
  expect(files.size).toBeGreaterThan(300);
  expect(importFaults(files, FOLDERS)).toEqual([]);
});

test("imports are found wherever they stand: at the top, on the way, as types, handed on", () => {
  const text = [
    'import { a } from "../core/a.ts";',
    'import type { B } from "./b.ts";',
    'import "./c.ts";',
    'export { d } from "./d.ts";',
    'export type { E } from "./e.ts";',
    'const later = async () => await import("./f.ts");',
    'type G = import("./g.ts").G;',
    'import fflate from "fflate";',
    '// import { no } from "./comment.ts"',
    'const words = `import { no } from "./text.ts"`;',
  ].join("\n");
  const found = importsOf("src/cli/x.ts", text);
  expect(found.map(({ to, onlyTypes }) => [to, onlyTypes])).toEqual([
    ["src/core/a.ts", false],
    ["src/cli/b.ts", true],
    ["src/cli/c.ts", false],
    ["src/cli/d.ts", false],
    ["src/cli/e.ts", true],
    ["src/cli/f.ts", false],
    ["src/cli/g.ts", true],
  ]);
});

test("an import that the list does not have fails, also one of a type, also one out of src", () => {
  const files = { "src/a/one.ts": 'import type { B } from "../b/two.ts"; import { t } from "../../test/t.ts";', "src/b/two.ts": "" };
  expect(faults(files, { a: [], b: [] })).toEqual(["src/a/one.ts imports src/b/two.ts: src/a may not", "src/a/one.ts imports test/t.ts: src/a may not"]);
});

test("a folder that is not listed fails, and may neither import nor be imported", () => {
  const files = { "src/a/one.ts": 'import { b } from "../b/two.ts";', "src/b/two.ts": "", "src/alone.ts": "" };
  expect(faults(files, { a: [] })).toEqual([
    "src/a/one.ts imports src/b/two.ts: src/a may not",
    "src/b/two.ts is in a folder that is not listed",
    "src/alone.ts is in a folder that is not listed",
  ]);
});

test("a listed import that no file uses fails, and so does a folder without a file", () => {
  const files = { "src/a/one.ts": "", "src/b/two.ts": "" };
  expect(faults(files, { a: ["b"], b: [], c: [] })).toEqual(["src/a may import src/b, and no file of it does", "src/c is listed and has no file"]);
});

test("a folder in a folder belongs to it, unless it is listed itself: the longest name counts", () => {
  const files = { "src/a/one.ts": 'import { b } from "./deep/two.ts";', "src/a/deep/two.ts": "" };
  expect(faults(files, { a: [] })).toEqual([]);
  expect(faults(files, { a: [], "a/deep": [] })).toEqual(["src/a/one.ts imports src/a/deep/two.ts: src/a may not"]);
  expect(faults(files, { a: ["a/deep"], "a/deep": [] })).toEqual([]);
});

test("files that import one another's values fail, those of which one takes only types do not", () => {
  const back = (how: string) => ({ "src/a/one.ts": 'import { b } from "./two.ts";', "src/a/two.ts": `${how} from "./one.ts";` });
  expect(faults(back("import { a }"), { a: [] })).toEqual(["files import one another: src/a/one.ts, src/a/two.ts"]);
  expect(faults(back("export { a }"), { a: [] })).toEqual(["files import one another: src/a/one.ts, src/a/two.ts"]);
  expect(faults(back("import type { A }"), { a: [] })).toEqual([]);
});

test("folders that import one another fail, though each import stands in the list", () => {
  const files = { "src/a/one.ts": 'import type { B } from "../b/two.ts";', "src/b/two.ts": "", "src/b/three.ts": 'import { a } from "../a/one.ts";' };
  expect(faults(files, { a: ["b"], b: ["a"] })).toEqual(["folders import one another: src/a, src/b"]);
});

test("every way round is found: of three, of two that share one, of one", () => {
  const arrows = (text: string) => text.split(" ").map(([from, to]) => ({ from: from!, to: to! }));
  expect(cycles(arrows("ab bc ca cd"))).toEqual([["a", "b", "c"]]);
  expect(cycles(arrows("ab ba cb bc de"))).toEqual([["a", "b", "c"]]);
  expect(cycles(arrows("ab ba cd dc"))).toEqual([
    ["a", "b"],
    ["c", "d"],
  ]);
  expect(cycles(arrows("aa ab"))).toEqual([["a"]]);
  expect(cycles(arrows("ab ac bd cd"))).toEqual([]);
});
