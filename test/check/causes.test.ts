import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { checkCsv } from "../../src/check/csv/check-csv.ts";
import type { CheckResult } from "../../src/check/finding.ts";
import { wordOf } from "../../src/check/finding-words.ts";
import { proposeLayout } from "../../src/layout/propose.ts";
import { placeName } from "../../src/workbook/address.ts";
import { typed } from "../layout/typed.ts";
import { type Typed, workbook } from "./workbook.ts";

// Readings, limits and slips are invented.

const briefly = ({ findings }: CheckResult): string[] => findings.map((finding) => `${wordOf(finding)} ${placeName(finding.cell)}`);
const sentencesOf = ({ findings }: CheckResult): string[] => findings.map(({ sentence }) => sentence);
const LIMITS: Typed = [
  ["Characteristic", "Least", "Most"],
  ["Taper", null, 0.02],
  ["Clearance", 0.02, 0.04],
  ["Gap", 0.25, 0.5],
];

describe("a likely slip stands before the findings that it causes and says so", () => {
  /** Three bores; the taper is judged, and the clearance of the piston in each. */
  const bores = (slip: number | string): Record<string, Typed> => ({
    Bores: [
      ["Cylinder", "Top", "Low", "Taper", "Verdict", "Skirt", "Clearance verdict"],
      ...[
        [73.03, 73.02],
        [73.03, slip],
        [73.06, 73.02],
      ].map(([top, low], i) => {
        const row = i + 2;
        return [
          ...[i + 1, top!, low!, `=HATCH.TAPER(B${row}:C${row},1)`, `=HATCH.VERDICT(D${row},,Limits!$C$2)`, i === 1 ? 72.99 : 72.985],
          `=HATCH.VERDICT(C${row}-F${row},Limits!$B$3,Limits!$C$3)`,
        ];
      }),
    ],
    Limits: LIMITS,
  });

  test("what is worked out from it follows it, other findings stand behind, and nothing is lost", () => {
    const result = checkWorkbook(workbook(bores(73.92)));
    expect(briefly(result)).toEqual(["likely slip Bores!C3", "over Bores!G3", "over Bores!D3", "over Bores!D4"]);
    expect(result.findings[0]!.details.causes).toEqual(["over at Bores!G3", "over at Bores!D3"]);
    expect(sentencesOf(result)[0]).toMatch(/: is one digit wrong\? It causes 2 other findings: over at Bores!G3, over at Bores!D3$/);
    expect(briefly(checkWorkbook(workbook(bores(73.02))))).toEqual(["over Bores!D4"]);
  });

  test("what a function refuses because of it follows it too", () => {
    const result = checkWorkbook(workbook(bores(730.2)));
    expect(briefly(result)).toEqual(["likely slip Bores!C3", "over Bores!G3", "refused Bores!D3", "over Bores!D4"]);
    expect(result.rowsIn).toBe(result.checked + result.refused);
  });

  test("so does the verdict on the reading itself", () => {
    const rows = [73.02, 73.03, 730.2, 73.02, 73.1].map((bore, i) => [i + 1, bore, `=HATCH.VERDICT(B${i + 2},$F$1,$F$2)`]);
    const result = checkWorkbook(
      workbook({ Bores: [["Cylinder", "Bore", "Verdict", null, "least", 73], [...rows[0]!, null, "most", 73.08], ...rows.slice(1)] }),
    );
    expect(briefly(result)).toEqual(["likely slip Bores!B4", "over Bores!B4", "over Bores!B6"]);
    expect(result.findings[0]!.sentence).toMatch(/\? It causes 1 other finding: over$/);
  });

  test("and what a layout of the shop's own works out from it", async () => {
    const snapshot = await typed({
      Sheet1: [
        ["Cyl", "Top thrust", "Bottom thrust", "Skirt"],
        ...[1, 2, 3, 4].map((cylinder) => [cylinder, cylinder === 2 ? 72.02 : 73.02, 73.03, 72.99]),
        [""],
        ["What", "Min", "Max"],
        ["Piston clearance", 0.02, 0.04],
      ],
    });
    const mapping = { version: 1 as const, ranges: proposeLayout(snapshot).map(({ range }) => range) };
    const result = checkWorkbook(snapshot, mapping);
    expect(result.findings.map(({ kind, cell, label }) => [kind, placeName(cell), label])).toEqual([
      ["likely slip", "Sheet1!B3", "cylinder 2, bore, top thrust"],
      ["refused", "Sheet1!D3", "cylinder 2, piston clearance"],
    ]);
    expect(result.findings[0]!.details.causes).toEqual(["refused at Sheet1!D3"]);
  });

  test("a slip that causes nothing says nothing of it, and stands first all the same", () => {
    const result = checkWorkbook(
      workbook({
        Bores: [["Reading", "Taper"], ...[73.02, 73.03, 73.92, 73.02].map((reading, i) => [reading, i === 0 ? "=HATCH.TAPER(A2:A5)" : null])],
        Rings: [
          ["Gap", "Verdict"],
          [0.6, "=HATCH.VERDICT(A2,Limits!B4,Limits!C4)"],
        ],
        Limits: LIMITS,
      }),
    );
    expect(briefly(result)).toEqual(["likely slip Bores!A4", "over Rings!A2"]);
    expect(result.findings[0]!.sentence).toMatch(/is one digit wrong\?$/);
  });
});

test("inches among millimetres stand before what they cause, like a slip", () => {
  const rows = [73.02, 73.03, 2.8748, 73.02, 73.1].map((bore, i) => [i + 1, bore, `=HATCH.VERDICT(B${i + 2},$F$1,$F$2)`]);
  const result = checkWorkbook(workbook({ Bores: [["Cylinder", "Bore", "Verdict", null, "least", 73], [...rows[0]!, null, "most", 73.08], ...rows.slice(1)] }));
  expect(briefly(result)).toEqual(["mixed units Bores!B4", "under Bores!B4", "over Bores!B6"]);
  expect(result.findings[0]!.sentence).toMatch(/2\.8748 in is 73\.02 mm\. It causes 1 other finding: under$/);
});

describe("in a file of readings", () => {
  async function* bytesOf(text: string): AsyncGenerator<Uint8Array> {
    yield new TextEncoder().encode(text);
  }
  const check = (rows: string[]) => checkCsv(bytesOf(`characteristic,value,lower,upper\n${rows.join("\n")}\n`));

  test("slips and mixed units that cause a verdict stand before all verdicts, each saying which", async () => {
    const { findings } = await check(["bore,73.09,73,73.08", "bore,730.2,73,73.08", "bore,2.8748,73,73.08"]);
    expect(findings.map((finding) => [finding.line, wordOf(finding)])).toEqual([
      [3, "likely slip"],
      [4, "mixed units"],
      [3, "over"],
      [4, "under"],
      [2, "over"],
    ]);
    expect(findings[0]!.sentence).toMatch(/is the decimal point in its place\? It causes 1 other finding: over$/);
    expect(findings[1]!.details.causes).toEqual(["under"]);
  });

  test("one that is found by its like alone knows its verdict too", async () => {
    const { findings } = await check([73.02, 73.03, 73.02, 7.302, 73.01].map((value) => `bore,${value},73,`));
    expect(findings.map((finding) => [finding.line, wordOf(finding), finding.details.causes])).toEqual([
      [5, "likely slip", ["under"]],
      [5, "under", undefined],
    ]);
  });
});
