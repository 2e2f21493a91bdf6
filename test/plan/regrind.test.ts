import fc from "fast-check";
import { planRegrind, type RegrindInputs } from "../../src/plan/regrind.ts";
import { area, at, calculated, filled, type Sheets, shown } from "./stand.ts";

/** Three crankpins, each one row of two places and two axes; and the same stacked, a block of two rows each. */
const PINS = [
  [49.97, 49.95, 49.98, 49.96],
  [49.9, 49.85, 49.92, 49.9],
  [49.96, 49.96, 49.97, 49.96],
];
const inRows: Sheets = { Crankpins: PINS.map((pin) => [...pin]), Plan: [["Plan"]] };
const stacked: Sheets = { Crankpins: PINS.flatMap((pin) => [pin.slice(0, 2), pin.slice(2)]), Plan: [["Plan"]] };
const rows = { rows: area("Crankpins", "A1:D3"), axes: 2 };
const WANTED = { standard: 50, sizes: [[0.5, 0.25, 0.75]], allowance: 0.02 };

const plan = (inputs: Partial<RegrindInputs> = {}) => planRegrind(calculated(inRows), { parts: rows, ...WANTED, ...inputs });

describe("what is planned", () => {
  // TM 5-3805-262-34 p. 4-24: if one journal is ground, all are. By hand: pin 2 is worn to 49.85, all of it perhaps on one
  // side, so 50 − 2 × 0.15 − 0.02 = 49.68 is needed and 49.5 is the first of the list below it.
  test("one undersize for all, with the size to grind to and what comes off each", () => {
    const { parts, remarks } = plan({ names: ["No. 1", "No. 2", "No. 3"] });
    expect(parts).toEqual([
      {
        name: "No. 1",
        needed: 49.88,
        size: 0.5,
        finish: 49.5,
        first: null,
        leastStock: 0.45,
        mostStock: 0.48,
        says: "grind to 49.5, undersize 0.5: takes 0.45 to 0.48 off the diameter",
      },
      {
        name: "No. 2",
        needed: 49.68,
        size: 0.5,
        finish: 49.5,
        first: null,
        leastStock: 0.35,
        mostStock: 0.42,
        says: "grind to 49.5, undersize 0.5: takes 0.35 to 0.42 off the diameter",
      },
      {
        name: "No. 3",
        needed: 49.9,
        size: 0.5,
        finish: 49.5,
        first: null,
        leastStock: 0.46,
        mostStock: 0.47,
        says: "grind to 49.5, undersize 0.5: takes 0.46 to 0.47 off the diameter",
      },
    ]);
    expect(remarks).toEqual(["Least left to cut where a journal is worn most: 0.2 on the diameter, No. 2, 0.02 of it for grinding."]);
  });

  test("every listed undersize, smallest first, says for each journal why it does or does not clean up", () => {
    const { sizes } = plan();
    expect(sizes.map(({ size, finish, cleansUpAll, says }) => [size, finish, cleansUpAll, says])).toEqual([
      [0.25, 49.75, false, "does not clean up journal 2 (0.07 short)"],
      [0.5, 49.5, true, "cleans up every journal measured, chosen"],
      [0.75, 49.25, true, "cleans up every journal measured"],
    ]);
    expect(sizes[0]!.parts.map(({ says }) => says)).toEqual([
      "cleans up: 49.75 is 0.13 below the 49.88 needed (standard 50 less twice the wear of 0.05, which may all be on one side, 0.02 to leave for grinding)",
      "does not clean up: 49.75 is 0.07 above the 49.68 needed (standard 50 less twice the wear of 0.15, which may all be on one side, 0.02 to leave for grinding)",
      "cleans up: 49.75 is 0.15 below the 49.9 needed (standard 50 less twice the wear of 0.04, which may all be on one side, 0.02 to leave for grinding)",
    ]);
  });

  test("on the worn journal its smallest reading decides, and each may have its own", () => {
    const own = plan({ centring: "worn", common: false, allowance: null });
    expect(own.parts.map(({ needed, size }) => [needed, size])).toEqual([
      [49.95, 0.25],
      [49.85, 0.25],
      [49.96, 0.25],
    ]);
    expect(own.sizes[0]!.parts[1]!.says).toBe("cleans up: 49.75 is 0.1 below the 49.85 needed (smallest reading 49.85)");
    expect(own.remarks).toEqual([
      "Least left to cut where a journal is worn most: 0.1 on the diameter, journal 2.",
      "Careful: no stock for grinding is typed: any cut at all, however small, counts as cleaning up.",
    ]);
    expect(plan({ common: false }).parts.map(({ size }) => size)).toEqual([0.25, 0.5, 0.25]);
  });

  // 49.85 leaves nothing to cut of a journal that is worn to it; with something to leave for grinding it is ground to that size.
  test("a size that is exactly the needed one does with an allowance and does not without", () => {
    const one = (smallest: number, allowance: number | null) =>
      plan({ parts: { blocks: [[[smallest]]] }, centring: "worn", allowance, sizes: [[0.25, 0.5]] }).parts[0]!.size;
    expect([one(49.75, null), one(49.77, 0.02), one(49.769, 0.02)]).toEqual([0.5, 0.25, 0.5]);
  });

  // By hand: 54 − 2 × 2.105 − 0.05 = 49.74 and 54 − 2 × 2.23 − 0.05 = 49.49.
  test("measured shells make the size to grind to", () => {
    const { sizes } = plan({ sizes: [[0.25, 0.5]], shells: [[2.105, 2.23]], housing: 54, clearance: 0.05 });
    expect(sizes.map(({ finish }) => finish)).toEqual([49.74, 49.49]);
  });

  test("a journal beyond the list says so; blank, bad and doubtful ones keep to themselves", () => {
    expect(plan({ sizes: [[0.25]] }).parts.map(({ size, says }) => [size, says])).toEqual([
      [0.25, "grind to 49.75, undersize 0.25: takes 0.2 to 0.23 off the diameter"],
      [null, "needs 49.68, which no listed undersize reaches: another shaft, or what its maker's service manual allows"],
      [0.25, "grind to 49.75, undersize 0.25: takes 0.21 to 0.22 off the diameter"],
    ]);
    const sheets = structuredClone(inRows);
    sheets.Crankpins![0]![1] = null;
    sheets.Crankpins![2]![0] = "49,96";
    const { parts } = planRegrind(calculated(sheets), { parts: rows, ...WANTED });
    expect(parts.map(({ says }) => says)).toEqual([
      "a reading is still blank",
      "grind to 49.5, undersize 0.5: takes 0.35 to 0.42 off the diameter",
      'journals holds the text "49,96": a decimal comma is not read, type it with this sheet\'s decimal sign (row 3, column 1)',
    ]);
    expect(plan({ sizes: [[0.02]] }).parts[1]!.says).toBe(
      "undersizes 0.02: even the largest cleans nothing up, and is less than a thousandth of the standard journal, 50: are both in one unit?",
    );
  });

  test("the sentence of the function says why there is no plan, and unlike blocks are named", () => {
    expect(plan({ sizes: [[49.5]] }).fault).toBe("REGRINDPLAN: undersizes 49.5: type what is taken off the standard journal 50, not the finished size");
    expect(plan({ parts: { blocks: [area("Crankpins", "A1:B3"), area("Crankpins", "A1:B2")] } }).fault).toBe(
      "journal 2 has 4 readings and journal 1 has 6: every journal of a shaft is measured alike",
    );
  });
});

