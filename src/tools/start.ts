/** `npm start`: builds the bench where something of it has changed, serves it to this machine and opens it in the browser. */
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { openBench, portFrom } from "../cli/bench-command.ts";
import { PORT, ServerRefusal } from "../cli/bench-server.ts";
import { Refusal } from "../cli/exit-codes.ts";
import { freshBench } from "./fresh-bench.ts";
import { root } from "./paths.ts";

const USAGE = `npm start -- [FILE] [--port N] [--no-open]
  FILE        a workbook (.xlsx) to be opened; without one the sample
  --port N    the port of the bench on this machine, ${PORT} unless told; 0 takes any free one
  --no-open   do not open a browser`;

function wishOf(args: string[]): Parameters<typeof openBench>[1] {
  let values: { port?: string | undefined; "no-open"?: boolean | undefined };
  let files: string[];
  try {
    ({ values, positionals: files } = parseArgs({ args, options: { port: { type: "string" }, "no-open": { type: "boolean" } }, allowPositionals: true }));
  } catch (reason) {
    throw new Refusal((reason as Error).message);
  }
  if (files.length > 1) throw new Refusal(`One workbook can be opened, not ${files.length}.`);
  return { port: portFrom(values.port), open: values["no-open"] !== true, file: files[0] && resolve(process.env.INIT_CWD ?? "", files[0]) };
}

try {
  const wish = wishOf(process.argv.slice(2));
  const folder = join(root, "dist", "bench");
  await freshBench(folder);
  await openBench(folder, wish, (text) => console.log(text));
} catch (reason) {
  if (reason instanceof Refusal) console.error(`${reason.message}\n${USAGE}`);
  else if (reason instanceof ServerRefusal) console.error(reason.message);
  else if ((reason as NodeJS.ErrnoException).syscall !== undefined)
    console.error(`The bench cannot be built, as nothing can be written to ${join(root, "dist")} (${(reason as NodeJS.ErrnoException).code}).`);
  else throw reason;
  process.exitCode = reason instanceof Refusal ? 2 : 1;
}
