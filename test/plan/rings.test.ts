import fc from "fast-check";
import { planRings, type RingInputs } from "../../src/plan/rings.ts";
import { Made } from "../setup/made.ts";
import { area, at, calculated, filled, type Sheets, shown } from "./stand.ts";

const sheets: Sheets = {
  Rings: [
    ["top", 0.24],
    ["second", 0.292],
    ["oil", null],
    ["spare", "0,3"],
  ],
  Bores: [
    [73.02, 73.0],
    [73.01, 73.0],
  ],
  Plan: [["Plan"]],
};
const bore = area("Bores", "A1:B2");
const measured = (row: number) => area("Rings", `B${row}`);
const place = { at: at("Plan", "A3"), date: "2026-05-04" };
const INPUTS: RingInputs = {
  rings: [
    { name: "top", measured: measured(1), bore },
    { name: "second", measured: measured(2), bore: area("Bores", "B2") },
    { name: "oil", measured: measured(3), target: 0.4 },
    { name: "spare", measured: measured(4), bore },
  ],
};

describe("what is planned", () => {
  // .004 for each unit of bore: common practice; 73 × 0.004 = 0.292 in the smallest reading.
  test("each ring measured, its target and what to file", () => {
    expect(planRings(calculated(sheets), INPUTS).rings).toEqual([
      { name: "top", measured: 0.24, target: 0.292, toFile: 0.052, says: "file 0.052 off, from 0.24 to 0.292" },
      { name: "second", measured: 0.292, target: 0.292, toFile: 0, says: "exactly the target 0.292" },
      { name: "oil", measured: null, target: 0.4, toFile: null, says: "the gap is not measured yet" },
      {
        name: "spare",
        measured: null,
        target: 0.292,
        toFile: null,
        says: 'measured holds the text "0,3": a decimal comma is not read, type it with this sheet\'s decimal sign',
      },
    ]);
  });

  test("a ring maker's figure for the bore goes in its place, and a ring that is open enough is left", () => {
    // A ring maker's published least: .0035 in for each inch; 4 in → .014 in.
    const ring = planRings(calculated(sheets), { rings: [{ name: "top", measured: 0.016, bore: 4 }], perBore: 0.0035 }).rings[0]!;
    expect(ring).toMatchObject({ target: 0.014, toFile: 0, says: "open enough: 0.002 wider than the target 0.014" });
  });

  test("a bore with a reading missing gives no target yet", () => {
    const some = {
      ...sheets,
      Bores: [
        [73.02, null],
        [73.01, 73],
      ],
    };
    expect(planRings(calculated(some), INPUTS).rings[0]).toMatchObject({
      target: null,
      toFile: null,
      says: "no target: a gap wanted, a least gap, or a bore with all its readings, is missing",
    });
  });

  test("inches among the millimetres of a bore are said", () => {
    const { says } = planRings(calculated(sheets), { rings: [{ name: "top", measured: 0.2, bore: [[73, 2.875]] }] }).rings[0]!;
    expect(says).toBe("readings 2.875 is about 1/25.4 of reading 73: is one in inches, the other in millimetres?");
  });

  test("filing a ring by what is said brings it to its target, to the last decimal", () => {
    const gap = fc.integer({ min: 100, max: 600 }).map((n) => n / 1000);
    fc.assert(
      fc.property(gap, gap, (before, target) => {
        const { toFile } = planRings({ name: "", sheets: [] }, { rings: [{ name: "", measured: before, target }] }).rings[0]!;
        expect(Math.round((before + toFile!) * 1000)).toBe(Math.round(Math.max(before, target) * 1000));
      }),
    );
  });
});

