import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, type Metafile } from "esbuild";
import { COMMON } from "../../src/tools/bundling.ts";
import { type StaticServer, serve } from "./static-server.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

export interface PanePage extends StaticServer {
  folder: string;
  metafile: Metafile;
}

/** Bundles an entry that mounts the pane as the hosts do, and serves it with the pane's own page. */
export async function panePage(entry: string): Promise<PanePage> {
  const folder = mkdtempSync(join(tmpdir(), "pane-page-"));
  const { metafile } = await build({
    ...COMMON,
    entryPoints: { pane: entry },
    outdir: folder,
    splitting: true,
    format: "esm",
  });
  copyFileSync(join(ROOT, "src", "pane", "pane.html"), join(folder, "pane.html"));
  const server = await serve(folder);
  const close = async () => {
    await server.close();
    rmSync(folder, { recursive: true });
  };
  return { ...server, folder, metafile, close };
}
