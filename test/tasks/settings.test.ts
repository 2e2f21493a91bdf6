import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { globSync } from "tinyglobby";
import { specs } from "../../src/functions/index.ts";
import { root } from "../../src/tools/paths.ts";
import { readSupply, unusedAllowances } from "../../src/tools/supply.ts";
import { LEVELS } from "../fuzz/levels.ts";
import { EXPLAINING, HELP_ARGUMENT, HELP_CONSTANT } from "../mutation/help-text.ts";
import { FOLDERS as MEASURED, TESTS as MEASURED_BY } from "./coverage.ts";
import { OFFICE_CODE } from "./lint.ts";

/**
 * Lists that people keep up by hand. An entry that names nothing that is there says that something has moved or gone, and that
 * the list no longer does what it is read to do.
 */
const text = (path: string): string => readFileSync(join(root, path), "utf8");
const json = (path: string) => JSON.parse(text(path));
const found = (pattern: string): string[] =>
  globSync(pattern, { cwd: root, dot: true, expandDirectories: true, ignore: ["**/node_modules/**", "dist/**", "test/output/**", ".git/**"] });
const namesNothing = (patterns: readonly string[]): string[] => patterns.filter((pattern) => found(pattern).length === 0);
const scripts = json("package.json").scripts as Record<string, string>;

