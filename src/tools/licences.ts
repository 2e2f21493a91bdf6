/** THIRD-PARTY-LICENSES: the licence of every package that ends up in what we ship. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Metafile } from "esbuild";
import { root } from "./paths.ts";

/** Folders of the packages whose files went into these bundles, as `node_modules/…`. */
export function packagesIn(bundles: readonly Metafile[]): string[] {
  const folders = new Set<string>();
  for (const { inputs } of bundles) {
    for (const path of Object.keys(inputs)) {
      const inside = /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0];
      if (inside) folders.add(inside);
    }
  }
  return [...folders].sort();
}

const TEXTS = /^(?:licen[cs]e|copying|notice)/i;
const README = /^readme/i;
const RULE = "=".repeat(72);

/** The texts as the packages bring them, each once, under the names of all packages that bring it. */
export function licencesOf(folders: readonly string[], base = root): string {
  const names = new Map<string, string[]>();
  for (const folder of [...new Set(folders)].sort()) {
    const { name, text } = licenceOf(join(base, folder));
    names.set(text, [...(names.get(text) ?? []), name]);
  }
  return [...names].map(([text, packages]) => `${RULE}\n${packages.join("\n")}\n${RULE}\n\n${text}\n`).join("\n");
}

/** From a heading about the licence to the next heading. */
const SECTION = /^#+ *licen[cs]e.*\n([\s\S]*?)(?=^#+ |$(?![\s\S]))/im;

function licenceOf(folder: string): { name: string; text: string } {
  const { name, version, license, author } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as Record<string, string | { name?: string }>;
  const read = (file: string) => readFileSync(join(folder, file), "utf8").replace(/\r\n/g, "\n").trim();
  const files = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isFile());
  const names = files.map((entry) => entry.name).sort();
  const own = names.filter((file) => TEXTS.test(file)).map(read);
  const readme = names.filter((file) => README.test(file)).map((file) => SECTION.exec(read(file))?.[1]?.trim() ?? "");
  const text = [own.join("\n\n"), readme.join("\n\n"), byName(license, author)].find((one) => one.length > 0)!;
  return { name: `${name} ${version} (${license ?? "see below"})`, text };
}

/** For a package that brings no text of its licence. */
function byName(license: unknown, author: unknown): string {
  const by = typeof author === "object" && author !== null ? (author as { name?: string }).name : author;
  return `By ${by ?? "its authors"}. The package names its licence without the text, which is at https://spdx.org/licenses/${license}.html`;
}
