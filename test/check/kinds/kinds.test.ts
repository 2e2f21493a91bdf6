import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { FINDING_KINDS, specOf } from "../../../src/check/finding.ts";
import { findingsSection, kindFiles, kindsOf } from "../../../src/tools/finding-kinds.ts";
import { root } from "../../../src/tools/paths.ts";

const KINDS = join(root, "src", "check", "kinds");

describe("the declarations", () => {
  test("stand worst first, each with a place of its own", () => {
    expect(FINDING_KINDS).toEqual([
      ...["likely slip", "wrong result", "outside limit", "refused", "no result", "not proven", "near limit", "missing reading", "missing limit"],
      ...["calibration overdue", "coarse gauge", "mixed units", "overwritten formula", "limit in formula", "zero limit"],
    ]);
    expect(new Set(FINDING_KINDS.map((kind) => specOf(kind).order)).size).toBe(FINDING_KINDS.length);
  });

  test("are all in the index, each in a file that has its name and its test", async () => {
    const files = kindFiles();
    expect((await kindsOf(files)).map(({ name }) => name)).toEqual(FINDING_KINDS);
    for (const { file } of files) expect(existsSync(join(root, "test", "check", "kinds", file.replace(/\.ts$/, ".test.ts")))).toBe(true);
    expect(files.map(({ file }) => file.replace(/\.ts$/, "").replaceAll("-", " ")).sort()).toEqual([...FINDING_KINDS].sort());
  });

  test("rest on core and on the types of the workbook alone", () => {
    const imports = readdirSync(KINDS).flatMap((file) => [...readFileSync(join(KINDS, file), "utf8").matchAll(/^import (type )?.* from "(.*)";$/gm)]);
    expect(imports.length).toBeGreaterThan(20);
    for (const [, type = "", from] of imports) expect(`${type}${from}`).toMatch(/^(?:type )?\.\/|^(?:type )?\.\.\/\.\.\/core\/|^type \.\.\/\.\.\/workbook\//);
  });

  test("every field says what it means, a number its unit, and a cause has its list", () => {
    for (const kind of FINDING_KINDS) {
      const { fields, isCause } = specOf(kind);
      for (const { meaning, type, unit } of Object.values(fields)) expect([meaning.length > 10, type !== "number" || unit !== ""]).toEqual([true, true]);
      expect(fields.causes?.type === "list").toBe(isCause);
    }
  });
});

/** A kind that nobody has, as its file would stand. */
const LOOSE_BOLT = `import { countField, defineKind } from "./define-kind.ts";

export const looseBoltKind = defineKind({
  name: "loose bolt",
  plural: "loose bolts",
  order: 35,
  meaning: "a bolt that was never tightened",
  mark: "fault",
  isGrave: true,
  fields: { turns: countField("how far it turned", "turn").shown("turned by") },
  sentence: ({ label }, { turns }) => \`\${label} turned \${turns} times\`,
});
`;

/** Run in the copy: they write what is made of the declarations, and tell what the parts of the program make of the kind. */
const SCRIPTS = join("test", "check", "kinds", "in-copy");

describe("a kind added to a copy of the program, as one file", () => {
  let copy: string;
  const run = (script: string): string => {
    const { stdout, stderr, status } = spawnSync(process.execPath, ["--import", "tsx", script], {
      cwd: copy,
      encoding: "utf8",
      env: { ...process.env, NODE_OPTIONS: "" },
    });
    if (status !== 0) throw new Error(stderr);
    return stdout;
  };
  let used: Record<string, never>;
  let readme: string;
  beforeAll(() => {
    copy = mkdtempSync(join(tmpdir(), "crosshatch-kinds-"));
    for (const name of ["src", "package.json", "README.md", "tsconfig.json"]) cpSync(join(root, name), join(copy, name), { recursive: true });
    symlinkSync(join(root, "node_modules"), join(copy, "node_modules"), "junction");
    writeFileSync(join(copy, "src", "check", "kinds", "loose-bolt.ts"), LOOSE_BOLT);
    cpSync(join(root, SCRIPTS), join(copy, SCRIPTS), { recursive: true });
    run(join(SCRIPTS, "write-parts.ts"));
    used = JSON.parse(run(join(SCRIPTS, "use-loose-bolt.ts")));
    readme = readFileSync(join(copy, "README.md"), "utf8");
  }, 240_000);
  afterAll(() => rmSync(copy, { recursive: true, force: true }));

  test("takes its place among the others", () => {
    expect(used.kinds).toEqual([...FINDING_KINDS.slice(0, 4), "loose bolt", ...FINDING_KINDS.slice(4)]);
    expect(used.order).toEqual(["refused", "loose bolt", "missing limit"]);
  });

  test("has its word, its plural, its mark, and its numbers in the pane", () => {
    expect(used).toMatchObject({
      word: "loose bolt",
      tally: "2 loose bolts",
      mark: { cell: { sheet: "Head", row: 4, column: 1 }, tone: "fault" },
      numbers: [
        ["value", "blank"],
        ["turned by", "2 turns"],
      ],
    });
  });

  test("stands in JSON with its fields, in a report in bold, and is known in a ledger", () => {
    expect(used.line).toEqual({
      ...{ file: "a.xlsx", kind: "loose bolt", cell: "Head!B5", label: "Bolt 3", value: null, lower: null, upper: null, margin: null, verdict: null },
      turns: 2,
      sentence: "Bolt 3 turned 2 times",
    });
    expect(used.printed).toContain('<td class="word bad">loose bolt</td>');
    expect(used.stored).toMatchObject({ tallies: [{ kind: "loose bolt" }] });
  });

  test("is told in README with what its fields mean", () => {
    expect(readme).toContain("| loose bolt | a bolt that was never tightened |");
    expect(readme).toContain("| loose bolt | `turns` | how far it turned | whole number | turns |");
  });
});

test("README tells what the declarations say", async () => {
  expect(readFileSync(join(root, "README.md"), "utf8")).toContain(findingsSection(await kindsOf(kindFiles())));
});
