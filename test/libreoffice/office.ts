import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { chmodSync, copyFileSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { pathToFileURL } from "node:url";
import { root } from "../../src/tools/paths.ts";

/** Where the programs are that the tests drive, or why they cannot be driven. */
export interface Programs {
  soffice: string;
  unopkg: string;
  python: string;
}

/** `nobody`: unopkg refuses root. */
const ORDINARY = { uid: 65534, gid: 65534 };
const isRoot = process.getuid?.() === 0;

const runs = (command: string, args: readonly string[]): boolean => spawnSync(command, args, { stdio: "ignore" }).status === 0;

export function programs(): Programs | string {
  const soffice = [
    process.env.SOFFICE_PATH,
    "soffice",
    "/Applications/LibreOffice.app/Contents/MacOS/soffice",
    "C:\\Program Files\\LibreOffice\\program\\soffice.com",
  ].find((one) => one && runs(one, ["--version"]));
  if (!soffice) return "LibreOffice is not installed";
  const unopkg = soffice.replace(/soffice(?=\.com$|$)/, "unopkg");
  const python = [soffice.replace(/soffice(?:\.com)?$/, "python"), soffice.replace(/MacOS\/soffice$/, "Resources/python"), "/usr/bin/python3", "python3"].find(
    (one) => runs(one, ["-c", "import uno"]),
  );
  if (!python) return "LibreOffice is installed, but no Python that can talk to it (Debian: python3-uno)";
  return { soffice, unopkg, python };
}

/** The office program with the extension, in a profile of its own. */
export class Office {
  /** What the office program can read and write; goes when it is closed. */
  readonly folder: string;
  readonly #programs: Programs;
  #process: ChildProcess | undefined;
  #driver: ChildProcess | undefined;
  #answers: AsyncIterator<string> | undefined;

  constructor(programs: Programs) {
    this.#programs = programs;
    this.folder = mkdtempSync(join(tmpdir(), "crosshatch-libreoffice-"));
    chmodSync(this.folder, 0o777);
  }

  get #profile(): string {
    return `-env:UserInstallation=${pathToFileURL(join(this.folder, "profile")).href}`;
  }

  #options(env: NodeJS.ProcessEnv) {
    return { cwd: this.folder, env: { ...process.env, HOME: this.folder, NODE_OPTIONS: "", ...env }, ...(isRoot ? ORDINARY : {}) };
  }

  /** A file that the office program may read. */
  take(file: string, name: string): string {
    const path = join(this.folder, name);
    copyFileSync(file, path);
    chmodSync(path, 0o666);
    return path;
  }

  /** The same of bytes. */
  put(name: string, bytes: Uint8Array): string {
    const path = join(this.folder, name);
    writeFileSync(path, bytes);
    chmodSync(path, 0o777);
    return path;
  }

  add(extension: string): void {
    const copy = this.take(extension, "crosshatch.oxt");
    const { status, stderr } = spawnSync(this.#programs.unopkg, ["add", "--suppress-license", "--force", this.#profile, copy], {
      ...this.#options({}),
      encoding: "utf8",
    });
    if (status !== 0) throw new Error(`unopkg add ended with ${status}: ${stderr}`);
  }

  async start(env: NodeJS.ProcessEnv = {}): Promise<void> {
    const pipe = `crosshatch${process.pid}`;
    const args = [this.#profile, "--headless", "--norestore", "--nologo", `--accept=pipe,name=${pipe};urp;`];
    this.#process = spawn(this.#programs.soffice, args, { ...this.#options(env), stdio: "ignore" });
    this.#driver = spawn(this.#programs.python, ["-B", this.take(join(root, "test", "libreoffice", "driver.py"), "driver.py"), pipe], {
      ...this.#options({}),
      stdio: ["pipe", "pipe", "inherit"],
    });
    this.#answers = createInterface({ input: this.#driver.stdout! })[Symbol.asyncIterator]();
    await this.#answer();
  }

  /** Has the driver do something and gives what comes of it. */
  async ask<T = unknown>(what: string, given: object = {}): Promise<T> {
    this.#driver!.stdin!.write(`${JSON.stringify({ do: what, ...given })}\n`);
    return (await this.#answer()) as T;
  }

  async #answer(): Promise<unknown> {
    const { value, done } = await this.#answers!.next();
    if (done) throw new Error("the driver has ended");
    const { gives, fault } = JSON.parse(value) as { gives?: unknown; fault?: string };
    if (fault) throw new Error(fault);
    return gives;
  }

  /** Ends the office program as its user does. */
  async stop(): Promise<void> {
    if (this.#process?.exitCode !== null) return;
    const ended = new Promise((resolve) => this.#process?.once("exit", resolve));
    await this.ask("quit").catch(() => {});
    this.#driver?.stdin?.end();
    const late = setTimeout(() => this.#process?.kill("SIGKILL"), 20_000).unref();
    await ended;
    clearTimeout(late);
  }

  async close(): Promise<void> {
    await this.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** The processes of Node that run our functions for it. */
  children(): number[] {
    const { stdout } = spawnSync("ps", ["-eo", "pid=,stat=,args="], { encoding: "utf8" });
    const own = stdout.split("\n").filter((line) => line.includes(this.folder) && line.includes("functions.js") && !/^\s*\d+\s+Z/.test(line));
    return own.map((line) => Number.parseInt(line, 10));
  }
}
