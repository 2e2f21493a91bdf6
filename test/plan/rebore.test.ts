import fc from "fast-check";
import { memoryHost } from "../../src/hosts/memory.ts";
import { planRebore, type ReboreInputs } from "../../src/plan/rebore.ts";
import { area, at, calculated, filled, type Sheets, shown } from "./stand.ts";

/** Three bores, each a block of three heights and two axes, and the same bores one a row. */
const BLOCKS = [
  [73.05, 73.02, 73.04, 73.02, 73.03, 73.02],
  [73.27, 73.2, 73.24, 73.2, 73.21, 73.2],
  [73.12, 73.1, 73.11, 73.1, 73.1, 73.1],
];
const stacked: Sheets = { Bores: BLOCKS.flatMap((bore) => [0, 2, 4].map((from) => [bore[from]!, bore[from + 1]!])), Plan: [["Plan"]] };
const inRows: Sheets = { "Bore book": BLOCKS.map((bore) => [...bore]), Plan: [["Plan"]] };
const blocks = ["A1:B3", "A4:B6", "A7:B9"].map((range) => area("Bores", range));
const rows = { rows: area("Bore book", "A1:F3"), axes: 2 };
const WANTED = { standard: 73, sizes: [[0.75, 0.25, 0.5]], allowance: 0.03 };

const plan = (inputs: Partial<ReboreInputs> = {}) => planRebore(calculated(stacked), { parts: { blocks }, ...WANTED, ...inputs });

