import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { PORT, ServerRefusal, serve } from "./bench-server.ts";
import { ALL_WELL, Refusal } from "./exit-codes.ts";
import { print } from "./output.ts";
import { whyUnread, workbookBytes } from "./read-file.ts";

export interface BenchOptions {
  port?: string;
  /** `--no-open` makes it false. */
  open: boolean;
}

/** `crosshatch bench`: serves the bench that was built beside this program, until it is stopped. */
export async function bench(file: string | undefined, { port, open }: BenchOptions): Promise<number> {
  const folder = fileURLToPath(new URL("../bench", import.meta.url));
  if (!existsSync(join(folder, "index.html"))) throw new Refusal("the bench is not built here: in a clone `npm start` builds and opens it");
  try {
    await openBench(folder, { port: portFrom(port), open, file }, print);
  } catch (reason) {
    if (reason instanceof ServerRefusal) throw new Refusal(reason.message);
    throw reason;
  }
  return ALL_WELL;
}

/** A port as it was typed. */
export function portFrom(text = String(PORT)): number {
  if (!/^\d{1,5}$/.test(text) || Number(text) > 65_535) throw new Refusal(`--port must be a number from 0 to 65535, not ${JSON.stringify(text)}.`);
  return Number(text);
}

/** How the bench is to be opened: the workbook in it is the sample where no file is named. */
interface BenchWish {
  port: number;
  open: boolean;
  file?: string | undefined;
}

async function given(file: string): Promise<{ name: string; bytes: Buffer }> {
  try {
    return { name: basename(file), bytes: await workbookBytes(file) };
  } catch (error) {
    throw new Refusal(`${file} ${whyUnread(error)}`);
  }
}

/** Serves the bench in a folder to this machine and opens it in the browser; settles once it has been stopped. */
export async function openBench(folder: string, { port, open, file }: BenchWish, say: (text: string) => void): Promise<void> {
  const server = await serve(folder, port, file === undefined ? undefined : await given(file));
  say(`The bench is open at ${server.url}\nCtrl-C stops it.`);
  if (open) openBrowser(server.url, say);
  await new Promise((stop) => {
    process.once("SIGINT", stop);
    process.once("SIGTERM", stop);
    // The shell between npx and this process dies of a signal without passing it on: an orphan would hold the port.
    const parent = process.ppid;
    if (process.env.npm_command !== undefined) setInterval(() => process.ppid === parent || stop(undefined), 500).unref();
  });
  say("\nThe bench is closed.");
  await server.close();
}

/** How each system opens an address in the browser that its user has chosen. */
function browserCommand(url: string): [command: string, args: string[]] {
  if (process.platform === "win32") return ["cmd", ["/c", "start", "", url]];
  return [process.platform === "darwin" ? "open" : "xdg-open", [url]];
}

function openBrowser(url: string, say: (text: string) => void): void {
  const [command, args] = browserCommand(url);
  const opening = spawn(command, args, { stdio: "ignore", detached: true });
  opening.once("error", () => say("No browser could be started from here: open the address yourself."));
  opening.unref();
}
