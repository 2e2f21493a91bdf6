import type { SampleCell, SampleSheet, SampleStyle } from "./sample-workbook.ts";

/**
 * The sample build sheet: engine A of an invented hire-boat yard that overhauls its two identical
 * three-cylinder inboard engines. All numbers are invented. What is planted in it is listed in
 * samples/README.md and asserted by the tests.
 */
const HEIGHTS = ["top", "middle", "bottom"];

/** Bore readings by cylinder: rows top to bottom, thrust then pin. Cylinder 2 is worn out, cylinder 3 sits on the limit. */
const BORES_A = [
  [73.025, 73.02, 73.02, 73.015, 73.015, 73.015],
  [73.06, 73.035, 73.05, 73.03, 73.035, 73.025],
  [73.06, 73.05, 73.05, 73.05, 73.04, 73.04],
];
const BORES_B = [
  [73.02, 73.015, 73.02, 73.01, 73.01, 73.01],
  [73.03, 73.02, 73.025, 73.015, 73.02, 73.015],
  [73.025, 73.02, 73.02, 73.015, 73.015, 73.01],
];
const SKIRTS_A = [72.985, 72.98, 73];

const LIMITS: [string, number | "", number | "", string][] = [
  ["Piston clearance", 0.02, 0.04, "mm"],
  ["Taper", "", 0.02, "mm"],
  ["Out-of-round", "", 0.02, "mm"],
  ["Bore wear", "", 0.08, "mm"],
  ["Ring end gap", 0.25, 0.55, "mm"],
  ["Compression ratio", 9.8, 10.4, ""],
];
const LIMIT_ROW = new Map(LIMITS.map(([name], i) => [name, i + 4]));
const limit = (name: string) => `Limits!$B$${LIMIT_ROW.get(name)}, Limits!$C$${LIMIT_ROW.get(name)}`;

/** Cells of one row from column A on; `""` leaves a cell out. */
function line(row: number, contents: readonly (number | string)[], looks: SampleStyle | readonly SampleStyle[], from = "A"): SampleCell[] {
  return contents.flatMap((content, i) => {
    const look = typeof looks === "string" ? looks : (looks[i] ?? looks[looks.length - 1]!);
    const blankTyped = content === "" && look.startsWith("typed");
    if (content === "" && !blankTyped) return [];
    return [{ address: `${String.fromCharCode(from.charCodeAt(0) + i)}${row}`, content, look }];
  });
}

export function buildSheet(): SampleSheet[] {
  return [bores(), limits(), rings(), volumes(), boreBook()];
}

function bores(): SampleSheet {
  const cells: SampleCell[] = [
    { address: "A1", content: "Engine A: bores and pistons, mm at 20 °C", look: "title" },
    {
      address: "A2",
      content: "Shaded cells are typed, the others calculated. An invented yard; the maker's service manual decides.",
      look: "note",
    },
    ...line(3, ["Cylinder", "Height", "Thrust", "Pin"], "head"),
  ];
  BORES_A.forEach((bore, c) => {
    for (const [h, height] of HEIGHTS.entries())
      cells.push(...line(4 + c * 3 + h, [c + 1, height, bore[h * 2]!, bore[h * 2 + 1]!], ["label", "label", "typed3"]));
  });
  cells.push(...line(15, ["Cylinder", "Skirt", "Taper", "Verdict", "Out-of-round", "Verdict", "Wear", "Verdict", "Clearance", "Verdict", "Margin"], "head"));
  SKIRTS_A.forEach((skirt, c) => {
    const row = 16 + c;
    const block = `C${4 + c * 3}:D${6 + c * 3}`;
    cells.push(
      ...line(
        row,
        [
          c + 1,
          skirt,
          `=HATCH.TAPER(${block})`,
          `=HATCH.VERDICT(C${row}, ${limit("Taper")})`,
          `=HATCH.OUTOFROUND(${block})`,
          `=HATCH.VERDICT(E${row}, ${limit("Out-of-round")})`,
          `=HATCH.BOREWEAR(${block}, 73)`,
          `=HATCH.VERDICT(G${row}, ${limit("Bore wear")})`,
          `=HATCH.PISTONCLEARANCE(${block}, B${row})`,
          `=HATCH.VERDICT(I${row}, ${limit("Piston clearance")})`,
          `=HATCH.MARGIN(I${row}, ${limit("Piston clearance")})`,
        ],
        ["label", "typed3", "result3", "result", "result3", "result", "result3", "result", "result3", "result", "result3"],
      ),
    );
  });
  cells.push(...line(20, ["Cylinder", "In words"], "head"));
  for (const c of SKIRTS_A.keys()) cells.push(...line(21 + c, [c + 1, `=HATCH.EXPLAIN(I${16 + c}, ${limit("Piston clearance")})`], ["label", "words"]));
  return { name: "Bores", widths: [11.5, 11.8, 9.5, 10, 17, 10, 9, 10, 13.3, 10, 10], frozen: 3, cells };
}

