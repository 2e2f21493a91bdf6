import { type ChildProcess, type ChildProcessWithoutNullStreams, spawn } from "node:child_process";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { root } from "../../src/tools/paths.ts";

interface Ended {
  code: number | null;
  out: string;
  err: string;
}

interface Running {
  process: ChildProcess;
  ended: Promise<Ended>;
  /** Settles when this has been printed. */
  said(text: RegExp): Promise<RegExpExecArray>;
}

const env = { ...process.env, NODE_OPTIONS: "" };
const run = (...args: string[]): Running => watched(spawn(process.execPath, ["--import", "tsx", "src/tools/start.ts", ...args], { cwd: root, env }));

function watched(child: ChildProcessWithoutNullStreams): Running {
  let out = "";
  let err = "";
  child.stdout.on("data", (piece) => {
    out += piece;
  });
  child.stderr.on("data", (piece) => {
    err += piece;
  });
  const ended = new Promise<Ended>((resolve) => child.on("close", (code) => resolve({ code, out, err })));
  const said = async (text: RegExp) => {
    for (let turn = 0; turn < 600; turn++) {
      const found = text.exec(out);
      if (found) return found;
      if (child.exitCode !== null) break;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    throw new Error(`It said:\n${out}\n${err}`);
  };
  return { process: child, ended, said };
}

test.each(["SIGINT", "SIGTERM"] as const)(
  "it prints its address, answers there, and stops cleanly on %s",
  async (signal) => {
    const bench = run("--port", "0", "--no-open");
    const [, url] = await bench.said(/The bench is open at (http:\/\/127\.0\.0\.1:\d+\/)/);
    const page = await fetch(url!);
    expect(await page.text()).toContain("<title>Crosshatch bench</title>");
    bench.process.kill(signal);
    const { code, out, err } = await bench.ended;
    // On Windows a signal ends a process at once, without its last words.
    if (process.platform !== "win32") expect([code, err, out.trimEnd().endsWith("The bench is closed.")]).toEqual([0, "", true]);
  },
  60_000,
);

// Windows has no such shell between npm and what it starts.
(process.platform === "win32" ? test.skip : test)(
  "it ends with the shell that npm has started it by",
  async () => {
    const command = [process.execPath, "src/tools/run.mjs", "start", "--port", "0", "--no-open"];
    const bench = watched(spawn("/bin/sh", ["-c", '"$0" "$@"; exit $?', ...command], { cwd: root, env: { ...env, npm_command: "start" } }));
    await bench.said(/The bench is open at/);
    bench.process.kill("SIGTERM");
    // The streams are closed once all that write to them have ended.
    expect((await bench.ended).out.trimEnd()).toMatch(/The bench is closed\.$/);
  },
  60_000,
);

test("a port that is taken ends it with one sentence", async () => {
  const other = createServer().listen(0, "127.0.0.1");
  await new Promise((resolve) => other.once("listening", resolve));
  const { port } = other.address() as AddressInfo;
  const { code, err } = await run("--port", String(port), "--no-open").ended;
  other.close();
  expect(code).toBe(1);
  expect(err).toBe(`Port ${port} is taken by another program: stop it, or choose another port with --port (--port 0 takes any free one).\n`);
}, 60_000);

test.each([
  [["--port", "99999"], '--port must be a number from 0 to 65535, not "99999".'],
  [["--port", "eighty"], '--port must be a number from 0 to 65535, not "eighty".'],
  [["--prot", "1"], "Unknown option '--prot'"],
])(
  "%j is refused with the usage",
  async (args, sentence) => {
    const { code, err } = await run(...args).ended;
    expect(code).toBe(2);
    expect(err).toContain(sentence);
    expect(err).toContain("npm start -- [FILE] [--port N] [--no-open]");
  },
  60_000,
);
