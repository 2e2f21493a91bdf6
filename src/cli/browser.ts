import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { access, mkdir, mkdtemp, rename, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import type { Browser, LaunchOptions } from "playwright-core";

/** A way to start a browser, and how it is called where it fails. */
export interface Way {
  name: string;
  launch(options: LaunchOptions): Promise<Browser>;
}

const SYSTEM_CHROMIUM = "/usr/bin/chromium";

async function launch(options: LaunchOptions): Promise<Browser> {
  const { chromium } = await import("playwright-core");
  return chromium.launch(options);
}

/** Browsers that may be on the machine already; nothing is installed. */
export const PRESENT_WAYS: readonly Way[] = [
  { name: "Edge", launch: (options) => launch({ ...options, channel: "msedge" }) },
  { name: "Chrome", launch: (options) => launch({ ...options, channel: "chrome" }) },
  { name: "@sparticuz/chromium", launch: launchPackaged },
  { name: SYSTEM_CHROMIUM, launch: (options) => launch({ ...options, executablePath: SYSTEM_CHROMIUM }) },
];

/**
 * Tries the ways in turn. A `BROWSER_PATH` that does not start is an error, because whoever sets it
 * means that browser and no other.
 */
export async function launchOneOf(ways: readonly Way[], options: LaunchOptions = {}): Promise<Browser> {
  const chosen = process.env.BROWSER_PATH;
  if (chosen) return launch({ ...options, executablePath: chosen });
  const tried: string[] = [];
  for (const { name, launch: start } of ways) {
    try {
      return await start(options);
    } catch (error) {
      tried.push(`  ${name}: ${firstLine(error)}`);
    }
  }
  throw new Error(`No browser could be started. Install Edge, Chrome or Chromium, or set BROWSER_PATH.\n${tried.join("\n")}`);
}

const firstLine = (error: unknown) => (error instanceof Error ? error.message : String(error)).split("\n", 1)[0];

const run = promisify(execFile);

/**
 * The package unpacks into the temporary folder of its process and looks for shared libraries only
 * when it takes the machine for a Lambda host; both are set for a child process, so that nothing
 * here depends on, or changes, this process's environment.
 */
async function launchPackaged(options: LaunchOptions): Promise<Browser> {
  if (process.platform !== "linux" || process.arch !== "x64") throw new Error("made for Linux on x64 only");
  const folder = await unpacked();
  const env = { ...process.env, FONTCONFIG_PATH: join(folder, "fonts"), LD_LIBRARY_PATH: join(folder, "al2023", "lib") } as Record<string, string>;
  // Its own list of arguments would switch off web security, which is part of what the tests look at.
  return launch({ ...options, executablePath: join(folder, "chromium"), args: ["--no-sandbox", ...(options.args ?? [])], env });
}

/** Unpacks once per version. Made beside and renamed, so that parallel first uses cannot meet half a browser. */
async function unpacked(): Promise<string> {
  const { version } = createRequire(import.meta.url)("../../node_modules/@sparticuz/chromium/package.json") as { version: string };
  const cache = fileURLToPath(new URL("../../node_modules/.cache/", import.meta.url));
  const folder = join(cache, `chromium-${version}`);
  if (existsSync(join(folder, "chromium"))) return folder;
  await mkdir(cache, { recursive: true });
  const beside = await mkdtemp(join(cache, "unpacking-"));
  try {
    const script = `import("@sparticuz/chromium").then(({ default: packed }) => packed.executablePath())`;
    await run(process.execPath, ["--input-type=module", "--eval", script], {
      cwd: fileURLToPath(new URL("../../", import.meta.url)),
      env: { ...process.env, TMPDIR: beside, AWS_EXECUTION_ENV: "AWS_Lambda_nodejs22.x" },
    });
    await access(join(beside, "chromium"));
    await writeFile(join(beside, "fonts", "fonts.conf"), fontsOf(folder));
    await rename(beside, folder).catch((error) => {
      if (!existsSync(join(folder, "chromium"))) throw error;
    });
  } finally {
    await rm(beside, { recursive: true, force: true });
  }
  return folder;
}

/** The package's own list names folders of a Lambda host; without one that exists here the browser draws no letter at all. */
const fontsOf = (folder: string) => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${join(folder, "fonts")}</dir>
  <dir>/usr/share/fonts</dir>
  <dir>/usr/local/share/fonts</dir>
  <cachedir>${join(folder, "fonts-cache")}</cachedir>
  <alias><family>sans-serif</family><prefer><family>Open Sans</family></prefer></alias>
  <alias><family>monospace</family><prefer><family>DejaVu Sans Mono</family></prefer></alias>
</fontconfig>
`;
