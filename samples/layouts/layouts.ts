import { openWorkbook } from "../../src/hosts/file.ts";
import { type Mapping, storeMapping } from "../../src/layout/mapping.ts";
import { proposeLayout } from "../../src/layout/propose.ts";
import type { BuildSheet } from "../../src/setup/model.ts";
import type { CellSpec, CellStyle, SheetSpec } from "../../src/workbook/sheet-spec.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";

/**
 * The same invented readings of both engines in three layouts as shops keep them, none of them ours
 * and none with a formula. What is planted in them is listed in samples/layouts/README.md and
 * asserted by the tests. The layout that is kept in each file is the one that is proposed for it.
 */
const ENGINES = ["A", "B"] as const;
const HEIGHTS = ["top", "middle", "bottom"];
const AXES = ["thrust", "pin"];
const RINGS = ["top", "second"];

type Value = number | string;

interface Cylinder {
  /** Top to bottom, thrust then pin. */
  bore: Value[];
  skirt: Value;
  gaps: [Value, Value];
  dry: Value;
}

/** A text where a number belongs, a blank and slips are planted among them. */
const READINGS: Record<(typeof ENGINES)[number], Cylinder[]> = {
  A: [
    { bore: [73.025, 73.02, 73.02, 73.015, 73.015, 73.015], skirt: 72.985, gaps: [0.3, ""], dry: 12.1 },
    { bore: [73.06, 73.035, 73.05, 73.03, 73.035, 73.025], skirt: 72.99, gaps: [0.32, 0.35], dry: 11.8 },
    { bore: [73.06, 73.05, 73.05, 73.05, 73.04, 73.04], skirt: 73, gaps: [3.2, 0.34], dry: 11.9 },
  ],
  B: [
    { bore: [73.02, 73.015, 73.02, 7.302, 73.01, 73.01], skirt: 72.98, gaps: [0.31, 0.33], dry: 12 },
    { bore: [73.03, 73.02, 73.025, 73.015, 73.02, 73.015], skirt: 2.8735, gaps: [0.3, 0.36], dry: 9.2 },
    { bore: [73.025, 73.02, 73.02, "73,02", 73.015, 73.01], skirt: 72.98, gaps: [0.29, 0.32], dry: 11.7 },
  ],
};

const STANDARD_BORE = 73;

const LIMITS = {
  taper: ["", 0.02],
  "out-of-round": ["", 0.02],
  "bore wear": ["", 0.08],
  "piston clearance": [0.02, 0.04],
  "ring end gap": [0.25, 0.55],
  "compression pressure": [10, ""],
  "compression spread": ["", 1.5],
} as const satisfies Record<string, readonly [Value, Value]>;

/** One sheet typed row by row from A1 on; `""` leaves a cell out. */
function page(name: string, widths: number[], rows: readonly (readonly Value[])[], merges: readonly string[] = []): SheetSpec {
  const cells: CellSpec[] = rows.flatMap((line, row) =>
    line.flatMap((content, column) =>
      content === "" ? [] : [{ row, column, content, style: styleOf(content, line, column), ...(typeof content === "number" ? { format: "General" } : {}) }],
    ),
  );
  return {
    name,
    widths,
    frozen: { rows: 0, columns: 0 },
    cells,
    tables: [],
    validations: [],
    verdicts: [],
    merges: merges.map(boxOf),
    print: { paper: "A4", isLandscape: true },
  };
}

function styleOf(content: Value, line: readonly Value[], column: number): CellStyle {
  if (typeof content === "number") return "typed";
  if (column === 0 && line.slice(1).every((other) => other === "")) return "title";
  return line.some((other) => typeof other === "number" && !Number.isInteger(other)) ? "label" : "head";
}

/** `B3:C3` as a rectangle; columns of one letter. */
function boxOf(range: string): { row: number; column: number; rows: number; columns: number } {
  const [, left, top, right, bottom] = /^([A-Z])(\d+):([A-Z])(\d+)$/.exec(range)!;
  const column = left!.charCodeAt(0) - 65;
  const row = Number(top) - 1;
  return { row, column, rows: Number(bottom) - row, columns: right!.charCodeAt(0) - 64 - column };
}

/** One row a cylinder, one block an engine, headings merged over two and three columns; limits on a sheet of their own. */
function perCylinder(): BuildSheet {
  const blocks = ENGINES.flatMap((engine, i) => [
    ...(i ? [[""]] : []),
    [`Engine ${engine}`],
    ["Cyl", "Top", "", "Mid", "", "Btm", "", "Skirt", "Ring gap", "", "Comp. (bar)"],
    ["", "Thrust", "Pin", "Thrust", "Pin", "Thrust", "Pin", "", "Top", "2nd", ""],
    ...READINGS[engine].map(({ bore, skirt, gaps, dry }, c): Value[] => [c + 1, ...bore, skirt, ...gaps, dry]),
  ]);
  const merges = [4, 11].flatMap((row) => [
    `B${row}:C${row}`,
    `D${row}:E${row}`,
    `F${row}:G${row}`,
    `I${row}:J${row}`,
    `H${row}:H${row + 1}`,
    `K${row}:K${row + 1}`,
    `A${row}:A${row + 1}`,
  ]);
  const rows: Value[][] = [["Bores and pistons, sizes in mm"], [""], ...blocks];
  const limits: Value[][] = [
    ["Limits (invented)"],
    ["Item", "Min", "Max"],
    ...Object.entries(NAMES_IN_TABLE).map(([name, shown]): Value[] => [shown, ...LIMITS[name as keyof typeof LIMITS]]),
    [""],
    ["Std bore", STANDARD_BORE],
  ];
  return {
    title: "One row a cylinder (invented)",
    sheets: [page("Bores", [7, 10, 10, 10, 10, 10, 10, 10, 9, 9, 11], rows, merges), page("Limits", [28, 9, 9], limits)],
    names: [],
  };
}

