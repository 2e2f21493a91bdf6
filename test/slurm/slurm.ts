/**
 * `npm run slurm`: the documented hand-over (`shard`, a ledger for each share, one report of all) on Slurm, with two nodes
 * on this machine of which one is killed halfway; findings and report are held against those of a single run.
 * Installs Debian's slurm-wlm where it runs as root; everything else lies in a folder of its own that goes at the end.
 */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { hostname, tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { root } from "../../src/tools/paths.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";
import { filledSheet } from "../compare/filled-sheets.ts";

const SHARES = 4;
const BOOKS = 24;
const PATTERN = "archive/**/*.xlsx";
/** Longest wait for the cluster to start, and for the work, in seconds. */
const [START, WORK] = [60, 900];
const PORTS = { controller: 16_817, nodes: [16_818, 16_819] };
const NODES = ["one", "two"];

const has = (program: string): boolean => spawnSync("sh", ["-c", `command -v ${program}`]).status === 0;

function install(): void {
  if (process.getuid?.() !== 0) throw new Error("Slurm's controller and nodes are started here as root: run this as root");
  if (has("sbatch") && has("munged")) return;
  if (!existsSync("/etc/debian_version")) throw new Error("slurm-wlm is not installed, and is only installed by itself on Debian and its like");
  const args = ["-o", "DPkg::Lock::Timeout=300", "install", "-y", "--no-install-recommends", "slurm-wlm", "munge"];
  spawnSync("apt-get", args, { stdio: "inherit", env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } });
}

/** A controller and two nodes, each a process of ours. */
class Cluster {
  readonly #processes = new Map<string, ChildProcess>();

