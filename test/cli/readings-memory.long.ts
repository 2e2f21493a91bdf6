import { spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "../../src/tools/paths.ts";
import { builtProgram } from "./run.ts";

// Two million rows go through a process of its own, and the machine may be busy.
import.meta.jest.setTimeout(120_000);

/** What is to do for any number of readings: the aim for ten million. Measured, it is about 140 MB, for them as for these. */
const MOST_BYTES = 200e6;

const HEAD = "engine,cylinder,characteristic,position,value,lower,upper,unit,uncertainty\n";
const PLACES = ["top thrust", "top pin", "middle thrust", "middle pin", "bottom thrust", "bottom pin"];

/** Bores of one engine after the other, the last reading of each over its limit where `every` says so. */
function* pieces(rows: number, isOver: (row: number) => boolean): Generator<string> {
  yield HEAD;
  let text = "";
  for (let row = 0; row < rows; row++) {
    const value = isOver(row) ? 73.09 : (73_005 + ((row * 31) % 70)) / 1000;
    text += `E${Math.floor(row / 18)},${1 + (Math.floor(row / 6) % 3)},bore,${PLACES[row % 6]},${value.toFixed(3)},73,73.08,mm,0.004\n`;
    if (text.length < 1 << 18) continue;
    yield text;
    text = "";
  }
  yield text;
}

/** Says at its end how much memory the program took at the most. */
const TELLS = `import { peakBytes } from "${pathToFileURL(join(root, "test", "helpers", "peak.mjs"))}";
process.on("exit", () => process.stderr.write(String(peakBytes())));`;

/** The most memory that the program took, in bytes, and its last line. */
async function peakOf(rows: number, isOver: (row: number) => boolean): Promise<{ bytes: number; total: unknown }> {
  const args = ["--import", `data:text/javascript,${encodeURIComponent(TELLS)}`, join(await builtProgram(), "crosshatch.js"), "check", "-", "--json"];
  const child = spawn(process.execPath, args, { env: { ...process.env, NODE_OPTIONS: "" } });
  let last = "";
  let err = "";
  child.stdout.on("data", (chunk: Buffer) => {
    last = (last + chunk.toString()).slice(-1000);
  });
  child.stderr.on("data", (chunk: Buffer) => {
    err += chunk.toString();
  });
  for (const piece of pieces(rows, isOver)) if (!child.stdin.write(piece)) await once(child.stdin, "drain");
  child.stdin.end();
  await once(child, "close");
  return { bytes: Number(err), total: JSON.parse(last.trim().split("\n").at(-1)!) };
}

test("two million readings, and many findings, take no more memory than is said for any number", async () => {
  const few = await peakOf(2_000_000, (row) => row % 1000 === 999);
  expect(few.total).toMatchObject({ rowsIn: 2_000_000, findings: 2000 });
  expect(few.bytes).toBeLessThan(MOST_BYTES);
  const many = await peakOf(150_000, () => true);
  expect(many.total).toMatchObject({ rowsIn: 150_000, findings: 150_000 });
  expect(many.bytes).toBeLessThan(MOST_BYTES);
});
