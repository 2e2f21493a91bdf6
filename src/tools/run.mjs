/**
 * The door to every npm script: plain JavaScript without dependencies, so that it runs in a fresh
 * clone. Installs what is missing, then hands over to the TypeScript tool of that name.
 */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const OLDEST = 20;
if (Number.parseInt(process.versions.node, 10) < OLDEST) {
  console.error(`Node ${OLDEST} or newer is wanted, and this is ${process.versions.node}.`);
  process.exit(2);
}

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const [task = "", ...rest] = process.argv.slice(2);
// What a user runs needs no development packages; everything else does.
const USER_TASKS = new Set(["start", "build", "libreoffice"]);

const manifest = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
const lock = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8"));
const userTask = USER_TASKS.has(task);
const needed = { ...manifest.dependencies, ...(userTask ? {} : manifest.devDependencies) };

/** A package counts as installed when the version that the lock file names is there. */
function isInstalled(name) {
  const file = join(root, "node_modules", name, "package.json");
  return existsSync(file) && JSON.parse(readFileSync(file, "utf8")).version === lock.packages[`node_modules/${name}`]?.version;
}

const missing = Object.keys(needed).filter((name) => !isInstalled(name));
if (missing.length > 0) {
  console.error(`Installing ${missing.length} missing package${missing.length === 1 ? "" : "s"} …`);
  const hasOthers = existsSync(join(root, "node_modules"));
  // `npm ci` empties node_modules first, so an existing folder is completed by `npm install` instead.
  const args = [hasOthers ? "install" : "ci", "--no-audit", "--no-fund", "--no-save", ...(userTask && !hasOthers ? ["--omit=dev"] : [])];
  const npm = process.env.npm_execpath;
  const installed = npm
    ? spawnSync(process.execPath, [npm, ...args], { cwd: root, stdio: ["ignore", 2, 2] })
    : spawnSync("npm", args, { cwd: root, stdio: ["ignore", 2, 2], shell: process.platform === "win32" });
  if (installed.status !== 0) {
    console.error("The packages could not be installed; see the lines above. Without network, install once where there is one.");
    process.exit(1);
  }
}

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
