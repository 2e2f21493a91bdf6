/** What is made of the kinds of findings in `src/check/kinds`: their index, and what README says of them. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { COMMON_FIELDS, type Field, type Fields, type KindSpec } from "../check/kinds/define-kind.ts";
import { root } from "./paths.ts";

const KINDS = join(root, "src", "check", "kinds");
export const KINDS_INDEX = join(KINDS, "index.ts");

interface KindFile {
  file: string;
  exported: string;
}

/** Every file of the folder that declares a kind. */
export function kindFiles(): KindFile[] {
  return readdirSync(KINDS)
    .sort()
    .flatMap((file) => {
      const exported = /export const (\w+) = defineKind\(/.exec(readFileSync(join(KINDS, file), "utf8"))?.[1];
      return exported ? [{ file, exported }] : [];
    });
}

export function kindsIndexSource(files: readonly KindFile[]): string {
  return [
    "// Made by `npm run generate` from the files in this folder.",
    ...files.map(({ file, exported }) => `import { ${exported} } from "./${file}";`),
    "",
    "/** Every kind of finding. */",
    "export const kinds = [",
    ...files.map(({ exported }) => `  ${exported},`),
    "] as const;",
    "",
  ].join("\n");
}

export async function kindsOf(files: readonly KindFile[]): Promise<KindSpec[]> {
  const modules = files.map(async ({ file, exported }) => ((await import(pathToFileURL(join(KINDS, file)).href)) as Record<string, KindSpec>)[exported]!);
  return (await Promise.all(modules)).sort((a, b) => a.order - b.order);
}

const row = (...cells: string[]): string => `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;

/** What a field holds, in words: `number or null`. */
function holds({ type, words, isNullable }: Field): string {
  const own = { day: "day, as `2026-03-21`", count: "whole number", choice: words.map((word) => `"${word}"`).join(", "), list: "list of texts" };
  return `${type in own ? own[type as keyof typeof own] : type}${isNullable ? ", or null" : ""}`;
}

/** What is counted, several of them. */
const unitOf = ({ type, unit }: Field): string => (type === "count" ? `${unit}s` : unit);

const fieldRows = (fields: Fields, ...before: string[]): string[] =>
  Object.entries(fields).map(([name, field]) => row(...before, `\`${name}\``, field.meaning, holds(field), unitOf(field)));

/** The findings, and what a line of JSON holds of each. */
export function findingsSection(kinds: readonly KindSpec[]): string {
  return [
    "What Check finds, worst first:",
    "",
    row("finding", "tells of"),
    "|---|---|",
    ...kinds.map(({ name, meaning }) => row(name, meaning)),
    "",
    "`crosshatch check --json` writes one finding a line. Every line has these fields, and they mean the same whatever was found:",
    "",
    row("field", "meaning", "holds", "unit"),
    "|---|---|---|---|",
    row("`file`", "the file as it was named on the command line", "text", ""),
    row("`kind`", "what was found: one of the names above", "text", ""),
    row("`cell`", "in a workbook: the cell to look at, as `Bores!C7`", "text", ""),
    row("`line`", "in a file of readings, in place of `cell`: the line, counted from 1", "whole number", ""),
    ...fieldRows(COMMON_FIELDS),
    "",
    "Beside them each finding has fields of its own:",
    "",
    row("finding", "field", "meaning", "holds", "unit"),
    "|---|---|---|---|---|",
    ...kinds.flatMap(({ name, fields }) => fieldRows(fields, name)),
    "",
  ].join("\n");
}
