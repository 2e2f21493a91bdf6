import * as system from "node:fs";
import { type Files, SafeFile } from "../../src/cli/safe-file.ts";

/**
 * Writes a file as a process of its own that is killed before one of its steps: `out`, what to write,
 * whether to overwrite, and before which step, counted from 1. Without dying it prints its steps.
 */
const [, , out, content, force, last] = process.argv as [string, string, string, string, string, string];
const steps: string[] = [];

const files = new Proxy(system, {
  get(from, name: keyof Files) {
    const step = from[name] as (...given: unknown[]) => unknown;
    if (typeof step !== "function") return step;
    return (...given: unknown[]) => {
      if (steps.push(name) === Number(last)) {
        process.kill(process.pid, "SIGKILL");
        Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0);
      }
      // Half of what is asked for, as a slow disk may take it: the steps lie within the content too.
      if (name === "writeSync") {
        const [file, bytes, done] = given as [number, Uint8Array, number];
        return system.writeSync(file, bytes, done, Math.min(4, bytes.length - done));
      }
      return step(...given);
    };
  },
});

const file = new SafeFile(out, force === "force", files);
file.write(content.slice(0, 5));
file.write(content.slice(5));
file.close();
console.log(steps.join(" "));
