/** `npm run libreoffice`: the extension for LibreOffice Calc, dist/crosshatch.oxt. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { pathToFileURL } from "node:url";
import { build as bundle } from "esbuild";
import { extensionFile } from "../libreoffice/extension/extension.ts";
import { DIST, EXTENSION } from "./build.ts";
import { COMMON } from "./bundling.ts";
import { licencesOf, packagesIn } from "./licences.ts";
import { root } from "./paths.ts";

export async function buildExtension(out = join(DIST, EXTENSION)): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-extension-"));
  try {
    const outfile = join(folder, "functions.js");
    // So old a language that a Node too old to run the functions can still say which it is.
    const { metafile } = await bundle({ ...COMMON, entryPoints: ["src/libreoffice/child.ts"], outfile, format: "cjs", platform: "node", target: "es2017" });
    const read = (...path: string[]) => readFileSync(join(root, ...path));
    const parts = {
      "functions.js": readFileSync(outfile),
      "icon.png": read("src", "addin", "icons", "icon-64.png"),
      LICENSE: read("LICENSE"),
      "THIRD-PARTY-LICENSES": licencesOf(packagesIn([metafile])),
    };
    mkdirSync(dirname(out), { recursive: true });
    writeFileSync(out, extensionFile(parts));
    return out;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const out = await buildExtension();
  console.log(
    `Wrote ${relative(process.cwd(), out)}: ${Math.round(statSync(out).size / 1024)} KB. Double-click it, or: unopkg add ${relative(process.cwd(), out)}`,
  );
}
