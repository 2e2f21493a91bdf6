/** `npm start`: builds the bench, serves it to this machine and opens it in the browser. */
import { spawn } from "node:child_process";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { PORT, ServerRefusal, serve } from "../bench/server.ts";
import { buildBench } from "./build-bench.ts";
import { root } from "./paths.ts";

const USAGE = `npm start -- [--port N] [--no-open]
  --port N    the port of the bench on this machine, ${PORT} unless told; 0 takes any free one
  --no-open   do not open a browser`;

interface Wish {
  port: number;
  open: boolean;
}

class WrongArguments extends Error {}

function wishOf(args: string[]): Wish {
  let values: { port?: string | undefined; "no-open"?: boolean | undefined };
  try {
    ({ values } = parseArgs({ args, options: { port: { type: "string" }, "no-open": { type: "boolean" } } }));
  } catch (reason) {
    throw new WrongArguments((reason as Error).message);
  }
  const { port = String(PORT) } = values;
  if (!/^\d{1,5}$/.test(port) || Number(port) > 65_535) throw new WrongArguments(`--port wants a number from 0 to 65535, not ${JSON.stringify(port)}.`);
  return { port: Number(port), open: values["no-open"] !== true };
}

/** How each system opens an address in the browser that its user has chosen. */
function browserCommand(url: string): [command: string, args: string[]] {
  if (process.platform === "win32") return ["cmd", ["/c", "start", "", url]];
  return [process.platform === "darwin" ? "open" : "xdg-open", [url]];
}

function openBrowser(url: string): void {
  const [command, args] = browserCommand(url);
  const opening = spawn(command, args, { stdio: "ignore", detached: true });
  opening.once("error", () => console.log("No browser could be started from here: open the address yourself."));
  opening.unref();
}

async function start(args: string[]): Promise<void> {
  const { port, open } = wishOf(args);
  const folder = join(root, "dist", "bench");
  await buildBench(folder);
  const server = await serve(folder, port);
  console.log(`The bench is open at ${server.url}\nCtrl-C stops it.`);
  const stop = () => {
    console.log("\nThe bench is closed.");
    void server.close();
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
  if (open) openBrowser(server.url);
}

try {
  await start(process.argv.slice(2));
} catch (reason) {
  if (reason instanceof WrongArguments) console.error(`${reason.message}\n${USAGE}`);
  else if (reason instanceof ServerRefusal) console.error(reason.message);
  else throw reason;
  process.exitCode = reason instanceof WrongArguments ? 2 : 1;
}