const NAMES_IN_TABLE: Record<keyof typeof LIMITS, string> = {
  taper: "Bore taper",
  "out-of-round": "Ovality",
  "bore wear": "Bore wear",
  "piston clearance": "Piston-to-wall clearance",
  "ring end gap": "Ring gap",
  "compression pressure": "Compression",
  "compression spread": "Compression difference",
};

/** One row a reading, in the order in which somebody walked round the bench. */
function perReading(): BuildSheet {
  const rows: Value[][] = [["Engine", "Cyl. no.", "What", "Where", "Reading", "Unit", "Read by"]];
  const add = (engine: string, cylinder: number, what: string, where: string, value: Value, unit: string) =>
    rows.push([engine, cylinder, what, where, value, unit, "first hand"]);
  for (const engine of ENGINES) {
    READINGS[engine].forEach(({ bore, skirt, gaps, dry }, c) => {
      for (const [i, value] of bore.entries()) add(engine, c + 1, "Bore dia.", `${HEIGHTS[Math.floor(i / 2)]} ${AXES[i % 2]}`, value, "mm");
      add(engine, c + 1, "Piston skirt", "", skirt, "mm");
      for (const [i, value] of gaps.entries()) add(engine, c + 1, "End gap", RINGS[i]!, value, "mm");
      add(engine, c + 1, "Cranking pressure", "", dry, "bar");
    });
  }
  const limits: Value[][] = [
    ["Characteristic", "Lower limit", "Upper limit", "Unit"],
    ...Object.entries(LIMITS).map(([name, [lower, upper]]): Value[] => [name, lower, upper, name.startsWith("compression") ? "bar" : "mm"]),
    [""],
    ["Nominal bore", STANDARD_BORE],
  ];
  return {
    title: "One row a reading (invented)",
    sheets: [page("Readings", [8, 9, 20, 16, 10, 7, 12], rows), page("Limits", [22, 12, 12, 7], limits)],
    names: [],
  };
}

/** Readings down, cylinders across, both engines beside one another, limits at the end of a row or below. */
function transposed(): BuildSheet {
  const all = ENGINES.flatMap((engine) => READINGS[engine]);
  const line = (part: string, place: string, of: (cylinder: Cylinder) => Value, limits: readonly [Value, Value] = ["", ""]): Value[] => [
    part,
    place,
    ...all.map(of),
    ...limits,
  ];
  const rows: Value[][] = [
    ["Sizes in mm"],
    ["", "", "Engine A", "", "", "Engine B", "", "", "Limits", ""],
    ["Part", "Place", 1, 2, 3, 1, 2, 3, "Least", "Most"],
    ...HEIGHTS.flatMap((height, h) => AXES.map((axis, a) => line(h + a === 0 ? "Bore" : "", `${height}, ${axis}`, ({ bore }) => bore[h * 2 + a]!))),
    line("Piston skirt", "", ({ skirt }) => skirt),
    ...RINGS.map((ring, i) => line(i ? "" : "Ring end gap", ring, ({ gaps }) => gaps[i]!, LIMITS["ring end gap"])),
    line("Compression (bar)", "", ({ dry }) => dry, LIMITS["compression pressure"]),
    [""],
    ["Worked out", "", "Most", "Least"],
    ...(["taper", "out-of-round", "bore wear", "piston clearance", "compression spread"] as const).map((name): Value[] => [
      `${name.charAt(0).toUpperCase()}${name.slice(1)}`,
      "",
      LIMITS[name][1],
      LIMITS[name][0],
    ]),
    [""],
    ["Standard bore", "", STANDARD_BORE],
  ];
  const merges = ["C2:E2", "F2:H2", "I2:J2", "A4:A9", "A11:A12"];
  return { title: "Readings down, cylinders across (invented)", sheets: [page("Both engines", [20, 16, 9, 9, 9, 9, 9, 9, 9, 9], rows, merges)], names: [] };
}

/** The sample files by name. */
export async function layoutSamples(): Promise<Map<string, Uint8Array>> {
  const files = new Map<string, Uint8Array>();
  for (const [name, book] of [
    ["one-row-a-cylinder.xlsx", perCylinder()],
    ["one-row-a-reading.xlsx", perReading()],
    ["cylinders-across.xlsx", transposed()],
  ] as const) {
    files.set(name, writeXlsx(book, await keptLayout(book)));
  }
  return files;
}

/** What accepting every proposal keeps in the workbook. */
async function keptLayout(book: BuildSheet): Promise<Map<string, string>> {
  const host = await openWorkbook(writeXlsx(book), book.title);
  const mapping: Mapping = { version: 1, ranges: proposeLayout(await host.read()).map(({ range }) => range) };
  const kept = new Map<string, string>();
  await storeMapping({ storeText: async (key, value) => void kept.set(key, value) }, mapping);
  return kept;
}