  constructor(readonly folder: string) {
    const socket = join(folder, "munge.sock");
    const nodes = NODES.map((name, i) => `NodeName=${name} NodeHostname=${hostname()} NodeAddr=127.0.0.1 Port=${PORTS.nodes[i]} CPUs=1 State=UNKNOWN`);
    const settings = [
      ...["ClusterName=crosshatch", `SlurmctldHost=${hostname()}(127.0.0.1)`, `SlurmctldPort=${PORTS.controller}`, "SlurmUser=root"],
      ...["AuthType=auth/munge", `AuthInfo=socket=${socket}`, "CredType=cred/munge", "ProctrackType=proctrack/linuxproc", "TaskPlugin=task/none"],
      ...["MpiDefault=none", "SchedulerType=sched/backfill", "SelectType=select/linear", "JobRequeue=1", "ReturnToService=2", "KillWait=5"],
      ...[`StateSaveLocation=${join(folder, "state")}`, `SlurmdSpoolDir=${join(folder, "spool-%n")}`],
      ...["slurmctld", "slurmd"].map(
        (one) => `${one === "slurmd" ? "SlurmdPidFile" : "SlurmctldPidFile"}=${join(folder, `${one}${one === "slurmd" ? "-%n" : ""}.pid`)}`,
      ),
      ...nodes,
      `PartitionName=shop Nodes=${NODES.join(",")} Default=YES MaxTime=INFINITE State=UP`,
      "",
    ];
    writeFileSync(join(folder, "slurm.conf"), settings.join("\n"));
    writeFileSync(join(folder, "munge.key"), Buffer.alloc(1024, 7));
    chmodSync(join(folder, "munge.key"), 0o600);
    mkdirSync(join(folder, "state"));
    this.#start(
      "munged",
      "--force",
      "--foreground",
      ...["key", "log", "pid", "seed"].map((one) => `--${one}-file=${join(folder, `munge.${one}`)}`),
      `--socket=${socket}`,
    );
  }

  get #env(): NodeJS.ProcessEnv {
    return { ...process.env, SLURM_CONF: join(this.folder, "slurm.conf") };
  }

  #start(program: string, ...args: string[]): ChildProcess {
    const started = spawn(program, args, { env: this.#env, stdio: ["ignore", "ignore", "pipe"] });
    const said: string[] = [];
    started.stderr!.on("data", (piece) => said.push(String(piece)));
    started.once("exit", (code) => code && this.#processes.has(program) && console.error(`${program} ended with ${code}: ${said.join("").slice(-2000)}`));
    this.#processes.set([program, ...args].join(" "), started);
    return started;
  }

  async start(): Promise<void> {
    await setTimeout(1000);
    this.#start("slurmctld", "-D");
    for (const node of NODES) this.#start("slurmd", "-D", "-N", node);
    const until = Date.now() + START * 1000;
    while (this.run("sinfo", "-h", "-t", "idle", "-o", "%D").trim() !== String(NODES.length)) {
      if (Date.now() > until) throw new Error(`the cluster did not start: ${this.run("sinfo", "-R")}`);
      await setTimeout(1000);
    }
  }

  run(program: string, ...args: string[]): string {
    const { stdout, stderr, status } = spawnSync(program, args, { cwd: this.folder, env: this.#env, encoding: "utf8" });
    return status === 0 ? stdout : `${program}: ${stderr}`;
  }

  /** Kills a node and all that it runs of a job, as a cut of its power does: what would tell the controller goes first. The controller is then told. */
  kill(node: string, job: string): number {
    const daemon = this.#processes.get(`slurmd -D -N ${node}`)!.pid!;
    const steps = processes().filter(({ args }) => args.startsWith(`slurmstepd: [${job}.`));
    const killed = [...steps.map(({ pid }) => pid), daemon].flatMap((pid) => [pid, ...descendants(pid)]);
    for (const pid of killed) signal(pid, "SIGSTOP");
    for (const pid of killed) signal(pid, "SIGKILL");
    this.run("scontrol", "update", `nodename=${node}`, "state=down", "reason=killed");
    return killed.length;
  }

  async stop(): Promise<void> {
    this.run("scancel", "-u", "root");
    const running = [...this.#processes.values()];
    this.#processes.clear();
    for (const one of running.reverse()) one.kill("SIGTERM");
    await setTimeout(2000);
    for (const one of running) if (one.exitCode === null && one.signalCode === null) one.kill("SIGKILL");
  }
}

function signal(pid: number, name: NodeJS.Signals): void {
  try {
    process.kill(pid, name);
  } catch {
    // It has ended by itself.
  }
}

const processes = (): { pid: number; parent: number; args: string }[] =>
  spawnSync("ps", ["-eo", "pid=,ppid=,args="], { encoding: "utf8" })
    .stdout.split("\n")
    .flatMap((line) => {
      const [, pid, parent, args] = /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(line) ?? [];
      return pid ? [{ pid: Number(pid), parent: Number(parent), args: args! }] : [];
    });

function descendants(pid: number): number[] {
  const all = processes();
  const under = (one: number): number[] => all.filter(({ parent }) => parent === one).flatMap((child) => [child.pid, ...under(child.pid)]);
  return under(pid);
}

const CROSSHATCH = [process.execPath, join(root, "src", "cli", "crosshatch.mjs")];
const crosshatch = (cwd: string, ...args: string[]): string => {
  const { stdout, stderr, status } = spawnSync(CROSSHATCH[0]!, [CROSSHATCH[1]!, ...args], { cwd, encoding: "utf8", maxBuffer: 1 << 28 });
  if (status !== 0 && status !== 1) throw new Error(`crosshatch ${args.join(" ")} ended with ${status}: ${stderr}`);
  return stdout;
};

/** Findings of ledgers: a line for each file whose check was finished, the last one counts. */
function findingsOf(folder: string, ledgers: readonly string[]): Map<string, unknown> {
  const found = new Map<string, unknown>();
  for (const ledger of ledgers)
    for (const line of readFileSync(join(folder, ledger), "utf8").split("\n"))
      if (line.endsWith('"whole":true}')) {
        const { file, ...rest } = JSON.parse(line) as { file: string; at?: unknown };
        delete rest.at;
        found.set(file, rest);
      }
  return new Map([...found].sort(([a], [b]) => (a < b ? -1 : 1)));
}

const linesIn = (path: string): number => (existsSync(path) ? readFileSync(path, "utf8").split("\n").length - 1 : 0);

install();
const folder = mkdtempSync(join(tmpdir(), "crosshatch-slurm-"));
const cluster = new Cluster(folder);
try {
  mkdirSync(join(folder, "archive", "port"), { recursive: true });
  for (let i = 0; i < BOOKS; i++) {
    const made = await filledSheet({ second: [0.001 * i, 0.02, 0] });
    writeFileSync(join(folder, "archive", i % 2 ? "port" : ".", `engine-${i}.xlsx`), made.bytes ?? writeXlsx(made.book));
  }
  await cluster.start();
  console.log(`${cluster.run("sinfo", "--version").trim()}: a controller and ${NODES.length} nodes on this machine; ${BOOKS} workbooks in ${SHARES} shares`);
  const [node, program] = CROSSHATCH.map((part) => `'${part}'`);
  const tool = `${node} ${program}`;
  writeFileSync(
    join(folder, "share.sh"),
    `#!/bin/bash\n${tool} shard $SLURM_ARRAY_TASK_ID/${SHARES} --null '${PATTERN}' | xargs -0 -r ${tool} check --json --threads 1 --ledger ledger-$SLURM_ARRAY_TASK_ID.ndjson > found-$SLURM_ARRAY_TASK_ID.ndjson\nstatus=$?\n[ $status -eq 123 ] && exit 0\nexit $status\n`,
  );
  console.log(cluster.run("sbatch", "--requeue", `--array=1-${SHARES}`, "-N", "1", "-o", "log-%a", "share.sh").trim());
  const until = Date.now() + WORK * 1000;
  let isKilled = false;
  for (;;) {
    const queue = cluster.run("squeue", "-h", "-r", "-o", "%A %K %N %T");
    if (queue.trim() === "") break;
    if (Date.now() > until) throw new Error(`the work was not done in ${WORK} s:\n${queue}`);
    const [, job, share] = /(\d+) (\d+) two RUNNING/.exec(queue) ?? [];
    const done = share ? linesIn(join(folder, `ledger-${share}.ndjson`)) : 0;
    if (!isKilled && done >= 1) {
      console.log(`Node two killed in share ${share}, with ${done} of its workbooks in the ledger: ${cluster.kill("two", job!)} processes`);
      isKilled = true;
    }
    await setTimeout(200);
  }
  for (const state of cluster.run("scontrol", "show", "job").matchAll(/ArrayTaskId=(\d+)[\s\S]*?JobState=(\w+)[\s\S]*?Restarts=(\d+)/g))
    console.log(`Share ${state[1]}: ${state[2]}, started again ${state[3]} times`);
  if (!isKilled) throw new Error("all was done before a node could be killed: give it more workbooks");
  const ledgers = readdirSync(folder).filter((name) => /^ledger-\d+\.ndjson$/.test(name));
  writeFileSync(join(folder, "all.ndjson"), ledgers.map((name) => readFileSync(join(folder, name), "utf8")).join(""));
  crosshatch(folder, "check", "--json", "--ledger", "single.ndjson", PATTERN);
  const [shared, single] = [findingsOf(folder, ledgers), findingsOf(folder, ["single.ndjson"])];
  const reports = ["all", "single"].map((name) => {
    crosshatch(folder, "check", "--json", "--ledger", `${name}.ndjson`, "--report", "report.html", "--force", PATTERN);
    return readFileSync(join(folder, "report.html"), "utf8").replaceAll(`${name}.ndjson`, "LEDGER");
  });
  const sameFindings = JSON.stringify([...shared]) === JSON.stringify([...single]);
  console.log(
    `${shared.size} workbooks in ${ledgers.length} ledgers, ${single.size} in that of a single run: findings ${sameFindings ? "the same" : "DIFFER"}`,
  );
  console.log(`One report of all shares and that of the single run: ${reports[0] === reports[1] ? "the same" : "DIFFER"} (${reports[0]!.length} characters)`);
  if (!sameFindings || shared.size !== BOOKS || reports[0] !== reports[1]) process.exitCode = 1;
} finally {
  await cluster.stop();
  if (process.exitCode !== 1 || !process.env.KEEP) rmSync(folder, { recursive: true, force: true });
}
