import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import type { Metafile } from "esbuild";
import { atPane } from "../helpers/pane-browser.ts";
import { panePage } from "../helpers/pane-page.ts";

import.meta.jest.setTimeout(60_000);

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const ENTRY = "src/pane/mount.tsx";
const KILOBYTE = 1024;

/** The entry and whatever it imports at once; parts loaded on demand are left out. */
function firstFiles({ outputs }: Metafile): string[] {
  const files = new Set<string>();
  const add = (file: string) => {
    if (files.has(file)) return;
    files.add(file);
    for (const { path, kind } of outputs[file]!.imports) if (kind === "import-statement") add(path);
  };
  add(Object.keys(outputs).find((file) => outputs[file]!.entryPoint === ENTRY)!);
  return [...files];
}

test("what the pane loads before it shows is at most 20 kB compressed, style and all", async () => {
  const served = await panePage(ENTRY);
  const files = [...firstFiles(served.metafile), ...Object.keys(served.metafile.outputs).filter((file) => file.endsWith(".css"))];
  const bytes = files.map((file) => gzipSync(readFileSync(join(ROOT, file))).length).reduce((sum, size) => sum + size, 0);
  await served.close();
  expect(bytes).toBeGreaterThan(5 * KILOBYTE);
  expect(bytes).toBeLessThanOrEqual(20 * KILOBYTE);
});

describe("in the browser", () => {
  const pane = atPane();

  test("neither the check nor any view but Check is loaded before they are asked for", async () => {
    const page = await pane.browser.newPage();
    const asked: string[] = [];
    page.on("request", (request) => asked.push(new URL(request.url()).pathname));
    await page.goto(`${pane.served.address}/pane.html?scene=sheet`);
    await page.getByRole("button", { name: "Check" }).waitFor();
    expect(asked.filter((path) => /functions|check|view/.test(path))).toEqual([]);
    await page.getByRole("button", { name: "Check" }).click();
    await page.locator(".counts").waitFor();
    expect(asked.filter((path) => /check/.test(path))).toHaveLength(1);
  });
});
