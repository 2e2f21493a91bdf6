import { isDeepStrictEqual } from "node:util";
import { broadcast } from "../../src/core/broadcast.ts";
import type { Block } from "../../src/core/cell.ts";
import { decimal, isAbove } from "../../src/core/decimal.ts";
import { specByName } from "../../src/functions/index.ts";
import type { BenchmarkGroup } from "./benchmark-group.ts";
import { type BenchmarkLine, ratioLine, type Timing, together } from "./measure.ts";

/**
 * Each element-wise function on a million elements, as a host calls it (rows of cells in, rows of
 * results out, every bound checked), beside a bare loop over the same rows that computes the same
 * values and checks nothing. Told without an aim: what the checks of each element cost.
 */
const ROWS = 1000;
const COLUMNS = 1000;
const RUNS = 7;

interface Case {
  name: string;
  /** Start of each input; elements rise from it by thousandths. */
  from: number[];
  /** What has to be computed before. */
  first?: string;
  /** What is computed of the elements a, b and c. */
  computes: string;
}

const CASES: Case[] = [
  { name: "CLEARANCE", from: [73.1, 72], computes: "isAbove(b, a) ? NaN : decimal(a - b)" },
  { name: "RINGGAPTARGET", from: [73.1], computes: "decimal(a * 0.004)" },
  { name: "RINGGAPFILE", from: [0.3, 0.4], computes: "decimal(Math.max(0, b - a))" },
  { name: "RINGGAPATBORE", from: [0.3, 73, 73.1], computes: "decimal(a + Math.PI * decimal(c - b))" },
  { name: "SWEPTVOLUME", from: [73, 72], computes: "((Math.PI / 4) * a * a * b) / 1000" },
  { name: "DISCVOLUME", from: [74.5, 1.2], computes: "((Math.PI / 4) * a * a * b) / 1000" },
  { name: "COMPRESSIONRATIO", from: [300, 28, 5], first: "const d = decimal(b + c);", computes: "decimal((a + d) / d)" },
  {
    name: "VERDICT",
    from: [0.3, 0.2, 0.9],
    computes: 'isAbove(a, c) ? "over" : isAbove(b, a) ? "under" : "within"',
  },
  { name: "MARGIN", from: [0.3, 0.2, 0.9], computes: "decimal(Math.min(c - a, a - b))" },
];

const LETTERS = ["a", "b", "c"];

/** A loop written out for one case, so that it is compiled for that case alone. */
function loopOf<T>(body: string): T {
  return new Function("decimal", "isAbove", body)(decimal, isAbove) as T;
}

const reading = ({ from, first = "" }: Case): string => `${from.map((_, i) => `const ${LETTERS[i]} = x${i}[i];`).join(" ")} ${first}`;

const overRows = (one: Case) =>
  loopOf<(...blocks: Block[]) => Block>(
    `return (${one.from.map((_, i) => `rows${i}`).join(", ")}) => {
      const out = new Array(${ROWS});
      for (let r = 0; r < ${ROWS}; r++) {
        ${one.from.map((_, i) => `const x${i} = rows${i}[r];`).join(" ")}
        const line = new Array(${COLUMNS});
        for (let i = 0; i < ${COLUMNS}; i++) { ${reading(one)} line[i] = ${one.computes}; }
        out[r] = line;
      }
      return out;
    };`,
  );

const rising = (from: number): Block =>
  Array.from({ length: ROWS }, (_, row) => Array.from({ length: COLUMNS }, (_, column) => from + ((row * COLUMNS + column) % 800) / 1000));

export async function elementWise(): Promise<BenchmarkGroup> {
  const lines: BenchmarkLine[] = [];
  for (const one of CASES) {
    const { name, from } = one;
    const spec = specByName.get(name)!;
    const blocks = from.map(rising);
    const rows = overRows(one);
    const ours = () => broadcast(spec, blocks);
    const [took, bare] = (await together([ours, () => rows(...blocks)], RUNS)) as [Timing, Timing];
    if (!isDeepStrictEqual(ours(), rows(...blocks))) throw new Error(`${name}: the bare loop does not compute the same values`);
    lines.push(ratioLine(`${name} on 1 000 000 elements; bare loop over the same rows of cells`, took, bare));
  }
  return { lines, profiles: [] };
}
