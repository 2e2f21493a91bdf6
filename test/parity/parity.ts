/**
 * `npm run parity [-- --inputs N --bench N --seed N]`: asks every function the same many things in every
 * host, and writes how many were asked and how many answers differed to `test/parity/figures.json`.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { specs } from "../../src/functions/index.ts";
import { root } from "../../src/tools/paths.ts";
import { builtAddin } from "../addin/built.ts";
import { stand } from "../bench/stand.ts";
import { benchHost, CHECK_READER, customFunctionsHost, HEADLESS, HEADLESS_BY_MODEL, type Host, tryOut } from "./hosts.ts";
import { inputs } from "./inputs.ts";

const { values } = parseArgs({ options: { inputs: { type: "string", default: "100000" }, bench: { type: "string" }, seed: { type: "string", default: "1" } } });
const count = Number(values.inputs);
const seed = Number(values.seed);
/** Calls in one workbook. */
const BATCH = 102;

const built = await builtAddin();
const bench = await stand();
const page = await bench.page();
const hosts: [name: string, host: Host, count: number][] = [
  ["headless engine", HEADLESS, count],
  ["engine's model of the whole workbook", HEADLESS_BY_MODEL, count],
  ["reader of Check", CHECK_READER, count],
  ["custom functions, blanks as 0", customFunctionsHost(built.folder, 0), count],
  ["custom functions, blanks as null", customFunctionsHost(built.folder, null), count],
  ["custom functions, blanks as empty text", customFunctionsHost(built.folder, ""), count],
  ["bench in a browser", benchHost(page), Number(values.bench ?? count)],
];
const found = [];
for (const [host, ask, asked] of hosts) {
  const { inputs: tried, differences, blanksForZeros } = await tryOut(ask, inputs(asked, seed), BATCH);
  for (const one of differences.slice(0, 10)) console.log(`${host}: ${one}`);
  console.log(`${host}: ${tried} inputs, ${differences.length} differences`);
  found.push({ host, inputs: tried, differences: differences.length, ...(blanksForZeros ? { blanksForZeros } : {}) });
}
await bench.close();
writeFileSync(join(root, "test", "parity", "figures.json"), `${JSON.stringify({ functions: specs.length, seed, hosts: found }, null, 2)}\n`);
process.exitCode = found.some(({ differences }) => differences > 0) ? 1 : 0;
