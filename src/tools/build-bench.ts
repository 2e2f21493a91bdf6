/**
 * The bench's files into a folder: its page, the pane's page, the sample, and the spreadsheet engine
 * with what it stands on as separate files, which anyone may replace by their own copies (it is under
 * the LGPL).
 */
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { bundleOverPane, bundlePane } from "./bundling.ts";
import { packagesIn } from "./licences.ts";
import { root } from "./paths.ts";

/** Files taken over as they are, by package; `index.html` names them under `vendor/`. */
const VENDORED: Readonly<Record<string, readonly string[]>> = {
  "@odoo/o-spreadsheet": ["dist/o_spreadsheet.min.iife.js", "dist/o_spreadsheet.css", "dist/o_spreadsheet.xml", "LICENSE"],
  "@odoo/owl": ["dist/owl.iife.min.js", "LICENSE"],
  bootstrap: ["dist/css/bootstrap.min.css", "LICENSE"],
  "font-awesome": ["css/font-awesome.min.css", "fonts/fontawesome-webfont.woff2", "README.md"],
};

const SAMPLE = join("samples", "build-sheet.xlsx");

/** Builds the bench into `out`; says which packages went into it, as `node_modules/…`. */
export const buildBench = async (out: string): Promise<string[]> => (await makeBench(out)).packages;

/** The same, with all files that it was made of, seen from the folder of the project. */
export async function makeBench(out: string): Promise<{ packages: string[]; files: string[] }> {
  rmSync(out, { recursive: true, force: true });
  const made = await Promise.all([bundlePane(out), bundleOverPane(out, { bench: "src/bench/page.ts", "pane-bench": "src/bench/pane-frame.ts" }, "es2022")]);
  copy(join(root, "src", "bench", "index.html"), join(out, "index.html"));
  const page = readFileSync(join(root, "src", "pane", "pane.html"), "utf8");
  writeFileSync(join(out, "pane.html"), page.replace('src="pane.js"', 'src="pane-bench.js"'));
  for (const [name, files] of Object.entries(VENDORED)) {
    for (const file of files) copy(join(root, "node_modules", name, file), join(out, "vendor", name, file));
  }
  if (existsSync(join(root, SAMPLE))) copy(join(root, SAMPLE), join(out, SAMPLE));
  const vendored = Object.entries(VENDORED).flatMap(([name, files]) => files.map((file) => join("node_modules", name, file)));
  return {
    packages: [...packagesIn(made), ...Object.keys(VENDORED).map((name) => `node_modules/${name}`)],
    files: [...made.flatMap(({ inputs }) => Object.keys(inputs)), ...vendored, join("src", "bench", "index.html"), join("src", "pane", "pane.html"), SAMPLE],
  };
}

function copy(from: string, to: string): void {
  mkdirSync(dirname(to), { recursive: true });
  copyFileSync(from, to);
}