function limits(): SampleSheet {
  return {
    name: "Limits",
    widths: [22, 10, 10, 8, 34],
    frozen: 3,
    cells: [
      { address: "A1", content: "Limits", look: "title" },
      { address: "A2", content: "Typed by the yard from its own manual; none is built in.", look: "note" },
      ...line(3, ["Characteristic", "Lower", "Upper", "Unit", "Source"], "head"),
      ...LIMITS.flatMap(([name, lower, upper, unit], i) =>
        line(4 + i, [name, lower, upper, unit, "invented for this sample"], ["label", "typed", "typed", "label", "label"]),
      ),
    ],
  };
}

function rings(): SampleSheet {
  const gaps: (number | "")[] = [0.3, 0.35, 0.28, "", 0.32, 0.27];
  const cells: SampleCell[] = [
    { address: "A1", content: "Engine A: ring end gaps, mm", look: "title" },
    { address: "A2", content: "Each ring squared up in its own bore. The gap of the second ring of cylinder 2 has not been measured yet.", look: "note" },
    ...line(3, ["Cylinder", "Ring", "Gap", "Target", "To file", "Gap at largest bore", "Verdict"], "head"),
  ];
  gaps.forEach((gap, i) => {
    const row = 4 + i;
    const first = 4 + Math.floor(i / 2) * 3;
    const block = `Bores!$C$${first}:$D$${first + 2}`;
    cells.push(
      ...line(
        row,
        [
          Math.floor(i / 2) + 1,
          i % 2 ? "second" : "top",
          gap,
          `=HATCH.RINGGAPTARGET(MIN(${block}))`,
          // A typed cell: Excel on the desktop and LibreOffice would hand an empty one over as a gap of 0.
          `=IF(C${row}="","",HATCH.RINGGAPFILE(C${row}, D${row}))`,
          `=IF(C${row}="","",HATCH.RINGGAPATBORE(C${row}, MIN(${block}), MAX(${block})))`,
          `=IF(C${row}="","",HATCH.VERDICT(C${row}, ${limit("Ring end gap")}))`,
        ],
        ["label", "label", "typed3", "result3", "result3", "result3", "result"],
      ),
    );
  });
  return { name: "Rings", widths: [12, 10, 10, 10, 10, 27, 12], frozen: 3, cells };
}

function volumes(): SampleSheet {
  const chambers = [28, 28.2, 27.9];
  const cells: SampleCell[] = [
    { address: "A1", content: "Engine A: compression ratio, volumes in cm³", look: "title" },
    { address: "A2", content: "Stroke 72 mm, gasket bore 74.5 mm, gasket 1.2 mm when tightened; chambers measured by burette.", look: "note" },
    ...line(3, ["Cylinder", "Chamber", "Swept", "Gasket", "Ratio", "Verdict"], "head"),
  ];
  chambers.forEach((chamber, c) => {
    const row = 4 + c;
    const block = `Bores!$C$${4 + c * 3}:$D$${6 + c * 3}`;
    cells.push(
      ...line(
        row,
        [
          c + 1,
          chamber,
          `=HATCH.SWEPTVOLUME(AVERAGE(${block}), 72)`,
          "=HATCH.DISCVOLUME(74.5, 1.2)",
          `=HATCH.COMPRESSIONRATIO(C${row}, B${row}, D${row})`,
          `=HATCH.VERDICT(E${row}, ${limit("Compression ratio")})`,
        ],
        ["label", "typed", "result3", "result3", "result3", "result"],
      ),
    );
  });
  return { name: "Volumes", widths: [12, 13, 12, 13, 10, 12], frozen: 3, cells };
}

/** One row a bore, both engines: one formula judges the whole block. */
function boreBook(): SampleSheet {
  const cells: SampleCell[] = [
    { address: "A1", content: "Bore book: both engines, one bore a row, mm", look: "title" },
    { address: "A2", content: "One formula stands at the head of each calculated column and spills down; the block below is one formula too.", look: "note" },
    ...line(
      3,
      ["Engine", "Cylinder", "Top thrust", "Top pin", "Middle thrust", "Middle pin", "Bottom thrust", "Bottom pin", "Taper", "Verdict", "Rebore to"],
      "head",
    ),
  ];
  for (const [i, bore] of [...BORES_A, ...BORES_B].entries())
    cells.push(...line(4 + i, [i < 3 ? "A" : "B", (i % 3) + 1, ...bore], ["label", "label", "typed3"]));
  cells.push(
    { address: "I4", content: "=HATCH.TAPER(C4:H9, 2)", look: "result3", spill: "I4:I9" },
    { address: "J4", content: `=HATCH.VERDICT(I4:I9, ${limit("Taper")})`, look: "result", spill: "J4:J9" },
    { address: "K4", content: '=HATCH.REBORESIZE(C4:H9, 73, {0.25,0.5,0.75,1}, 0.02, "true", 2)', look: "result", spill: "K4:K9" },
    { address: "B12", content: "=HATCH.BORESUMMARY(C4:H9, 2)", look: "result", spill: "B12:H18" },
  );
  return { name: "Bore book", widths: [12, 12, 15, 12, 18, 17, 22, 19, 10, 11, 14], frozen: 3, cells };
}
