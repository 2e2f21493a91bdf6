import { type Check, checksOf } from "./check.ts";

const HAND = "added, multiplied and subtracted by hand";

/** Masses of pistons and rods, and what a crankshaft is balanced with. */
export const BALANCE: readonly Check[] = [
  ...checksOf("BOBWEIGHT", HAND, "common practice", [
    ["=HATCH.BOBWEIGHT({430,46}, {182,498,120,34,2}, , , 4)", 1792],
    ["=HATCH.BOBWEIGHT({430,46}, {182,498,120,34,2}, 1, 1)", 1312],
    ["=HATCH.BOBWEIGHT({430,46}, {182,498,120,34,2}, 1, 0)", 476],
  ]),
  ...checksOf("MASSMATCH", HAND, "common practice", [
    ["=HATCH.MASSMATCH({412;409.5;410.2})", 2.5, { at: [1, 1] }],
    ["=HATCH.MASSMATCH({412;409.5;410.2})", 0, { at: [2, 1] }],
    ["=HATCH.MASSMATCH({412;409.5;410.2}, 0.5)", 0.2, { at: [3, 1] }],
  ]),
  ...checksOf("RODENDS", HAND, "common practice", [
    ["=HATCH.RODENDS(612, 430)", 182, { at: [2, 2] }],
    ["=HATCH.RODENDS(612, 430, 181.4)", 0.6, { at: [2, 4] }],
  ]),
];
