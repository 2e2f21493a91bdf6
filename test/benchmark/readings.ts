import { once } from "node:events";
import { createWriteStream } from "node:fs";
import { join } from "node:path";
import { finished } from "node:stream/promises";
import type { BenchmarkGroup } from "./benchmark-group.ts";
import { ratioLine, type Timing, together } from "./measure.ts";
import { inFolder, onProcessors, type Program, profileOf, run, succeeds } from "./programs.ts";

const ROWS = 1_000_000;
const WHAT = "check of 1 000 000 readings as CSV";
const PLACES = ["top thrust", "top pin", "middle thrust", "middle pin", "bottom thrust", "bottom pin"];

/** A line's stream of bores: about one reading in fifty is outside its limits, or too near to be proven. */
async function writeReadings(path: string): Promise<void> {
  const out = createWriteStream(path);
  out.write("engine,cylinder,characteristic,position,value,lower,upper,unit,uncertainty\n");
  let lines = "";
  for (let row = 0; row < ROWS; row++) {
    const value = (73_010 + ((row * 31) % 63)) / 1000;
    lines += `E${1 + Math.floor(row / 18)},${1 + (Math.floor(row / 6) % 3)},bore,${PLACES[row % 6]},${value.toFixed(3)},73,73.074,mm,0.003\n`;
    if (lines.length > 1 << 16) {
      if (!out.write(lines)) await once(out, "drain");
      lines = "";
    }
  }
  out.end(lines);
  await finished(out);
}

/** The same verdicts (ISO 14253-1) by DuckDB, what is not within listed as lines of JSON. Run by Node in a process of its own. */
const query = (input: string, output: string): string => `
  import { DuckDBInstance } from "@duckdb/node-api";
  const instance = await DuckDBInstance.create(":memory:", { threads: "1" });
  const connection = await instance.connect();
  await connection.run(\`COPY (SELECT * FROM (SELECT *, CASE
      WHEN value - (upper + coalesce(uncertainty, 0)) > 5e-10 THEN 'over'
      WHEN (lower - coalesce(uncertainty, 0)) - value > 5e-10 THEN 'under'
      WHEN value - (upper - coalesce(uncertainty, 0)) > 5e-10 THEN 'not proven'
      WHEN (lower + coalesce(uncertainty, 0)) - value > 5e-10 THEN 'not proven'
      ELSE 'within' END AS verdict
    FROM read_csv('${input}', header = true)) WHERE verdict <> 'within') TO '${output}' (FORMAT json)\`);
  const found = await connection.runAndReadAll(\`SELECT verdict, count(*) FROM read_json('${output}', format = 'newline_delimited') GROUP BY verdict ORDER BY verdict\`);
  console.log(JSON.stringify(found.getRows().map(([verdict, count]) => [verdict, Number(count)])));
`;

/** Readings checked by the whole command, on one processor against DuckDB on one thread. */
export async function readings(program: string): Promise<BenchmarkGroup> {
  const probe: Program = { command: process.execPath, args: ["--input-type=module", "-e", 'await import("@duckdb/node-api")'] };
  if (!succeeds(probe)) return { lines: [{ what: WHAT, measured: "–", yardstick: "DuckDB is not installed", unit: "×" }], profiles: [] };
  return inFolder(async (folder) => {
    const [input, output] = ["readings.csv", "found.ndjson"].map((name) => join(folder, name).replaceAll("\\", "/")) as [string, string];
    await writeReadings(input);
    const check: Program = { command: process.execPath, args: [program, "check", input, "--json", "--as-found"] };
    const duck: Program = { command: process.execPath, args: ["--input-type=module", "-e", query(input, output)] };
    const [one, duckOne] = [onProcessors(1, check), onProcessors(1, duck)];
    agree(run(check, [1]), run(duck));
    if (!one || !duckOne) {
      const [ours, theirs] = (await together([() => run(check, [1]), () => run(duck)])) as [Timing, Timing];
      const why = "processors cannot be set aside here; DuckDB on one thread";
      return { lines: [{ ...ratioLine(`${WHAT} (${why})`, ours, theirs) }], profiles: [] };
    }
    const [ours, theirs] = (await together([() => run(one, [1]), () => run(duckOne)])) as [Timing, Timing];
    const against = `${WHAT}, the whole command on one processor; the same verdicts by DuckDB on one thread`;
    return { lines: [ratioLine(against, ours, theirs, { aim: 1.5, profile: WHAT })], profiles: [profileOf(WHAT, folder, check.args, [1])] };
  });
}

/** Stops a comparison of different things: both must come to the same verdicts, as often. */
function agree(ours: string, theirs: string): void {
  const counts = new Map<string, number>();
  for (const line of ours.trim().split("\n")) {
    const { verdict } = JSON.parse(line) as { verdict?: string };
    if (verdict && verdict !== "within") counts.set(verdict, (counts.get(verdict) ?? 0) + 1);
  }
  const own = JSON.stringify([...counts].sort(([a], [b]) => (a < b ? -1 : 1)));
  if (own !== theirs.trim()) throw new Error(`the verdicts differ: ${own} here, ${theirs.trim()} by DuckDB`);
}
