/** `npm start`: builds the bench, serves it to this machine and opens it in the browser. */
import { join } from "node:path";
import { parseArgs } from "node:util";
import { PORT, ServerRefusal } from "../bench/server.ts";
import { openBench, portFrom } from "../cli/bench-command.ts";
import { Refusal } from "../cli/exit-codes.ts";
import { buildBench } from "./build-bench.ts";
import { root } from "./paths.ts";

const USAGE = `npm start -- [--port N] [--no-open]
  --port N    the port of the bench on this machine, ${PORT} unless told; 0 takes any free one
  --no-open   do not open a browser`;

function wishOf(args: string[]): { port: number; open: boolean } {
  let values: { port?: string | undefined; "no-open"?: boolean | undefined };
  try {
    ({ values } = parseArgs({ args, options: { port: { type: "string" }, "no-open": { type: "boolean" } } }));
  } catch (reason) {
    throw new Refusal((reason as Error).message);
  }
  return { port: portFrom(values.port), open: values["no-open"] !== true };
}

try {
  const wish = wishOf(process.argv.slice(2));
  const folder = join(root, "dist", "bench");
  await buildBench(folder);
  await openBench(folder, wish, (text) => console.log(text));
} catch (reason) {
  if (reason instanceof Refusal) console.error(`${reason.message}\n${USAGE}`);
  else if (reason instanceof ServerRefusal) console.error(reason.message);
  else if ((reason as NodeJS.ErrnoException).syscall !== undefined)
    console.error(`The bench cannot be built, as nothing can be written to ${join(root, "dist")} (${(reason as NodeJS.ErrnoException).code}).`);
  else throw reason;
  process.exitCode = reason instanceof Refusal ? 2 : 1;
}
