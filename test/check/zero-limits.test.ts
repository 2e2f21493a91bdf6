import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { checkCsv } from "../../src/check/csv/check-csv.ts";
import type { CheckResult } from "../../src/check/finding.ts";
import type { Mapping } from "../../src/layout/mapping.ts";
import { proposeLayout } from "../../src/layout/propose.ts";
import { placeName } from "../../src/workbook/address.ts";
import { typed as memory } from "../layout/typed.ts";
import { type Typed, workbook } from "./workbook.ts";

// Round and straight parts are the best there are: what cannot be below 0 needs no proof that it is not (a fact of geometry, not of a standard).

const briefly = ({ findings }: CheckResult) => findings.map(({ kind, cell, value, verdict }) => [kind, placeName(cell), value, verdict]);
const check = (sheets: Record<string, Typed>) => checkWorkbook(workbook(sheets));

const LIMITS: Typed = [
  ["Characteristic", "Lower", "Upper", "U"],
  ["Taper", 0, 0.02, 0.004],
  ["Valve clearance, inlet", 0, 0.3, 0.01],
  ["Pin clearance", 0, 0.02, 0.004],
];
const judged = (heading: string, value: number, row: number): Typed => [
  ["Cylinder", heading, "Verdict"],
  [1, value, `=HATCH.VERDICT(B2,Limits!B${row},Limits!C${row},Limits!D${row})`],
];

describe("a perfect part is not condemned by a lower limit of 0", () => {
  test("where the sheet's own verdict does so, that is told at the limit and nothing of the part", () => {
    const { findings, rowsIn, checked } = check({ Limits: LIMITS, Bores: judged("Taper", 0, 2) });
    expect([rowsIn, checked]).toEqual([1, 1]);
    expect(findings.map(({ kind, cell, label, sentence }) => [kind, placeName(cell), label, sentence])).toEqual([
      [
        "zero limit",
        "Limits!B2",
        "Taper, Lower",
        "nothing can be below this lower limit of 0, so it is left out; the sheet's own verdict goes by it and says not proven of 0: leave the limit blank",
      ],
    ]);
  });

  test("nothing at all is told where the verdict is the same without the limit", () => {
    expect(check({ Limits: LIMITS, Bores: judged("Taper", 0.01, 2) }).findings).toEqual([]);
  });

  test("what is over the upper limit is told as before", () => {
    expect(briefly(check({ Limits: LIMITS, Bores: judged("Taper", 0.03, 2) }))).toEqual([["outside limit", "Bores!B2", 0.03, "over"]]);
  });

  test("a reading with a heading of no meaning goes by the name of its limit", () => {
    expect(briefly(check({ Limits: LIMITS, Valves: judged("Clearance", 0.005, 3) }))).toEqual([["zero limit", "Limits!B3", 0.005, null]]);
  });

  test("a difference of two sizes can be below 0, and keeps its limit", () => {
    expect(briefly(check({ Limits: LIMITS, Pins: judged("Pin clearance", 0.001, 4) }))).toEqual([["not proven", "Pins!B2", 0.001, "not proven"]]);
  });

  test("a taper below 0 is no taper: its lower limit stays", () => {
    expect(briefly(check({ Limits: LIMITS, Bores: judged("Taper", -0.02, 2) }))).toEqual([["outside limit", "Bores!B2", -0.02, "under"]]);
  });

  test("a lower limit of 0 alone needs no proof", () => {
    const alone: Typed = [LIMITS[0]!, ["Taper", 0, null, 0.004]];
    expect(briefly(check({ Limits: alone, Bores: judged("Taper", 0.001, 2) }))).toEqual([["zero limit", "Limits!B2", 0.001, null]]);
  });
});

// From 0 to 0.02 there is room of 0.02, of which 0.01 is more than a third.
test("a gauge too coarse for the room from 0 is told of as before, in a sheet and in a file", async () => {
  const coarse: Typed = [LIMITS[0]!, ["Taper", 0, 0.02, 0.01]];
  const told = check({ Limits: coarse, Bores: judged("Taper", 0.01, 2) }).findings.filter(({ kind }) => kind === "coarse gauge");
  expect(told.map(({ lower, upper, details }) => [lower, upper, details.tolerance])).toEqual([[0, 0.02, 0.02]]);
  async function* bytes(): AsyncGenerator<Uint8Array> {
    yield new TextEncoder().encode("characteristic,value,lower,upper,uncertainty\ntaper,0.005,0,0.02,0.01\n");
  }
  const { findings } = await checkCsv(bytes());
  expect(findings.map(({ kind, lower, upper }) => [kind, lower, upper])).toEqual([["coarse gauge", 0, 0.02]]);
});

describe("without a verdict of the sheet's own nothing is told", () => {
  test("in a table in long form", () => {
    const rows: Typed = [
      ["Characteristic", "Value", "Lower", "Upper", "U"],
      ["taper", 0, 0, 0.02, 0.004],
      ["ovality", 0.001, 0, 0.02, 0.004],
      ["piston clearance", 0.001, 0, 0.02, 0.004],
    ];
    expect(briefly(check({ Bores: rows }))).toEqual([["not proven", "Bores!B4", 0.001, "not proven"]]);
  });

  test("in a layout of the shop's own, also for what is worked out from the readings", async () => {
    const snapshot = await memory({
      Sheet1: [
        ["Cyl", "Top thrust", "Top pin", "Bottom thrust", "Bottom pin"],
        [1, 73.02, 73.02, 73.02, 73.02],
        [""],
        ["What", "Min", "Max", "U"],
        ["Taper", 0, 0.02, 0.004],
        ["Ovality", 0, 0.02, 0.004],
      ],
    });
    const mapping: Mapping = { version: 1, ranges: proposeLayout(snapshot).map(({ range }) => range) };
    const { findings, rowsIn } = checkWorkbook(snapshot, mapping);
    expect(rowsIn).toBe(2);
    expect(findings).toEqual([]);
  });

  test("in a file of readings, whichever way a row is read", async () => {
    async function* bytes(): AsyncGenerator<Uint8Array> {
      yield new TextEncoder().encode(
        "characteristic,value,lower,upper,uncertainty\ntaper,0.000,0,0.02,0.004\nTaper,0.001,0,0.02,0.004\nbore wear,0.001,0,0.02,0.004\ntaper,0.019,0,0.02,0.004\n",
      );
    }
    const { findings, checked } = await checkCsv(bytes());
    expect(checked).toBe(4);
    expect(findings.map(({ line, kind, lower }) => [line, kind, lower])).toEqual([
      [4, "not proven", 0],
      [5, "not proven", null],
    ]);
  });
});
