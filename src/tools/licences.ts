/** THIRD-PARTY-LICENSES: the licence of every package that ends up in what we ship. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
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

/** One section per package; the texts as the packages bring them. */
export function licencesOf(folders: readonly string[], base = root): string {
  return folders.map((folder) => section(join(base, folder))).join("\n");
}

const TEXTS = /^(?:licen[cs]e|copying|notice)/i;

function section(folder: string): string {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as Record<string, string>;
  const files = existsSync(folder) ? readdirSync(folder).filter((file) => TEXTS.test(file)) : [];
  const texts = files.sort().map((file) => readFileSync(join(folder, file), "utf8").replace(/\r\n/g, "\n").trim());
  return `${"=".repeat(72)}\n${name} ${version} (${license ?? "see below"})\n${"=".repeat(72)}\n\n${texts.join("\n\n") || "The package brings no licence text."}\n`;
}