test("the chosen undersize is the smallest of the list that cleans every journal up, tried one by one", () => {
  const size = fc.integer({ min: 4930, max: 4999 }).map((n) => n / 100);
  const list = fc.uniqueArray(fc.integer({ min: 2, max: 40 }), { minLength: 1, maxLength: 6 }).map((all) => all.map((n) => n / 20));
  fc.assert(
    fc.property(fc.array(fc.tuple(size, size), { minLength: 1, maxLength: 5 }), list, (journals, undersizes) => {
      const { parts, sizes } = planRegrind({ name: "", sheets: [] }, { parts: { rows: journals, axes: 2 }, standard: 50, sizes: [undersizes] });
      const steps = (x: number) => Math.round(x * 100);
      // Kept on the original centre line: twice the wear, counted in hundredths so that nothing is rounded.
      const needed = Math.min(...journals.map((pair) => 5000 - 2 * (5000 - Math.min(...pair.map(steps)))));
      const fitting = undersizes.filter((undersize) => 5000 - steps(undersize) < needed);
      expect(sizes.filter(({ cleansUpAll }) => cleansUpAll).map((row) => row.size)).toEqual(fitting.sort((a, b) => a - b));
      if (fitting.length > 0) expect(parts.map((row) => row.size)).toEqual(journals.map(() => fitting[0]));
    }),
  );
});

describe("written to the sheet", () => {
  const place = { at: at("Plan", "A3"), date: "2026-05-04" };
  const written = (sheets: Sheets) => shown(calculated(sheets), area("Plan", "A4:F6")).map(([, ...row]) => row);
  const rowsOf = ({ parts }: ReturnType<typeof plan>) =>
    parts.map(({ needed, size, finish, leastStock, mostStock }) => [needed, size, finish, leastStock, mostStock]);

  test("one journal a row is one formula, which comes to the plan", () => {
    const made = planRegrind(calculated(inRows), { parts: rows, ...WANTED }, place);
    expect(made.edits[0]!.cells[0]![0]).toBe("=HATCH.REGRINDPLAN(Crankpins!A1:D3, 50, {0.5,0.25,0.75}, 0.02, , 2)");
    expect(written(filled(inRows, made.edits))).toEqual(rowsOf(made));
  });

  test("blocks are brought into rows beside the plan and follow the readings", () => {
    const blocks = ["A1:B2", "A3:B4", "A5:B6"].map((range) => area("Crankpins", range));
    const made = planRegrind(calculated(stacked), { parts: { blocks }, ...WANTED }, place);
    expect(made.edits.map(({ cells }) => cells[0]![0])).toEqual(["=HATCH.REGRINDPLAN(H4:K6, 50, {0.5,0.25,0.75}, 0.02, , 4)", "readings, one journal a row"]);
    const sheets = filled(stacked, made.edits);
    expect(written(sheets)).toEqual(rowsOf(made));
    sheets.Crankpins![0]![0] = 49.7;
    expect(written(sheets)).toEqual(rowsOf(planRegrind(calculated(sheets), { parts: { blocks }, ...WANTED })));
  });

  test("frozen values have their day and the head of the function", () => {
    const made = planRegrind(calculated(inRows), { parts: rows, ...WANTED }, { ...place, as: "values" });
    expect(made.edits[0]!.cells[0]).toEqual(["journal", "needed", "undersize", "finish", "least stock", "most stock"]);
    expect(made.edits[0]!.cells[1]).toEqual(["journal 1", 49.88, 0.5, 49.5, 0.45, 0.48]);
  });
});
