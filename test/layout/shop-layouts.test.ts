import { Analysis } from "../../src/check/analysis.ts";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { MemoryCell } from "../../src/hosts/memory.ts";
import { readLayout } from "../../src/layout/mapped-readings.ts";
import { proposeLayout } from "../../src/layout/propose.ts";
import { positionText } from "../../src/vocabulary/parse-heading.ts";
import { cellName } from "../../src/workbook/address.ts";
import { typed } from "./typed.ts";

/**
 * Ways in which shops lay out their sheets, the readings made up: what is proposed for each, which cell
 * is what, and what Check then finds.
 */
interface ShopLayout {
  sheets: Record<string, readonly (readonly MemoryCell[])[]>;
  proposed: readonly string[];
  doubts?: readonly string[];
  /** Some of its cells. */
  cells: readonly string[];
  rowsIn: number;
  findings: readonly string[];
}

const ALLOWED = "73.00 - 73.08";

const SHOP_LAYOUTS: Record<string, ShopLayout> = {
  "cylinders across under merged headings, two columns each": {
    sheets: {
      Block: [
        ["Bores (mm)"],
        ["", "CYL 1", "", "CYL 2", "", "CYL 3", ""],
        ["", "Thrust", "Pin", "Thrust", "Pin", "Thrust", "Pin"],
        ["Top", 73.02, 73.01, 73.03, 73.02, 73.02, 73.02],
        ["Middle", 73.02, 73.01, 73.02, 73.02, 73.02, 73.01],
        ["Bottom", 73.01, 73.01, 73.02, 73.01, 73.01, 73.01],
      ],
    },
    proposed: ["18 readings of bore; cylinders 1, 2, 3"],
    cells: ["B4: 1, bore, top thrust, mm", "C4: 1, bore, top pin, mm", "G6: 3, bore, bottom pin, mm"],
    rowsIn: 0,
    findings: ["missing limit: 18 readings of bore have no limit to be judged by; taper, out-of-round, bore wear and piston clearance have none either"],
  },
  "tables below one another, limits in words in the last column": {
    sheets: {
      "Engine B": [
        ["Engine B strip-down"],
        [""],
        ["Piston rings", "CYL 1", "CYL 2", "CYL 3", "Limits"],
        ["Top ring end gap", 0.014, 0.016, 0.015, ".010 - .020"],
        ["Second ring end gap", 0.015, 0.015, 0.016, "0.010 to 0.022"],
        [""],
        ["Compression", "CYL 1", "CYL 2", "CYL 3", "Limits"],
        ["Compression, psi", 172, 168, 150, "165 min"],
      ],
    },
    proposed: [
      "6 readings of ring end gap, with their limits; engine B, cylinders 1, 2, 3",
      "3 readings of compression pressure, with their limits; engine B, cylinders 1, 2, 3",
    ],
    cells: ["B4: B, 1, ring end gap, top, 0.01 to 0.02", "D5: B, 3, ring end gap, second, 0.01 to 0.022", "D8: B, 3, compression pressure, psi, 165 to -"],
    rowsIn: 9,
    findings: ["outside limit: 150 is under the lower limit 165 by 15"],
  },
  "limits on a sheet of their own, all in words": {
    sheets: {
      Readings: [
        ["Cyl", "Piston clearance", "Taper"],
        [1, 0.0018, 0.0005],
        [2, 0.003, 0.0025],
      ],
      Manual: [
        ["Item", "Service manual"],
        ["Piston clearance", "0.0012-0.0028"],
        ["Taper", ".002 max"],
      ],
    },
    proposed: ["2 readings of piston clearance, 2 readings of taper; cylinders 1, 2", "limits of piston clearance, taper"],
    cells: ["B2: 1, piston clearance", "C3: 2, taper"],
    rowsIn: 4,
    findings: ["outside limit: 0.0025 is over the upper limit 0.002 by 0.0005", "outside limit: 0.003 is over the upper limit 0.0028 by 0.0002"],
  },
  "a crankshaft by main and by pin, two axes, limits below": {
    sheets: {
      Crank: [
        ["Main journals, mm", "A", "B"],
        ["Main 1", 47.98, 47.98],
        ["Main 2", 47.97, 47.98],
        ["Main 3", 47.98, 47.98],
        ["Min", 47.96, 47.96],
        [""],
        ["Crankpins, mm", "A", "B"],
        ["Pin 1", 41.98, 41.98],
        ["Pin 2", 41.95, 41.97],
        ["Min", 41.96, 41.96],
      ],
    },
    proposed: ["6 readings of main journal, with their limits; cylinders Main 1, Main 2, Main 3", "4 readings of crankpin, with their limits"],
    cells: ["B2: Main 1, main journal, a, mm, 47.96 to -", "C3: Main 2, main journal, b, mm, 47.96 to -", "B9: crankpin, pin a 2, mm, 41.96 to -"],
    rowsIn: 10,
    findings: ["outside limit: 41.95 is under the lower limit 41.96 by 0.01"],
  },
  "blank rows and remarks between the cylinders, limits in words below": {
    sheets: {
      Sheet1: [
        ["Cyl", "Valve clearance inlet", "Valve clearance exhaust", "Remarks"],
        [1, 0.2, 0.25, ""],
        ["", "", "", "cold, 18 °C"],
        [2, 0.22, 0.31, "tappet noisy"],
        ["", "", "", ""],
        [3, 0.21, 0.26, ""],
        ["Limits", "0.15-0.25", "0.20-0.30", ""],
      ],
    },
    proposed: ["6 readings of valve clearance, with their limits; cylinders 1, 2, 3"],
    doubts: ["left out: column D"],
    cells: ["B2: 1, valve clearance, inlet, 0.15 to 0.25", "C4: 2, valve clearance, exhaust, 0.2 to 0.3", "B6: 3, valve clearance, inlet, 0.15 to 0.25"],
    rowsIn: 6,
    findings: ["outside limit: 0.31 is over the upper limit 0.3 by 0.01"],
  },
  "units in the headings, lengths in inches and volumes in cc": {
    sheets: {
      Head: [
        ["Cylinder", "Chamber (cc)", "Deck height (in)", "Leak-down (%)"],
        ["No. 1", 24.1, 0.012, 8],
        ["No. 2", 24.3, 0.011, 31],
        ["No. 3", 24, 0.012, 9],
        ["Max", 24.5, 0.02, 20],
      ],
    },
    proposed: ["3 readings of chamber volume, 3 readings of deck height, 3 readings of leak-down, with their limits; cylinders No. 1, No. 2, No. 3"],
    cells: ["B2: No. 1, chamber volume, cc, - to 24.5", "C3: No. 2, deck height, in, - to 0.02", "D4: No. 3, leak-down, %, - to 20"],
    rowsIn: 9,
    findings: ["outside limit: 31 is over the upper limit 20 by 11"],
  },
  "one sheet an engine, cylinders named by figures kept as text": {
    sheets: {
      "Port engine": [
        ["What", "1", "2", "3", "Min", "Max"],
        ["Piston skirt", 72.98, 72.97, 72.98, 72.95, 73],
        ["Compression pressure", 12.1, 11.8, 9.2, 10, ""],
      ],
      "Starboard engine": [
        ["What", "1", "2", "3", "Min", "Max"],
        ["Piston skirt", 72.98, 72.94, 72.98, 72.95, 73],
        ["Compression pressure", 12.2, 12.1, 12, 10, ""],
      ],
    },
    proposed: [
      "3 readings of piston skirt, 3 readings of compression pressure, with their limits; engine port, cylinders 1, 2, 3",
      "3 readings of piston skirt, 3 readings of compression pressure, with their limits; engine starboard, cylinders 1, 2, 3",
    ],
    cells: ["B2: port, 1, piston skirt, 72.95 to 73", "D3: starboard, 3, compression pressure, 10 to -"],
    rowsIn: 12,
    findings: ["outside limit: 72.94 is under the lower limit 72.95 by 0.01", "outside limit: 9.2 is under the lower limit 10 by 0.8"],
  },
  "a list of readings, each with what is allowed and its unit in line": {
    sheets: {
      Log: [
        ["Date", "Engine", "Cyl", "Measurement", "Position", "Reading", "Allowed", "Unit", "By"],
        [46000, "A", 1, "Bore", "top thrust", 73.09, ALLOWED, "mm", "K."],
        [46000, "A", 2, "Bore", "top thrust", 73.02, ALLOWED, "mm", "K."],
        [46000, "A", 1, "Compression pressure", "", 12, "10 min", "bar", "K."],
      ],
    },
    proposed: ["2 readings of bore, 1 reading of compression pressure, with their limits; engine A, cylinders 1, 2"],
    doubts: ["left out: columns A, I"],
    cells: ["F2: A, 1, bore, top thrust, mm, 73 to 73.08", "F4: A, 1, compression pressure, bar, 10 to -"],
    rowsIn: 3,
    findings: ["outside limit: 73.09 is over the upper limit 73.08 by 0.01"],
  },
  "two engines beside one another": {
    sheets: {
      Sheet1: [
        ["Port engine", "", "", "", "Starboard engine", "", ""],
        ["Cyl", "Top ring gap", "Second ring gap", "", "Cyl", "Top ring gap", "Second ring gap"],
        [1, 0.3, 0.31, "", 1, 0.32, 0.33],
        [2, 0.61, 0.33, "", 2, 0.3, 0.3],
        ["Limit", "0.25-0.55", "0.25-0.60", "", "Limit", "0.25-0.55", "0.25-0.60"],
      ],
    },
    proposed: [
      "4 readings of ring end gap, with their limits; engine port, cylinders 1, 2",
      "4 readings of ring end gap, with their limits; engine starboard, cylinders 1, 2",
    ],
    cells: ["B3: port, 1, ring end gap, top, 0.25 to 0.55", "G4: starboard, 2, ring end gap, second, 0.25 to 0.6"],
    rowsIn: 8,
    findings: ["outside limit: 0.61 is over the upper limit 0.55 by 0.06"],
  },
  "a form with a head, a note, and what is allowed below it": {
    sheets: {
      Form: [
        ["Yard engine record"],
        ["Engine", "A", "", "Serial number", "HB-2041"],
        ["All sizes in mm, measured at 20 °C"],
        [""],
        ["Cylinder", "Bore top", "Bore bottom", "Piston skirt", "Side clearance"],
        [1, 73.02, 73.01, 72.98, 0.05],
        [2, 73.03, 73.02, 72.97, 0.04],
        [""],
        ["Allowed", "Bore", "73.00 to 73.08"],
        ["", "Piston skirt", "72.95-73.00"],
        ["", "Side clearance", "0.03 - 0.045"],
      ],
    },
    proposed: [
      "4 readings of bore, 2 readings of piston skirt, 2 readings of ring side clearance; cylinders 1, 2",
      "limits of bore, piston skirt, ring side clearance",
    ],
    cells: ["B6: 1, bore, top, mm", "E7: 2, ring side clearance, mm"],
    rowsIn: 8,
    findings: ["outside limit: 0.05 is over the upper limit 0.045 by 0.005"],
  },
  // By hand: 3.4375 + 0.0015 = 3.439, 3.4375 − 0.002 = 3.4355.
  "deviations from a nominal as text, limits as sizes": {
    sheets: {
      Bores: [
        ["Cyl", "Nominal, in", "Bore deviation", "Min", "Max"],
        [1, 3.4375, "+0.0015", 3.4365, 3.4385],
        [2, 3.4375, "-.002", 3.4365, 3.4385],
        [3, 3.4375, "+.0005", 3.4365, 3.4385],
      ],
    },
    proposed: ["3 readings of bore, with their limits; cylinders 1, 2, 3"],
    cells: ["C2: 1, bore, 3.4365 to 3.4385", "C4: 3, bore, 3.4365 to 3.4385"],
    rowsIn: 3,
    findings: ["outside limit: 3.4355 is under the lower limit 3.4365 by 0.0010", "outside limit: 3.439 is over the upper limit 3.4385 by 0.0005"],
  },
  // 87.3125 + 0.02 = 87.3325 over 87.3125 + 0.015; the numbers of a column of deviations are deviations as well.
  "deviations and their limits in one column under their nominal": {
    sheets: {
      Sheet1: [
        ["Cylinder", "Bore, deviation (mm)"],
        ["Nominal", 87.3125],
        ["No. 1", "+0.010"],
        ["No. 2", 0.02],
        ["No. 3", 0],
        ["Max", 0.015],
      ],
    },
    proposed: ["3 readings of bore, with their limits; cylinders No. 1, No. 2, No. 3"],
    cells: ["B3: No. 1, bore, mm, - to 0.015", "B5: No. 3, bore, mm, - to 0.015"],
    rowsIn: 3,
    findings: ["outside limit: 87.3325 is over the upper limit 87.3275 by 0.0050"],
  },
  // 3 7/16 is 3.4375 and 3 29/64 is 3.453125.
  "fractions of an inch as text": {
    sheets: {
      Bores: [
        ["Cyl", "Bore (in)", "Max"],
        [1, "3 7/16", 3.44],
        [2, "3 29/64", 3.44],
        [3, 3.4375, 3.44],
      ],
    },
    proposed: ["3 readings of bore, with their limits; cylinders 1, 2, 3"],
    cells: ["B2: 1, bore, in, - to 3.44"],
    rowsIn: 3,
    findings: ["outside limit: 3.453125 is over the upper limit 3.44 by 0.013125"],
  },
  "fractions and deviations that nothing says how to read": {
    sheets: {
      Bores: [
        ["Cyl", "Bore (mm)", "Max", "Piston skirt (mm)", "Max"],
        [1, "3 7/16", 73.05, 72.98, 73],
        [2, 73.02, 73.05, "+0.02", 73],
      ],
    },
    proposed: ["2 readings of bore, 2 readings of piston skirt, with their limits; cylinders 1, 2"],
    cells: ["B2: 1, bore, mm, - to 73.05", "D2: 1, piston skirt, mm, - to 73"],
    rowsIn: 4,
    findings: [
      'refused: "+0.02" reads as a deviation, and its nominal is missing: type the nominal in line with it, in a column headed Nominal, or the whole size as a number',
      'refused: value holds the text "3 7/16": it must be a number',
    ],
  },
  "several things in one row, with limits after that which they are for": {
    sheets: {
      Pistons: [
        ["Cyl", "Piston skirt (mm)", "Piston clearance", "Min", "Max"],
        [1, 72.96, 0.06, 0.04, 0.08],
        [2, 72.95, 0.09, 0.04, 0.08],
      ],
    },
    proposed: ["2 readings of piston skirt, 2 readings of piston clearance, with their limits; cylinders 1, 2"],
    cells: ["B2: 1, piston skirt, mm", "C2: 1, piston clearance, 0.04 to 0.08", "C3: 2, piston clearance, 0.04 to 0.08"],
    rowsIn: 2,
    findings: ["missing limit: 2 readings of piston skirt have no limit to be judged by", "outside limit: 0.09 is over the upper limit 0.08 by 0.01"],
  },
  "several things in one row, with limits before that which they are for": {
    sheets: {
      Pistons: [
        ["Cyl", "Min", "Max", "Piston clearance", "Piston skirt (mm)"],
        [1, 0.04, 0.08, 0.06, 72.96],
        [2, 0.04, 0.08, 0.07, 72.95],
      ],
    },
    proposed: ["2 readings of piston clearance, 2 readings of piston skirt, with their limits; cylinders 1, 2"],
    cells: ["D2: 1, piston clearance, 0.04 to 0.08", "E2: 1, piston skirt, mm"],
    rowsIn: 2,
    findings: ["missing limit: 2 readings of piston skirt have no limit to be judged by"],
  },
  "several things in one row, with a limit behind the last where others stand before": {
    sheets: {
      Pistons: [
        ["Cyl", "Min", "Piston clearance", "Piston skirt (mm)", "Max"],
        [1, 0.04, 0.06, 72.96, 72.98],
        [2, 0.04, 0.07, 72.95, 72.98],
      ],
    },
    proposed: ["2 readings of piston clearance, 2 readings of piston skirt, with their limits; cylinders 1, 2"],
    cells: ["C2: 1, piston clearance, 0.04 to -", "D2: 1, piston skirt, mm, - to 72.98"],
    rowsIn: 4,
    findings: [],
  },
  "limits that say what they are for, behind other readings": {
    sheets: {
      Pistons: [
        ["Cyl", "Bore", "Piston skirt", "Bore upper", "Skirt lower", "Bore U"],
        [1, 73.02, 72.97, 73.05, 72.95, 0.004],
        [2, 73.06, 72.94, 73.05, 72.95, 0.004],
      ],
    },
    proposed: ["2 readings of bore, 2 readings of piston skirt, with their limits; cylinders 1, 2"],
    cells: ["B2: 1, bore, - to 73.05", "C2: 1, piston skirt, 72.95 to -", "C3: 2, piston skirt, 72.95 to -"],
    rowsIn: 4,
    findings: [
      "outside limit: 72.94 is under the lower limit 72.95 by 0.01",
      "outside limit: 73.06 is over the upper limit 73.05 by 0.01, proven with an uncertainty of 0.004",
    ],
  },
  "limits below the cylinders' columns that say what they are for": {
    sheets: {
      Pistons: [
        ["", "Cyl 1", "Cyl 2", "Cyl 3"],
        ["Bore", 73.02, 73.03, 73.07],
        ["Piston skirt", 72.97, 72.94, 72.98],
        ["Bore max", 73.05, 73.05, 73.05],
        ["Skirt min", 72.95, 72.95, 72.95],
      ],
    },
    proposed: ["3 readings of bore, 3 readings of piston skirt, with their limits; cylinders 1, 2, 3"],
    cells: ["D2: 3, bore, - to 73.05", "C3: 2, piston skirt, 72.95 to -"],
    rowsIn: 6,
    findings: ["outside limit: 72.94 is under the lower limit 72.95 by 0.01", "outside limit: 73.07 is over the upper limit 73.05 by 0.02"],
  },
  "a limit for each ring, named or beside its own gap": {
    sheets: {
      Named: [
        ["Cyl", "Top ring gap", "Second ring gap", "Top ring gap max", "Second ring gap max"],
        [1, 0.3, 0.31, 0.5, 0.6],
        [2, 0.54, 0.54, 0.5, 0.6],
      ],
      Beside: [
        ["Cyl", "Top ring gap", "Max", "Second ring gap", "Max"],
        [1, 0.3, 0.5, 0.31, 0.6],
        [2, 0.55, 0.5, 0.55, 0.6],
      ],
    },
    proposed: ["4 readings of ring end gap, with their limits; cylinders 1, 2", "4 readings of ring end gap, with their limits; cylinders 1, 2"],
    cells: ["B3: 2, ring end gap, top, - to 0.5", "C3: 2, ring end gap, second, - to 0.6", "D3: 2, ring end gap, second, - to 0.6"],
    rowsIn: 8,
    findings: ["outside limit: 0.54 is over the upper limit 0.5 by 0.04", "outside limit: 0.55 is over the upper limit 0.5 by 0.05"],
  },
  "each reading between its two limits": {
    sheets: {
      Pistons: [
        ["Cyl", "Min", "Bore", "Max", "Min", "Piston skirt", "Max"],
        [1, 73, 73.02, 73.05, 72.95, 72.97, 72.99],
        [2, 73, 73.06, 73.05, 72.95, 72.97, 72.99],
      ],
    },
    proposed: ["2 readings of bore, 2 readings of piston skirt, with their limits; cylinders 1, 2"],
    cells: ["C2: 1, bore, 73 to 73.05", "F3: 2, piston skirt, 72.95 to 72.99"],
    rowsIn: 4,
    findings: ["outside limit: 73.06 is over the upper limit 73.05 by 0.01"],
  },
  "a limit for what is worked out from the readings of its row": {
    sheets: {
      Bores: [
        ["Cyl", "Bore top", "Bore bottom", "Taper max"],
        [1, 73.04, 73.01, 0.02],
        [2, 73.02, 73.01, 0.02],
      ],
    },
    proposed: ["4 readings of bore, limits of taper; cylinders 1, 2"],
    cells: ["B2: 1, bore, top", "C3: 2, bore, bottom"],
    rowsIn: 2,
    findings: ["outside limit: 0.03 is over the upper limit 0.02 by 0.01"],
  },
  "a table of limits with those of each engine beside one another": {
    sheets: {
      Limits: [
        ["Item", "Port min", "Port max", "Starboard min", "Starboard max"],
        ["Bore", 73, 73.05, 73, 73.03],
      ],
      Bores: [
        ["Cyl", "Port bore", "Starboard bore"],
        [1, 73.02, 73.02],
        [2, 73.04, 73.04],
      ],
    },
    proposed: ["limits of bore", "4 readings of bore; engines port, starboard, cylinders 1, 2"],
    cells: ["B3: port, 2, bore", "C3: starboard, 2, bore"],
    rowsIn: 4,
    findings: ["outside limit: 73.04 is over the upper limit 73.03 by 0.01"],
  },
  "limits of both cylinders at the end, under a heading that is blank": {
    sheets: {
      Bores: [
        ["", "Cyl 1", "", "Cyl 2", "", "", ""],
        ["", "Thrust", "Pin", "Thrust", "Pin", "Min", "Max"],
        ["Top", 73.02, 73.01, 73.03, 73.07, 73, 73.05],
        ["Bottom", 73.06, 73.01, 73.03, 73.01, 73, 73.05],
      ],
    },
    proposed: ["8 readings of bore, with their limits; cylinders 1, 2"],
    cells: ["B4: 1, bore, bottom thrust, 73 to 73.05", "E3: 2, bore, top pin, 73 to 73.05"],
    rowsIn: 8,
    findings: ["outside limit: 73.06 is over the upper limit 73.05 by 0.01", "outside limit: 73.07 is over the upper limit 73.05 by 0.02"],
  },
  "each characteristic with a unit behind it": {
    sheets: {
      Engine: [
        ["Cyl", "Bore", "Unit", "Compression", "Unit"],
        [1, 73.02, "mm", 12, "bar"],
        [2, 73.02, "mm", 11, "bar"],
      ],
    },
    proposed: ["2 readings of bore, 2 readings of compression pressure; cylinders 1, 2"],
    cells: ["B2: 1, bore, mm, - to -", "D3: 2, compression pressure, bar, - to -"],
    rowsIn: 0,
    findings: [
      "missing limit: 2 readings of bore have no limit to be judged by; taper, out-of-round, bore wear and piston clearance have none either",
      "missing limit: 2 readings of compression pressure have no limit to be judged by; compression spread has none either",
    ],
  },
  "two upper limits for one reading": {
    sheets: {
      Bores: [
        ["Cyl", "Bore", "Max", "Upper limit"],
        [1, 73.02, 73.03, 73.08],
        [2, 73.05, 73.03, ""],
      ],
    },
    proposed: ["2 readings of bore, with their limits; cylinders 1, 2"],
    doubts: ["two limits of one side stand for the same reading, and the last one counts: where the other should, say so of its cells"],
    cells: ["B2: 1, bore, - to 73.08", "B3: 2, bore, - to 73.03"],
    rowsIn: 2,
    findings: ["outside limit: 73.05 is over the upper limit 73.03 by 0.02"],
  },
  "limits in words beside bare ones, and one that is no limit": {
    sheets: {
      Sheet1: [
        ["Cyl", "Ring gap", "Max"],
        [1, 0.3, 0.5],
        [2, 0.35, "0.25-0.45"],
        [3, 0.35, "see manual"],
      ],
    },
    proposed: ["3 readings of ring end gap, with their limits; cylinders 1, 2, 3"],
    cells: ["B2: 1, ring end gap, - to 0.5", "B3: 2, ring end gap, 0.25 to 0.45"],
    rowsIn: 3,
    findings: ['refused: upper holds the text "see manual": it must be a number'],
  },
};

test.each(Object.entries(SHOP_LAYOUTS))("%s", async (_, { sheets, proposed, doubts = [], cells, rowsIn, findings }) => {
  const snapshot = await typed(sheets);
  const proposals = proposeLayout(snapshot);
  expect(proposals.map(({ what }) => what)).toEqual(proposed);
  expect(proposals.flatMap((proposal) => proposal.doubts)).toEqual(doubts);
  const mapping = { version: 1 as const, ranges: proposals.map(({ range }) => range) };
  const read = readLayout(new Analysis(snapshot).book, mapping).readings.map(({ cell, engine, cylinder, characteristic, places, unit, own }) => {
    const limits = own && `${own.given.lower ?? "-"} to ${own.given.upper ?? "-"}`;
    return `${cellName(cell)}: ${[engine, cylinder, characteristic, positionText(places), unit, limits].filter(Boolean).join(", ")}`;
  });
  expect(read).toEqual(expect.arrayContaining([...cells]));
  const result = checkWorkbook(snapshot, mapping);
  expect(result.rowsIn).toBe(rowsIn);
  expect(result.findings.map(({ kind, sentence }) => `${kind}: ${sentence}`).sort()).toEqual(findings);
});
