import { Session } from "node:inspector/promises";
import { basename } from "node:path";

/** Where the time of one piece of work goes. */
export interface Profile {
  of: string;
  /** Functions by the time that is spent in themselves, the longest first, as shares of the whole. */
  self: { where: string; share: number }[];
}

export interface CpuProfile {
  nodes: { id: number; callFrame: { functionName: string; url: string; lineNumber: number } }[];
  samples?: number[];
  timeDeltas?: number[];
}

const LINES = 12;

/** Microseconds between two looks at what runs. */
const INTERVAL = 200;
/** Not work: waiting, and the profiler's own coming and going. */
const BESIDE = new Set(["(idle)", "dispatch"]);

/** Runs the work some times more under the profiler. */
export async function profiled(of: string, work: () => unknown, times = 1): Promise<Profile> {
  const session = new Session();
  session.connect();
  await session.post("Profiler.enable");
  await session.post("Profiler.setSamplingInterval", { interval: INTERVAL });
  await session.post("Profiler.start");
  for (let i = 0; i < times; i++) await work();
  const { profile } = await session.post("Profiler.stop");
  session.disconnect();
  return { of, self: selfTimes(profile).self };
}

/** `busy` counts microseconds. */
export function selfTimes({ nodes, samples = [], timeDeltas = [] }: CpuProfile): Pick<Profile, "self"> & { busy: number } {
  const names = new Map(nodes.map(({ id, callFrame }) => [id, nameOf(callFrame)]));
  const times = new Map<string, number>();
  let total = 0;
  for (const [i, id] of samples.entries()) {
    const name = names.get(id) ?? "";
    const time = timeDeltas[i] ?? 0;
    if (BESIDE.has(name)) continue;
    times.set(name, (times.get(name) ?? 0) + time);
    total += time;
  }
  const sorted = [...times].sort((a, b) => b[1] - a[1]).slice(0, LINES);
  return { self: sorted.map(([where, time]) => ({ where, share: time / total })), busy: total };
}

function nameOf({ functionName, url, lineNumber }: CpuProfile["nodes"][number]["callFrame"]): string {
  const name = functionName || "(anonymous)";
  return url ? `${name} — ${basename(url)}:${lineNumber + 1}` : name;
}
