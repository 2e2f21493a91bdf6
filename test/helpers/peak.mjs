import { readFileSync } from "node:fs";

/**
 * The most memory that this process took so far, in bytes. On Linux the system's own sum begins with what
 * the process that started it had, so there it is asked for the memory of this program itself.
 */
export function peakBytes() {
  const own = process.platform === "linux" ? /VmHWM:\s*(\d+) kB/.exec(readFileSync("/proc/self/status", "utf8")) : null;
  return 1024 * (own ? Number(own[1]) : process.resourceUsage().maxRSS);
}