describe("by the limits that are typed", () => {
  const limits = { least: 0.25, most: 0.45 };
  const said = (measured: number, more: Partial<RingInputs["rings"][number]> = {}) => {
    const [ring] = planRings(calculated(sheets), { rings: [{ name: "top", measured, ...limits, ...more }] }).rings;
    return [ring!.toFile, ring!.says];
  };

  // By hand: the middle is 0.35; 73 × 0.004 = 0.292 lies inside, 100 × 0.004 = 0.4 too, 150 × 0.004 = 0.6 does not.
  test.each([
    [0.3, {}, 0, "stays: 0.3 is within 0.25 to 0.45"],
    [0.25, { bore: 73 }, 0, "stays: 0.25 is within 0.25 to 0.45"],
    [0.22, {}, 0.13, "file 0.13 off, from 0.22 to 0.35, the middle of 0.25 to 0.45"],
    [0.22, { bore: 73 }, 0.072, "file 0.072 off, from 0.22 to 0.292, the target, as 0.25 is the least"],
    [0.22, { bore: 150 }, 0.13, "file 0.13 off, from 0.22 to 0.35, the middle of 0.25 to 0.45; the target 0.6 is outside the limits"],
    [0.62, { bore: 73 }, null, "too wide: 0.62 is over 0.45, and filing cannot close it; fit another ring"],
  ])("a gap of %p with %j: %p off", (measured, more, toFile, says) => {
    expect(said(measured, more)).toEqual([toFile, says]);
  });

  test("a least gap alone is what a ring is filed to", () => {
    expect(said(0.22, { most: undefined as never })).toEqual([0.03, "file 0.03 off, from 0.22 to 0.25, the least"]);
    expect(said(0.3, { most: undefined as never })).toEqual([0, "stays: 0.3 is not under 0.25"]);
  });

  test("without any given, the limits by which the sheet judges the gap count, and the formulas go by them too", () => {
    const some: Sheets = {
      Rings: [
        ["Ring", "Gap", "Verdict"],
        ["top", 0.22, '=IF(B2="","",HATCH.VERDICT(B2,IF(Limits!A1=0,"",Limits!A1),IF(Limits!B1="","",Limits!B1)))'],
        ["second", 0.26, "=HATCH.VERDICT(B3,0.25,0.45)"],
        ["oil", 0.22, null],
      ],
      Limits: [[0.25, 0.45]],
      Plan: [["Plan"]],
    };
    // 73 × 0.004 = 0.292 would be filed to were there no limits.
    const rings = ["top", "second", "oil"].map((name, at) => ({ name, measured: area("Rings", `B${at + 2}`), bore: 73 }));
    const made = planRings(calculated(some), { rings }, place);
    expect(made.limitsInSheet).toBe(2);
    expect(made.rings.map(({ toFile, says }) => [toFile, says])).toEqual([
      [0.072, "file 0.072 off, from 0.22 to 0.292, the target, as 0.25 is the least"],
      [0, "stays: 0.26 is within 0.25 to 0.45"],
      [0.072, "file 0.072 off, from 0.22 to 0.292"],
    ]);
    expect(made.edits[0]!.cells.slice(1).map((line) => line[2])).toEqual([
      "=HATCH.RINGGAPFILE(Rings!B2, B4, Limits!A1, Limits!B1)",
      "=HATCH.RINGGAPFILE(Rings!B3, B5, 0.25, 0.45)",
      "=HATCH.RINGGAPFILE(Rings!B4, B6)",
    ]);
    // Limits that are given go before those of the sheet.
    expect(planRings(calculated(some), { rings: [{ ...rings[1]!, least: 0.3 }] }).rings[0]!.says).toBe(
      "file 0.04 off, from 0.26 to 0.3, the least; the target 0.292 is outside the limits",
    );
    const blank = { ...some, Limits: [[null, null]] };
    expect(planRings(calculated(blank), { rings: [rings[0]!] }).limitsInSheet).toBe(0);
  });

  test("on the sheets of a new workbook the plan and the sheet file the same", async () => {
    const book = await Made.of({ cylinders: 1 });
    await book.fill("RingReadings", "End gap", [0.22, 0.3, 0.5]);
    for (const ring of ["top", "second", "oil"]) await book.limit(`Ring end gap, ${ring}`, 0.25, 0.45);
    const gaps = [0, 1, 2].map((row) => ({ name: `${row}`, measured: { ...book.at("RingReadings", "End gap", row), rows: 1, columns: 1 } }));
    const { rings } = planRings(await book.host.read(), { rings: gaps });
    expect(rings.map(({ toFile }) => toFile)).toEqual([0.13, 0, null]);
    expect(await book.column("RingReadings", "To file")).toEqual([0.13, 0, rings[2]!.says.replace("; fit another ring", "")]);
  });

  test("the formulas that are written come to the plan", () => {
    const some = { ...sheets, Rings: [[0.22, 0.25, 0.45], [0.3], [0.62]] };
    const rings = [1, 2, 3].map((row) => ({
      name: `ring ${row}`,
      measured: area("Rings", `A${row}`),
      least: area("Rings", "B1"),
      most: area("Rings", "C1"),
    }));
    const made = planRings(calculated(some), { rings }, place);
    expect(made.edits[0]!.cells[1]).toEqual(["ring 1", null, "=HATCH.RINGGAPFILE(Rings!A1, , Rings!B1, Rings!C1)"]);
    expect(shown(calculated(filled(some, made.edits)), area("Plan", "C4:C6"))).toEqual([
      [0.13],
      [0],
      ["too wide: 0.62 is over 0.45, and filing cannot close it"],
    ]);
  });
});

