/**
 * The door to every npm script: plain JavaScript without dependencies, so that it runs in a fresh
 * clone. Installs what is missing, then hands over to the TypeScript tool of that name.
 */
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { installMissing } from "../cli/packages.mjs";

const OLDEST = 20;
if (Number.parseInt(process.versions.node, 10) < OLDEST) {
  console.error(`Node ${OLDEST} or newer is wanted, and this is ${process.versions.node}.`);
  process.exit(2);
}

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const [task = "", ...rest] = process.argv.slice(2);
// What a user runs needs no packages for tests; everything else does.
const USER_TASKS = new Set(["start", "build", "libreoffice"]);

if (!installMissing(root, { tests: !USER_TASKS.has(task), say: console.error })) process.exit(1);

// What makes and serves the product, what only tests and measures it, and what makes the samples.
const folders = [["src", "tools"], ["test", "tasks"], ["test", task], ["samples"]];
const tool = folders.map((folder) => join(root, ...folder, `${task}.ts`)).find(existsSync);
if (!tool) {
  console.error(`There is no task called ${task}.`);
  process.exit(2);
}
// Ctrl-C reaches the tool itself, which stops cleanly; whoever ends this process alone ends the tool with it.
const running = spawn(process.execPath, ["--import", "tsx", tool, ...rest], { cwd: root, stdio: "inherit" });
process.on("SIGINT", () => {});
process.on("SIGTERM", () => running.kill("SIGTERM"));
// A shell between npm and this process dies of a signal without passing it on: an orphan would hold the bench's port.
const parent = process.ppid;
if (task === "start") setInterval(() => process.ppid === parent || running.kill("SIGTERM"), 500);
running.once("exit", (status) => process.exit(status ?? 1));
