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

function licenceOf(folder: string): { name: string; text: string } {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as Record<string, string>;
  const files = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isFile() && TEXTS.test(entry.name));
  const texts = files
    .map((entry) => entry.name)
    .sort()
    .map((file) => readFileSync(join(folder, file), "utf8").replace(/\r\n/g, "\n").trim());
  return { name: `${name} ${version} (${license ?? "see below"})`, text: texts.join("\n\n") || "The package brings no licence text beyond the name above." };
}
