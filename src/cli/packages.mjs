/**
 * Installs in a clone what is missing there. Plain JavaScript without dependencies, as it runs before anything is installed.
 */
import { spawnSync } from "node:child_process";
import { accessSync, constants, existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

/**
 * The packages of the clone in folder `root`: for whoever uses it those that the product is built from and needs when it runs
 * (`builtFrom` and `dependencies` in package.json), with `tests` those for tests as well. True once they are there.
 */
export function installMissing(root, { tests, say }) {
  const read = (...path) => JSON.parse(readFileSync(join(root, ...path), "utf8"));
  const { dependencies, devDependencies, builtFrom } = read("package.json");
  const { packages } = read("package-lock.json");
  /** A package counts as installed when the version that the lock file names is there. */
  const isInstalled = (name) =>
    existsSync(join(root, "node_modules", name, "package.json")) &&
    read("node_modules", name, "package.json").version === packages[`node_modules/${name}`]?.version;
  const used = { ...dependencies, ...Object.fromEntries(builtFrom.map((name) => [name, devDependencies[name]])) };
  const missing = Object.keys(tests ? { ...dependencies, ...devDependencies } : used).filter((name) => !isInstalled(name));
  if (missing.length === 0) return true;
  try {
    accessSync(root, constants.W_OK);
  } catch ({ code }) {
    say(`The packages that are missing cannot be installed, as nothing can be written to ${root} (${code}).`);
    return false;
  }
  say(`Installing ${missing.length} missing package${missing.length === 1 ? "" : "s"} …`);
  // Where those for tests are, they stay. `npm ci` empties node_modules first, so an existing folder is completed by `npm install` instead.
  const whole = tests || Object.keys(devDependencies).some((name) => !builtFrom.includes(name) && isInstalled(name));
  const some = Object.entries(used).map(([name, version]) => `${name}@${version}`);
  // Of those that are asked for by name npm would remark, one by one, that another list has them.
  const asked = ["install", "--no-save", "--save-prod", "--omit=dev", "--loglevel=error", ...some];
  const args = whole ? [existsSync(join(root, "node_modules")) ? "install" : "ci", "--no-save"] : asked;
  const npm = process.env.npm_execpath;
  const [command, first] = npm?.endsWith("npm-cli.js") ? [process.execPath, [npm]] : ["npm", []];
  const options = { cwd: root, stdio: ["ignore", 2, 2], shell: command === "npm" && process.platform === "win32" };
  if (spawnSync(command, [...first, ...args, "--no-audit", "--no-fund"], options).status === 0) return true;
  say("The packages could not be installed; see the lines above. Without network, install once where there is one.");
  return false;
}
