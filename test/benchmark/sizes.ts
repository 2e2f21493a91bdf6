import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { BenchmarkLine } from "./measure.ts";

/** What a host loads before anything can be used, zipped as a server sends it. */
export function sizes(dist: string): BenchmarkLine[] {
  const kilobytes = (files: readonly string[]) => files.reduce((sum, file) => sum + gzipSync(readFileSync(join(dist, file)), { level: 9 }).length, 0) / 1024;
  const line = (what: string, files: readonly string[], aim: number): BenchmarkLine => {
    const value = kilobytes(files);
    return { what, measured: `${value.toFixed(1)} KB gz (${files.join(", ")})`, yardstick: "–", value, unit: "KB gz", aim };
  };
  return [line("functions bundle", ["functions.js"], 120), line("pane before lazy parts", firstLoad(dist, "pane-excel.js"), 60)];
}

/** A module and what it imports outright, which a browser fetches before it runs. */
function firstLoad(dist: string, entry: string): string[] {
  const found = new Set([entry]);
  for (const file of found) {
    const text = readFileSync(join(dist, file), "utf8");
    for (const [, imported] of text.matchAll(/(?:from|import)\s*"\.\/([^"]+)"/g)) if (imported) found.add(imported);
  }
  const styles = readdirSync(dist).filter((file) => file.endsWith(".css") && file.startsWith("pane"));
  return [...found, ...styles];
}
