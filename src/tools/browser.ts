import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { promisify } from "node:util";
import { type Browser, chromium, type LaunchOptions } from "playwright-core";
import { launchOneOf, PRESENT_WAYS } from "../cli/browser.ts";

/**
 * The browser of the tests and pictures. Tried in turn: `BROWSER_PATH`, Edge, Chrome, the Chromium
 * inside the npm package @sparticuz/chromium (Linux x64), the system's Chromium, and on Debian as
 * root the system's package manager.
 */
export const launchBrowser = (options: LaunchOptions = {}): Promise<Browser> =>
  launchOneOf([...PRESENT_WAYS, { name: "apt-get install chromium", launch: launchInstalled }], options);

const run = promisify(execFile);

async function launchInstalled(options: LaunchOptions): Promise<Browser> {
  if (!existsSync("/etc/debian_version") || process.getuid?.() !== 0) throw new Error("only on Debian as root");
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  await run("apt-get", ["update"], { env });
  await run("apt-get", ["install", "--yes", "--no-install-recommends", "chromium"], { env });
  return chromium.launch({ ...options, executablePath: "/usr/bin/chromium" });
}
