import type { Block } from "../../core/cell.ts";
import { decimal, isAbove } from "../../core/decimal.ts";
import { call } from "../../core/lift.ts";
import { specByName } from "../../functions/index.ts";
import { type Line, ratioLine, time } from "./measure.ts";

/**
 * Each element-wise function on a million elements, as a host calls it (blocks of cells in, a block
 * of cells out, every bound checked), against a bare loop over typed arrays that computes the same
 * values and checks nothing.
 */
const ROWS = 1000;
const COLUMNS = 1000;
const COUNT = ROWS * COLUMNS;

type Loop = (out: Float64Array, a: Float64Array, b: Float64Array, c: Float64Array) => void;

interface Case {
  name: string;
  /** Start of each input; elements rise from it by thousandths. */
  from: number[];
  bare: Loop;
}

const CASES: Case[] = [
  {
    name: "CLEARANCE",
    from: [73.1, 72],
    bare: (out, a, b) => {
      for (let i = 0; i < COUNT; i++) out[i] = isAbove(b[i]!, a[i]!) ? Number.NaN : decimal(a[i]! - b[i]!);
    },
  },
  {
    name: "RINGGAPTARGET",
    from: [73.1],
    bare: (out, a) => {
      for (let i = 0; i < COUNT; i++) out[i] = decimal(a[i]! * 0.004);
    },
  },
  {
    name: "RINGGAPFILE",
    from: [0.3, 0.4],
    bare: (out, a, b) => {
      for (let i = 0; i < COUNT; i++) out[i] = decimal(Math.max(0, b[i]! - a[i]!));
    },
  },
  {
    name: "RINGGAPATBORE",
    from: [0.3, 73, 73.1],
    bare: (out, a, b, c) => {
      for (let i = 0; i < COUNT; i++) out[i] = decimal(a[i]! + Math.PI * (c[i]! - b[i]!));
    },
  },
  {
    name: "SWEPTVOLUME",
    from: [73, 72],
    bare: (out, a, b) => {
      for (let i = 0; i < COUNT; i++) out[i] = ((Math.PI / 4) * a[i]! * a[i]! * b[i]!) / 1000;
    },
  },
  {
    name: "DISCVOLUME",
    from: [74.5, 1.2],
    bare: (out, a, b) => {
      for (let i = 0; i < COUNT; i++) out[i] = ((Math.PI / 4) * a[i]! * a[i]! * b[i]!) / 1000;
    },
  },
  {
    name: "COMPRESSIONRATIO",
    from: [300, 28, 5],
    bare: (out, a, b, c) => {
      for (let i = 0; i < COUNT; i++) {
        const clearance = b[i]! + c[i]!;
        out[i] = (a[i]! + clearance) / clearance;
      }
    },
  },
  {
    name: "VERDICT",
    from: [0.3, 0.2, 0.9],
    bare: (out, a, b, c) => {
      for (let i = 0; i < COUNT; i++) out[i] = isAbove(a[i]!, c[i]!) ? 1 : isAbove(b[i]!, a[i]!) ? 2 : 0;
    },
  },
  {
    name: "MARGIN",
    from: [0.3, 0.2, 0.9],
    bare: (out, a, b, c) => {
      for (let i = 0; i < COUNT; i++) out[i] = decimal(Math.min(c[i]! - a[i]!, a[i]! - b[i]!));
    },
  },
];

const rising = (from: number): Block =>
  Array.from({ length: ROWS }, (_, row) => Array.from({ length: COLUMNS }, (_, column) => from + ((row * COLUMNS + column) % 800) / 1000));

export function elementWise(): Line[] {
  return CASES.map(({ name, from, bare }) => {
    const spec = specByName.get(name)!;
    const blocks = from.map(rising);
    const columns = [0, 1, 2].map((i) => Float64Array.from((blocks[i] ?? []).flat() as number[]));
    const out = new Float64Array(COUNT);
    const ours = time(() => call(spec, blocks));
    const yardstick = time(() => bare(out, columns[0]!, columns[1]!, columns[2]!));
    return ratioLine(`${name} on 1 000 000 elements`, ours, yardstick, 2);
  });
}