describe("what is planned", () => {
  // TM 55-1905-219-14-10 p. 5-368: the worn bore decides, sizes come from a list; one size for the block and the
  // allowance are common practice. 73.27 + 0.03 asks for 73.3, so 73.5 is the first of the list to reach it (by hand).
  // Bored short of the finish bore by the stock that the hone is to take: 73.5 − 0.03 (common practice).
  test("one oversize for the block, with finish bore, what it is bored to and stock of each bore", () => {
    expect(plan().parts).toEqual([
      {
        name: "bore 1",
        needed: 73.08,
        size: 0.5,
        finish: 73.5,
        first: 73.47,
        leastStock: 0.45,
        mostStock: 0.48,
        says: "bore to 73.47, finish to 73.5, oversize 0.5: takes 0.45 to 0.48 off the diameter",
      },
      {
        name: "bore 2",
        needed: 73.3,
        size: 0.5,
        finish: 73.5,
        first: 73.47,
        leastStock: 0.23,
        mostStock: 0.3,
        says: "bore to 73.47, finish to 73.5, oversize 0.5: takes 0.23 to 0.3 off the diameter",
      },
      {
        name: "bore 3",
        needed: 73.15,
        size: 0.5,
        finish: 73.5,
        first: 73.47,
        leastStock: 0.38,
        mostStock: 0.4,
        says: "bore to 73.47, finish to 73.5, oversize 0.5: takes 0.38 to 0.4 off the diameter",
      },
    ]);
  });

  // By hand: 73.5 − 73.27 = 0.23. On the true centre line bore 2 may have lost 0.27 on one side: 73.75 − (73 + 2 × 0.27) = 0.21.
  test("what is left to cut where it is least, and that no allowance is typed", () => {
    expect(plan().remarks).toEqual(["Least left to cut where a bore is worn most: 0.23 on the diameter, bore 2, 0.03 of it for honing."]);
    expect(plan({ centring: "true", allowance: null }).remarks).toEqual([
      "Least left to cut where a bore is worn most: 0.21 on the diameter, bore 2.",
      "Careful: no stock for honing is typed: any cut at all, however small, counts as cleaning up.",
    ]);
  });

  // With nothing to leave for honing a size that is exactly the needed one cuts nothing; with an allowance it cuts the allowance.
  test("a size that is exactly the needed one does with an allowance and does not without", () => {
    const one = (allowance: number | null) => plan({ parts: { blocks: [[[73.22]]] }, allowance, sizes: [[0.25, 0.5]] }).parts[0]!.size;
    expect([one(0.03), one(0.04)]).toEqual([0.25, 0.5]);
    expect(plan({ parts: { blocks: [[[73.25]]] }, allowance: null, sizes: [[0.25, 0.5]] }).parts[0]!.size).toBe(0.5);
  });

  test("every listed oversize, smallest first, says for each bore why it does or does not clean up", () => {
    const { sizes } = plan({ names: ["cyl 1", "cyl 2", "cyl 3"] });
    expect(sizes.map(({ size, finish, cleansUpAll, chosenFor, says }) => [size, finish, cleansUpAll, chosenFor, says])).toEqual([
      [0.25, 73.25, false, [], "does not clean up cyl 2 (0.05 short)"],
      [0.5, 73.5, true, ["cyl 1", "cyl 2", "cyl 3"], "cleans up every bore measured, chosen"],
      [0.75, 73.75, true, [], "cleans up every bore measured"],
    ]);
    expect(sizes[0]!.parts.map(({ says }) => says)).toEqual([
      "cleans up: 73.25 is 0.17 above the 73.08 needed (largest reading 73.05, 0.03 to leave for honing)",
      "does not clean up: 73.25 is 0.05 short of the 73.3 needed (largest reading 73.27, 0.03 to leave for honing)",
      "cleans up: 73.25 is 0.1 above the 73.15 needed (largest reading 73.12, 0.03 to leave for honing)",
    ]);
  });

  test("each bore its own when that is allowed, and both centrings say where the need comes from", () => {
    const own = plan({ common: false, centring: "true", allowance: 0 });
    expect(own.parts.map(({ size }) => size)).toEqual([0.25, 0.75, 0.25]);
    expect(own.sizes[2]!.chosenFor).toEqual(["bore 2"]);
    expect(own.sizes[0]!.says).toBe("does not clean up bore 2 (0.29 short), chosen for bore 1, bore 3");
    expect(own.sizes[1]!.parts[1]!.says).toBe(
      "does not clean up: 73.5 is 0.04 short of the 73.54 needed (standard 73 and twice the wear of 0.27, which may all be on one side)",
    );
  });

  test("measured pistons make the finish bore, and exactly the needed size cleans up", () => {
    const { parts, sizes } = plan({ pistons: [[73.7, 73.26, 73.46]], pistonClearance: 0.04, common: false });
    expect(parts.map(({ finish }) => finish)).toEqual([73.3, 73.3, 73.3]);
    expect(sizes[0]!.parts[1]!.says).toBe("cleans up: 73.3 is exactly what is needed (largest reading 73.27, 0.03 to leave for honing)");
  });

  test("a bore beyond the list says so, and the others are planned without it", () => {
    const { parts, sizes } = plan({ sizes: [[0.25]] });
    expect(parts.map(({ size, says }) => [size, says])).toEqual([
      [0.25, "bore to 73.22, finish to 73.25, oversize 0.25: takes 0.2 to 0.23 off the diameter"],
      [null, "needs 73.3, which no listed oversize reaches: sleeve"],
      [0.25, "bore to 73.22, finish to 73.25, oversize 0.25: takes 0.13 to 0.15 off the diameter"],
    ]);
    expect(sizes[0]!.cleansUpAll).toBe(false);
  });

  test("blank and bad readings keep to their own bore", () => {
    const sheets = structuredClone(stacked);
    sheets.Bores![1]![0] = null;
    sheets.Bores![3]![1] = "73,20";
    const { parts } = planRebore(calculated(sheets), { parts: { blocks }, ...WANTED });
    expect(parts.map(({ size, says }) => [size, says])).toEqual([
      [null, "a reading is still blank"],
      [null, 'bores holds the text "73,20": a decimal comma is not read, type it with this sheet\'s decimal sign (row 2, column 2)'],
      [0.25, "bore to 73.22, finish to 73.25, oversize 0.25: takes 0.13 to 0.15 off the diameter"],
    ]);
  });
});

test("the chosen oversize is the smallest of the list that cleans every bore up, tried one by one", () => {
  const size = fc.integer({ min: 7300, max: 7390 }).map((n) => n / 100);
  const sizes = fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 6 }).map((all) => all.map((n) => n / 20));
  fc.assert(
    fc.property(fc.array(fc.tuple(size, size), { minLength: 1, maxLength: 5 }), sizes, (bores, oversizes) => {
      const { parts: planned, sizes: listed } = planRebore({ name: "", sheets: [] }, { parts: { rows: bores, axes: 2 }, standard: 73, sizes: [oversizes] });
      const steps = (x: number) => Math.round(x * 100);
      const worst = Math.max(...bores.flat().map(steps));
      const fitting = oversizes.filter((oversize) => 7300 + steps(oversize) > worst);
      expect(listed.filter(({ cleansUpAll }) => cleansUpAll).map((row) => row.size)).toEqual(fitting.sort((a, b) => a - b));
      if (fitting.length > 0) expect(planned.map((row) => row.size)).toEqual(bores.map(() => fitting[0]));
    }),
  );
});

