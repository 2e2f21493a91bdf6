import { type MemoryHost, type MemorySheet, memoryHost } from "../../../src/hosts/memory.ts";

/** Measured parts of one engine of an invented hire-boat yard: as they stand in a shop's own sheets. */
const SHEETS: readonly MemorySheet[] = [
  {
    name: "Bores",
    cells: [
      ["bore", "top thrust", "top pin", "middle thrust", "middle pin", "bottom thrust", "bottom pin"],
      ["No. 1", 73.09, 73.06, 73.05, 73.04, 73.02, 73.01],
      ["No. 2", 73.12, 73.08, 73.06, 73.05, 73.02, 73.02],
      ["No. 3", 73.28, 73.2, 73.15, 73.1, 73.06, 73.05],
      ["standard", 73],
    ],
  },
  {
    name: "Rings",
    cells: [
      ["cylinder", "top", "second"],
      ["No. 1", 0.22, 0.31],
      ["No. 2", 0.3, 0.28],
      ["No. 3", null, 0.25],
    ],
  },
  {
    name: "Valves",
    cells: [
      ["valve", "shim", "clearance"],
      ["inlet 1", 2.5, 0.12],
      ["exhaust 1", 2.4, 0.2],
      ["inlet 2", 2.6, 0.27],
      ["exhaust 2", 2.45, 0.21],
    ],
  },
  { name: "Pistons", cells: [["skirt"], [72.95], [72.97], [73.21]] },
  {
    name: "Crankpins",
    cells: [
      ["crankpin", "front up", "front across", "rear up", "rear across"],
      ["No. 1", 49.97, 49.95, 49.98, 49.96],
      ["No. 2", 49.9, 49.85, 49.92, 49.9],
      ["No. 3", 49.96, 49.96, 49.97, 49.96],
    ],
  },
  {
    name: "Rods",
    cells: [
      ["rod", "big end", "small end"],
      ["No. 1", 631, 204],
      ["No. 2", 628.5, 204],
      ["No. 3", 630, 203.2],
    ],
  },
  { name: "Work to do", cells: [[], [null, "kept", null]] },
];

const HEADINGS = ["engine", "cylinder", "characteristic", "position", "value", "lower", "upper", "unit", "uncertainty", "hours"];
const bore = (cylinder: number, position: string, value: number, u: number, hours: number) => [
  "A",
  cylinder,
  "bore",
  position,
  value,
  73,
  73.08,
  "mm",
  u,
  hours,
];

/** Engine A as built, and stripped down after 850 hours. */
export const BUILD = [HEADINGS, bore(1, "top thrust", 73.012, 0.003, 0), bore(2, "top thrust", 73.01, 0.003, 0), bore(3, "top thrust", 73.011, 0.003, 0)];
export const STRIPPED = [
  HEADINGS,
  bore(1, "top thrust", 73.024, 0.004, 850),
  bore(2, "top thrust", 73.012, 0.004, 850),
  bore(4, "top thrust", 73.02, 0.004, 850),
];

/** Both in one workbook. */
export const comparedBook = (): MemoryHost =>
  memoryHost(
    [
      { name: "Build", cells: BUILD },
      { name: "Strip-down", cells: STRIPPED },
    ],
    "engine A.xlsx",
  );

/** Functions with what they come to, for drawings and the report. Taper: 73.06 − 73.035. */
export const judgedBook = (): MemoryHost =>
  memoryHost(
    [
      {
        name: "Cylinders",
        cells: [
          ["Engine A", "thrust", "pin", "taper", "verdict", "limit"],
          ["top", 73.06, 73.035, { formula: "=HATCH.TAPER(B2:C4)", value: 0.025 }, { formula: "=HATCH.VERDICT(D2, , F2)", value: "over" }, 0.02],
          ["middle", 73.05, 73.03],
          ["bottom", 73.035, 73.025],
        ],
      },
      {
        name: "Compression",
        cells: [
          ["cylinder", "bar", "verdict"],
          [1, 11.8, { formula: '=HATCH.COMPRESSIONCHECK(B2:B4, "share", 0.85)', value: "within" }],
          [2, 11.2, "within"],
          [3, 9.1, "under"],
        ],
      },
    ],
    "<engine A>.xlsx",
  );

export const engineBook = (): MemoryHost => memoryHost(SHEETS, "engine 1.xlsx");