describe("files that are looked for by their names", () => {
  test("what Biome leaves out is there, or is made and not kept", () => {
    const notKept = text(".gitignore")
      .split("\n")
      .map((line) => line.replace(/\/$/, ""));
    const leftOut = (json("biome.json").files.includes as string[]).filter((one) => one.startsWith("!")).map((one) => one.slice(1));
    expect(leftOut.length).toBeGreaterThan(5);
    expect(namesNothing(leftOut.filter((one) => !notKept.includes(one.replace(/^\*\*\//, ""))))).toEqual([]);
  });

  test("files that Biome treats apart, and Office code for ESLint", () => {
    const apart = (json("biome.json").overrides as { includes: string[] }[]).flatMap(({ includes }) => includes);
    expect(namesNothing([...apart, ...OFFICE_CODE])).toEqual([]);
    expect(
      text("eslint.config.mjs")
        .match(/"src\/[^"]+"/g)!
        .filter((one) => found(JSON.parse(one)).length === 0),
    ).toEqual([]);
  });

  test("what TypeScript reads, and what jest takes in place of a package", () => {
    expect(namesNothing(json("tsconfig.json").include)).toEqual([]);
    const { moduleNameMapper, globalSetup, globalTeardown, testEnvironment } = json("package.json").jest;
    const files = [...(Object.values(moduleNameMapper) as string[]), globalSetup, globalTeardown, testEnvironment];
    expect(files.filter((path: string) => !existsSync(path.replace("<rootDir>", root)))).toEqual([]);
  });

  test("folders whose coverage is measured hold code, and those that measure it tests", () => {
    expect(namesNothing(MEASURED.map((folder) => `${folder}/**/*.ts`))).toEqual([]);
    expect(namesNothing(MEASURED_BY.map((folder) => `${folder}/**/*.test.ts`))).toEqual([]);
    const kept = (json("test/tasks/coverage.json") as { folder: string }[]).map(({ folder }) => folder);
    expect(kept.filter((folder) => !MEASURED.includes(folder))).toEqual([]);
  });
});

describe("tasks", () => {
  test("each script of package.json starts a task that is there, and stands in the contributors' page", () => {
    const started = Object.entries(scripts).flatMap(([name, line]) => {
      const task = /^node src\/tools\/run\.mjs ([\w-]+)/.exec(line)?.[1];
      return task === undefined ? [] : [[name, task] as const];
    });
    expect(started.length).toBeGreaterThan(10);
    const places = (task: string) => [`src/tools/${task}.ts`, `test/tasks/${task}.ts`, `test/${task}/${task}.ts`, `samples/${task}.ts`];
    expect(started.filter(([, task]) => !places(task).some((path) => existsSync(join(root, path))))).toEqual([]);
  });

  test("the contributors' page and README name no script that is not there", () => {
    const named = [...`${text("DEVELOPERS.md")}\n${text("README.md")}`.matchAll(/npm (?:run ([\w:-]+)|(start|test)\b)/g)].map(
      ([, run, short]) => run ?? short!,
    );
    expect(named.length).toBeGreaterThan(15);
    expect([...new Set(named)].filter((name) => !(name in scripts))).toEqual([]);
  });

  test("the contributors' page tells of every long test, and of none that is not there", () => {
    const told = text("DEVELOPERS.md").match(/test\/[\w/-]+\.long\.ts/g)!;
    expect(told.sort()).toEqual(found("test/**/*.long.ts").sort());
  });

  test("the two ways of a reading through the files name files that are there, each of them once", () => {
    const page = text("DEVELOPERS.md");
    const ways = page.slice(page.indexOf("## From a cell to a finding"), page.indexOf("## Add a function")).split("A row of a CSV");
    for (const way of ways) {
      const named = [...way.matchAll(/`([\w./-]+\.tsx?)`/g)].map(([, path]) => path!);
      expect(named.length).toBeGreaterThan(10);
      expect(named.filter((path, i) => named.indexOf(path) !== i || !existsSync(join(root, path)))).toEqual([]);
    }
  });

  test("what a user starts without the packages for tests is a task", () => {
    const [, list] = /USER_TASKS = new Set\(\[(.*)\]\)/.exec(text("src/tools/run.mjs"))!;
    expect((JSON.parse(`[${list}]`) as string[]).filter((task) => !existsSync(join(root, "src", "tools", `${task}.ts`)))).toEqual([]);
  });
});

describe("packages", () => {
  test("every licence that is allowed, and every exception, is some package's", () => {
    expect(unusedAllowances(readSupply())).toEqual([]);
  });

  test("what the product is built from is what its sources import, and tsx, which runs what builds it", () => {
    const { dependencies, builtFrom } = json("package.json") as { dependencies: Record<string, string>; builtFrom: string[] };
    const code = found("src/**/*.{ts,tsx,mjs}").map(text).join("\n");
    const imported = [
      ...code.matchAll(/^(?:import|export) (?!type ).*?from "((?:@[^/"]+\/)?[^/".@][^/"]*)[^"]*";|import\("((?:@[^/"]+\/)?[^/".@][^/"]*)[^"]*"\)/gm),
    ].map(([, above, inside]) => above ?? inside!);
    // For tasks that a contributor runs, and for a browser where none is installed.
    const apart = ["@fluentui/tokens", "office-addin-cli", "@sparticuz/chromium"];
    const needed = imported.filter((name) => !name.startsWith("node:") && !(name in dependencies) && !apart.includes(name));
    // Its files are taken over as they are.
    expect([...new Set([...needed, "@microsoft/office-js", "tsx"])].sort()).toEqual([...builtFrom].sort());
    expect(apart.filter((name) => !imported.includes(name))).toEqual([]);
  });

  test("the contributors' page weighs the packages that there are, and no others", () => {
    const rows = /## Dependencies([\s\S]*?)\n## /
      .exec(text("DEVELOPERS.md"))![1]!
      .split("\n")
      .filter((line) => line.startsWith("| "))
      .slice(1);
    const named = rows
      .flatMap(
        (row) =>
          row
            .split("|")[1]!
            .replaceAll("'s", "")
            .match(/@?[a-z][\w.-]*(?:\/[\w.*-]+)?/g) ?? [],
      )
      .filter((name) => !["with", "and"].includes(name));
    const { dependencies, devDependencies } = json("package.json");
    const installed = Object.keys({ ...dependencies, ...devDependencies });
    const fits = (name: string, one: string): boolean => (name.endsWith("*") ? one.startsWith(name.slice(0, -1)) : one === name);
    expect(named.filter((name) => !installed.some((one) => fits(name, one)))).toEqual([]);
    expect(installed.filter((one) => !named.some((name) => fits(name, one)))).toEqual([]);
  });
});

describe("changes of the sources", () => {
  const sources = found("src/{core,math,functions}/**/*.ts");
  const all = sources.map(text).join("\n");

  test("what is left alone is there: fields of declarations, what declares inputs, constants of words", () => {
    expect([...EXPLAINING].filter((field) => !specs.some((spec) => (spec as unknown as Record<string, unknown>)[field] !== undefined))).toEqual([]);
    expect(Object.keys(HELP_ARGUMENT).filter((name) => !new RegExp(`\\b${name}(?:<[^(]*>)?\\(`).test(all))).toEqual([]);
    expect(HELP_CONSTANT.filter((ending) => !new RegExp(`const \\w+_${ending}\\b`).test(all))).toEqual([]);
  });

  const flat = new Map(sources.map((path) => [path, text(path).replace(/\s+/g, " ")]));

  test("every survivor is of a piece of code that is there", () => {
    const rows = [...text("test/mutation/survivors.md").matchAll(/^\| (src\/\S+):\d+ \| `(.*?)(?:…)?` \| `/gm)];
    expect(rows.length).toBeGreaterThan(50);
    expect(rows.filter(([, file, was]) => !flat.get(file!)?.includes(was!.replaceAll("\\|", "|"))).map(([row]) => row)).toEqual([]);
  });

  test("every reason is for a file and a piece of code that are there", () => {
    const reasons = json("test/mutation/reasons.json") as { file: string; was: string }[];
    expect(reasons.filter(({ file, was }) => !flat.get(file)?.includes(was.replace(/…$/, ""))).map(({ file, was }) => `${file}: ${was}`)).toEqual([]);
  });
});

test("every kind of damage has figures in the last run that was kept, and no others do", () => {
  const kept = json("test/fuzz/figures.json") as { levels: Record<string, unknown> }[];
  for (const { levels } of kept) expect(Object.keys(levels).sort()).toEqual(LEVELS.map(({ name }) => name).sort());
});

test("the folders of tests are those of the sources, or hold what is only for tests", () => {
  const own = new Set([
    "fuzz",
    "fidelity",
    "mutation",
    "parity",
    "long-use",
    "simulate",
    "slurm",
    "benchmark",
    "tasks",
    "reference",
    "helpers",
    "hostile",
    "samples",
    "output",
  ]);
  const folders = (path: string) =>
    readdirSync(join(root, path), { withFileTypes: true })
      .filter((one) => one.isDirectory())
      .map(({ name }) => name);
  const sources = new Set(folders("src"));
  expect(folders("test").filter((name) => !sources.has(name) && !own.has(name))).toEqual([]);
});