describe("written to the sheet", () => {
  test("a row of formulas for each ring, which come to the plan", () => {
    const made = planRings(calculated(sheets), INPUTS, place);
    expect(made.edits[0]!.cells).toEqual([
      ["ring", "target", "to file"],
      ["top", "=HATCH.RINGGAPTARGET(INDEX(HATCH.BORESUMMARY(Bores!A1:B2),2,1))", "=HATCH.RINGGAPFILE(Rings!B1, B4)"],
      ["second", "=HATCH.RINGGAPTARGET(Bores!B2)", "=HATCH.RINGGAPFILE(Rings!B2, B5)"],
      ["oil", 0.4, "=HATCH.RINGGAPFILE(Rings!B3, B6)"],
      ["spare", "=HATCH.RINGGAPTARGET(INDEX(HATCH.BORESUMMARY(Bores!A1:B2),2,1))", "=HATCH.RINGGAPFILE(Rings!B4, B7)"],
    ]);
    expect(shown(calculated(filled(sheets, made.edits)), area("Plan", "B4:C6"))).toEqual([
      [0.292, 0.052],
      [0.292, 0],
      [0.4, null],
    ]);
  });

  test("a target that stands in a cell is referred to, and figures for the bore go along", () => {
    const made = planRings(calculated(sheets), { rings: [{ name: "top", measured: measured(1), target: area("Rings", "B2") }], perBore: 0.0045 }, place);
    expect(made.edits[0]!.cells[1]).toEqual(["top", "=Rings!B2", "=HATCH.RINGGAPFILE(Rings!B1, B4)"]);
    const own = planRings(calculated(sheets), { rings: [{ name: "top", measured: measured(1), bore: 73 }], perBore: 0.0045 }, place);
    expect(own.edits[0]!.cells[1]![1]).toBe("=HATCH.RINGGAPTARGET(73, 0.0045)");
  });

  test("typed gaps are values with the day", () => {
    const made = planRings(
      calculated(sheets),
      {
        rings: [
          { name: "top", measured: 0.24, target: 0.29 },
          { name: "second", measured: null, target: 0.29 },
        ],
      },
      place,
    );
    expect(made.edits[0]!.cells).toEqual([
      ["ring", "measured", "target", "to file"],
      ["top", 0.24, 0.29, 0.05],
      ["second", null, 0.29, "the gap is not measured yet"],
      ["planned 2026-05-04; values, which do not follow the readings", null, null, null],
    ]);
  });

  test("without rings nothing is written", () => {
    expect(planRings(calculated(sheets), { rings: [] }, place)).toMatchObject({ rings: [], edits: [], as: null });
  });
});