describe("written to the sheet", () => {
  const place = { at: at("Plan", "A3"), date: "2026-05-04" };

  test("one bore a row is one formula, which comes to the plan", () => {
    const made = planRebore(calculated(inRows), { parts: rows, ...WANTED }, place);
    expect(made.edits).toEqual([
      {
        sheet: "Plan",
        row: 2,
        column: 0,
        cells: [["=HATCH.REBOREPLAN('Bore book'!A1:F3, 73, {0.75,0.25,0.5}, 0.03, , 2)", null, null, null, null, null], ...blank(3, 6)],
      },
      { sheet: "Plan", row: 2, column: 6, cells: [["bore to"], ...[4, 5, 6].map((row) => [`=IF(ISNUMBER(D${row}),ROUND(D${row}-0.03,6),"")`])] },
    ]);
    expect(made.as).toBe("formulas");
    expect(shown(calculated(filled(inRows, made.edits)), area("Plan", "A4:F6"))).toEqual(made.parts.map(rowOf));
    expect(shown(calculated(filled(inRows, made.edits)), area("Plan", "G4:G6"))).toEqual([[73.47], [73.47], [73.47]]);
  });

  test("the names of the sheet stand beside formulas too", () => {
    const made = planRebore(calculated(inRows), { parts: rows, ...WANTED, names: ["No. 1", "No. 2", "No. 3"] }, place);
    expect(shown(calculated(filled(inRows, made.edits)), area("Plan", "G3:H6"))).toEqual([
      ["name", "bore to"],
      ["No. 1", 73.47],
      ["No. 2", 73.47],
      ["No. 3", 73.47],
    ]);
  });

  test("blocks are brought into rows beside the plan, in formulas too, and follow the readings", () => {
    const made = planRebore(calculated(stacked), { parts: { blocks }, ...WANTED }, place);
    expect(made.edits.map(({ cells }) => cells[0]![0])).toEqual([
      "=HATCH.REBOREPLAN(I4:N6, 73, {0.75,0.25,0.5}, 0.03, , 6)",
      "readings, one bore a row",
      "bore to",
    ]);
    const sheets = filled(stacked, made.edits);
    expect(shown(calculated(sheets), area("Plan", "A4:F6"))).toEqual(made.parts.map(rowOf));
    sheets.Bores![3]![0] = 73.6;
    const again = planRebore(calculated(sheets), { parts: { blocks }, ...WANTED });
    expect(again.parts[0]!.size).toBe(0.75);
    expect(shown(calculated(sheets), area("Plan", "A4:F6"))).toEqual(again.parts.map(rowOf));
  });

  test("under a plan without an allowance stands that there is none, for as long as its cell is blank", () => {
    const note = "no stock for honing is typed: any cut at all, however small, counts as cleaning up";
    const typed = planRebore(calculated(inRows), { parts: rows, ...WANTED, allowance: null }, place);
    expect(typed.edits.at(-1)).toEqual({ sheet: "Plan", row: 6, column: 0, cells: [[note]] });
    const values = planRebore(calculated(inRows), { parts: rows, ...WANTED, allowance: null }, { ...place, as: "values" });
    expect(values.edits[0]!.cells.at(-2)![0]).toBe(note);
    const sheets = { ...inRows, Plan: [["Allowance", null]] as Sheets[string] };
    const made = planRebore(calculated(sheets), { parts: rows, ...WANTED, allowance: area("Plan", "B1") }, place);
    const after = filled(sheets, made.edits);
    expect(shown(calculated(after), area("Plan", "A7"))).toEqual([[note]]);
    after.Plan![0]![1] = 0.03;
    expect(shown(calculated(after), area("Plan", "A7"))).toEqual([[null]]);
  });

  test("one block alone needs no rows beside it", () => {
    const made = planRebore(calculated(stacked), { parts: { blocks: [blocks[1]!] }, ...WANTED, standard: area("Plan", "B1") }, place);
    expect(made.edits).toEqual([]);
    const sheets = { ...stacked, Plan: [["Standard", 73]] };
    const placed = planRebore(calculated(sheets), { parts: { blocks: [blocks[1]!] }, ...WANTED, standard: area("Plan", "B1") }, place);
    expect(placed.edits.map(({ cells }) => cells[0]![0])).toEqual(["=HATCH.REBOREPLAN(Bores!A4:B6, B1, {0.75,0.25,0.5}, 0.03)", "bore to"]);
  });

  test("typed readings, or somebody who wants them frozen, get values with the day", () => {
    for (const inputs of [
      { parts: { rows: BLOCKS, axes: 2 }, ...WANTED },
      { parts: rows, ...WANTED },
    ]) {
      const made = planRebore(calculated(inRows), inputs, { ...place, as: "values" });
      expect(made.as).toBe("values");
      expect(made.edits[0]!.cells.at(1)).toEqual(["bore 1", 73.08, 0.5, 73.5, 0.45, 0.48, 73.47]);
      expect(made.edits[0]!.cells.at(-1)).toEqual(["planned 2026-05-04; values, which do not follow the readings", null, null, null, null, null, null]);
    }
    expect(planRebore(calculated(inRows), { parts: { rows: BLOCKS, axes: 2 }, ...WANTED }, place).as).toBe("values");
  });

  test("cells that hold something are named and left alone, until somebody says otherwise", () => {
    const sheets = { ...inRows, Plan: [["Plan"], [], [], [null, "mine"], [null, null, "=1+1"]] as Sheets[string] };
    const inputs = { parts: rows, ...WANTED };
    const refused = planRebore(calculated(sheets), inputs, place);
    expect([refused.edits, refused.inTheWay]).toEqual([[], [at("Plan", "B4"), at("Plan", "C5")]]);
    const made = planRebore(calculated(sheets), inputs, { ...place, overwrite: true });
    expect(made.inTheWay).toEqual([at("Plan", "B4"), at("Plan", "C5")]);
    expect(shown(calculated(filled(sheets, made.edits)), area("Plan", "A4:F6"))).toEqual(made.parts.map(rowOf));
  });

  test("a plan never stands on the cells that it is made from", () => {
    const made = planRebore(calculated(inRows), { parts: rows, ...WANTED }, { at: at("Bore book", "F2"), date: "2026-05-04", overwrite: true });
    expect([made.edits, made.refused]).toEqual([[], "the plan would stand on cells that it is made from: choose another place"]);
  });

  test("one call of write is one step back", async () => {
    const host = memoryHost([
      { name: "Bore book", cells: inRows["Bore book"]! },
      { name: "Plan", cells: [["Plan"]] },
    ]);
    const before = await host.read();
    const made = planRebore(before, { parts: { blocks: ["A1:F1", "A2:F2"].map((range) => area("Bore book", range)) }, ...WANTED }, place);
    await host.write(made.edits);
    expect(await host.read()).not.toEqual(before);
    host.undo();
    expect(await host.read()).toEqual(before);
  });
});

describe("faults and blanks", () => {
  test("the sentence of the function says why there is no plan", () => {
    expect(plan({ sizes: [[73.25]] }).fault).toBe("REBOREPLAN: oversizes 73.25: type what is added to the standard bore 73, not the finished size");
    expect(plan({ parts: { blocks: [area("Bores", "A1:B3"), area("Bores", "A4:B5")] } }).fault).toBe(
      "bore 2 has 4 readings and bore 1 has 6: every bore of a block is measured alike",
    );
  });

  test("nothing measured, or no list, is no plan and no fault", () => {
    for (const inputs of [{ sizes: null }, { standard: area("Plan", "C3") }])
      expect(plan(inputs)).toMatchObject({ parts: [], sizes: [], fault: null, edits: [] });
  });
});

const blank = (rows: number, columns: number): null[][] => Array.from({ length: rows }, () => new Array(columns).fill(null));
const rowOf = ({ needed, size, finish, leastStock, mostStock }: ReturnType<typeof plan>["parts"][number], at: number) => [
  at + 1,
  needed,
  size,
  finish,
  leastStock,
  mostStock,
];
