import { createReadStream, readFileSync } from "node:fs";
import { basename, extname } from "node:path";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { checkCsv } from "../../src/check/csv/check-csv.ts";
import { openWorkbook, UnreadableFile } from "../../src/hosts/file.ts";
import { storedLayout } from "../../src/layout/mapping.ts";
import { peakBytes } from "../helpers/peak.mjs";
import type { Came } from "./door.ts";

for (const way of ["log", "info", "warn", "error", "debug"] as const) console[way] = () => {};

async function come(path: string): Promise<Omit<Came, "seconds" | "megabytes">> {
  try {
    if (extname(path) === ".csv") {
      const { findings, unread, rowsIn, checked, refused } = await checkCsv(createReadStream(path), { name: basename(path) });
      return { counts: { rowsIn, checked, refused }, findings: findings.slice(0, 20).map(({ sentence }) => sentence), ...(unread ? { refused: unread } : {}) };
    }
    const host = await openWorkbook(readFileSync(path), basename(path));
    const snapshot = await host.read();
    const { mapping, notes } = await storedLayout(host);
    const { findings, rowsIn, checked, refused } = checkWorkbook(snapshot, mapping);
    return {
      counts: { rowsIn, checked, refused },
      findings: findings.slice(0, 20).map(({ label, sentence }) => `${label}: ${sentence}`),
      notes: [...host.notes(), ...notes].slice(0, 5),
      first: snapshot.sheets[0]?.values[0]?.[0] ?? null,
      sheets: snapshot.sheets.slice(0, 5).map(({ name }) => name),
    };
  } catch (error) {
    return error instanceof UnreadableFile ? { refused: error.reason } : { fault: String(error instanceof Error ? error.stack : error) };
  }
}

function secondsSince(before: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

/** What `yardstick` took on the machine for which the bounds are meant; slower ones, and busy ones, take longer for everything. */
const USUAL = 0.5;
/** Less is within every bound on any machine. */
const LITTLE = 5;

/** Seconds of a fixed piece of work that is like reading a sheet. */
function yardstick(): number {
  const before = process.cpuUsage();
  const text = '<c r="A1" s="1"><v>73.02</v></c>'.repeat(200_000);
  for (let round = 0; round < 8; round++) for (const _ of text.matchAll(/<[^>]*>/g));
  return secondsSince(before);
}

process.on("message", async (path: string) => {
  const before = process.cpuUsage();
  const came = await come(path);
  const megabytes = peakBytes() / 2 ** 20;
  const seconds = secondsSince(before);
  process.send!({ ...came, megabytes, seconds: seconds < LITTLE ? seconds : seconds / Math.max(1, yardstick() / USUAL) });
});
