/**
 * The generated parts of the product: from the specs its index in `src/functions` and README's function table,
 * from the kinds of findings their index in `src/check/kinds` and what README says of them, from design tokens the pane's colours, from package.json the version. `npm run generate` writes them, with what is made of the tests.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { GROUP_TITLES, GROUPS, type Spec, signature, type TradeGroup } from "../core/define.ts";
import { findingsSection, KINDS_INDEX, kindFiles, kindsIndexSource, kindsOf } from "./finding-kinds.ts";
import { coloursFile } from "./pane-colours.ts";
import { root } from "./paths.ts";

const FUNCTIONS = join(root, "src", "functions");
const TABLE = ["<!-- functions: made by `npm run generate` -->", "<!-- end of functions -->"] as const;
const FINDINGS = ["<!-- findings: made by `npm run generate` -->", "<!-- end of findings -->"] as const;

interface SpecFile {
  group: TradeGroup;
  file: string;
  exported: string;
}

/** Every file below `src/functions/<group>/` that declares a function, in the order of the groups. */
export function specFiles(): SpecFile[] {
  const found: SpecFile[] = [];
  for (const group of GROUPS) {
    const folder = join(FUNCTIONS, group);
    if (!existsSync(folder)) continue;
    for (const file of readdirSync(folder).sort()) {
      const exported = /export const (\w+) = define\(/.exec(readFileSync(join(folder, file), "utf8"))?.[1];
      if (exported) found.push({ group, file, exported });
    }
  }
  return found;
}

function indexSource(files: readonly SpecFile[]): string {
  const imports = files.map(({ group, file, exported }) => ({ from: `./${group}/${file}`, exported })).sort((a, b) => (a.from < b.from ? -1 : 1));
  return [
    "// Made by `npm run generate` from the files in this folder.",
    'import type { Spec } from "../core/define.ts";',
    ...imports.map(({ from, exported }) => `import { ${exported} } from "${from}";`),
    "",
    "/** Every worksheet function, in the order of the trade groups. */",
    `export const specs: readonly Spec[] = [`,
    ...files.map(({ exported }) => `  ${exported},`),
    "];",
    "",
    "export const specByName: ReadonlyMap<string, Spec> = new Map(specs.map((spec) => [spec.name, spec]));",
    "",
  ].join("\n");
}

function functionTable(specs: readonly Spec[]): string {
  const lines: string[] = [];
  for (const group of GROUPS) {
    const members = specs.filter((spec) => spec.group === group);
    if (members.length === 0) continue;
    lines.push(`**${GROUP_TITLES[group]}**`, "", "| function | gives |", "|---|---|");
    for (const spec of members) lines.push(`| \`${signature(spec)}\` | ${spec.summary.replaceAll("|", "\\|")} |`);
    lines.push("");
  }
  return lines.join("\n");
}

/** A page with what stands between two marks replaced. */
export function between(page: string, [start, end]: readonly [string, string], text: string, name: string): string {
  const [from, to] = [page.indexOf(start), page.indexOf(end)];
  if (from < 0 || to < 0) throw new Error(`${name} has no place for what is made: ${start} … ${end}`);
  return `${page.slice(0, from + start.length)}\n\n${text}\n${page.slice(to)}`;
}

/** The functions and the pane run where no file can be read, so they get the package's version as a constant. */
function versionFile(): [path: string, text: string] {
  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { version: string };
  const lines = ["// Made by `npm run generate` from package.json.", `export const VERSION = ${JSON.stringify(version)};`, ""];
  return [join(root, "src", "core", "version.ts"), lines.join("\n")];
}

export async function specsOf(files: readonly SpecFile[]): Promise<Spec[]> {
  const specs: Spec[] = [];
  for (const { group, file, exported } of files) {
    const module = (await import(pathToFileURL(join(FUNCTIONS, group, file)).href)) as Record<string, Spec>;
    specs.push(module[exported]!);
  }
  return specs;
}

/** What each generated file of the product should hold, by path. */
export async function productParts(): Promise<Map<string, string>> {
  const files = specFiles();
  const specs = await specsOf(files);
  const kinds = kindFiles();
  const readme = join(root, "README.md");
  const withFunctions = between(readFileSync(readme, "utf8"), TABLE, functionTable(specs), "README.md");
  return new Map([
    [join(FUNCTIONS, "index.ts"), indexSource(files)],
    coloursFile(),
    versionFile(),
    [KINDS_INDEX, kindsIndexSource(kinds)],
    [readme, between(withFunctions, FINDINGS, findingsSection(await kindsOf(kinds)), "README.md")],
  ]);
}
