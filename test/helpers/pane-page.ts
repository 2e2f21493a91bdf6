import { copyFileSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build, type Metafile } from "esbuild";
import { COMMON } from "../../src/tools/bundling.ts";
import { root } from "../../src/tools/paths.ts";
import { onceARun } from "./once-a-run.ts";
import { type StaticServer, serve } from "./static-server.ts";

export interface PanePage extends StaticServer {
  folder: string;
  metafile: Metafile;
}

/** Bundles an entry that mounts the pane as the hosts do, and serves it with the pane's own page. */
export async function panePage(entry: string): Promise<PanePage> {
  const built = await onceARun(`pane-${entry.replace(/\W+/g, "-")}`, (into) => buildPane(entry, into));
  const folder = join(built, "files");
  const metafile = JSON.parse(readFileSync(join(built, "metafile.json"), "utf8")) as Metafile;
  return { ...(await serve(folder)), folder, metafile };
}

async function buildPane(entry: string, into: string): Promise<void> {
  const folder = join(into, "files");
  const { metafile } = await build({ ...COMMON, entryPoints: { pane: entry }, outdir: folder, splitting: true, format: "esm" });
  copyFileSync(join(root, "src", "pane", "pane.html"), join(folder, "pane.html"));
  writeFileSync(join(into, "metafile.json"), JSON.stringify(metafile));
}
