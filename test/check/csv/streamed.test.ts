import fc from "fast-check";
import { type CsvOptions, checkCsv, type RefusedRecord } from "../../../src/check/csv/check-csv.ts";
import { plainNumber } from "../../../src/check/csv/fields.ts";
import type { Finding } from "../../../src/check/finding.ts";

const HEAD = "engine,cylinder,characteristic,position,value,lower,upper,unit,uncertainty";

async function* once(text: string): AsyncGenerator<Uint8Array> {
  yield new TextEncoder().encode(text);
}

const check = (lines: readonly string[], options: CsvOptions = {}) => checkCsv(once([HEAD, ...lines].join("\n")), { name: "r.csv", ...options });

test("a number straight from its bytes is the number that its text is", () => {
  const text = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
    fc
      .tuple(fc.constantFrom("", "-", "+"), fc.stringMatching(/^\d{0,17}$/), fc.constantFrom("", ".", ".."), fc.stringMatching(/^\d{0,17}$/))
      .map((parts) => parts.join("")),
  );
  fc.assert(
    fc.property(text, (written) => {
      const number = plainNumber(Buffer.from(`<${written}>`), 1, 1 + written.length, ".");
      if (!Number.isNaN(number)) expect(Object.is(number, Number(written))).toBe(true);
    }),
    { numRuns: 5000 },
  );
  expect(plainNumber(Buffer.from("73.06"), 0, 5, ".")).toBe(73.06);
  expect(plainNumber(Buffer.from("-73,06"), 0, 6, ",")).toBe(-73.06);
  expect(plainNumber(Buffer.from("73,06"), 0, 5, ".")).toBeNaN();
});

describe("rows that are passed over quickly", () => {
  const cell = (...texts: string[]) => fc.constantFrom(...texts);
  const row = fc.record({
    engine: cell("A", " a", "B"),
    characteristic: cell("bore", "skirt"),
    value: cell("73.02", "73.03", "73.05", "73", "73.051", "7.302", "2.875", "", "x", "-1", "0"),
    lower: cell("73", "72.9", "", "0", "74", "x"),
    upper: cell("73.05", "73.1", "", "0"),
    unit: cell("mm", "mm", "mm", "in", ""),
    uncertainty: cell("", "0", "0.003", "-1", "0.03"),
  });

  test("come to what they come to when each is looked at closely", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(row, { maxLength: 120 }), async (rows) => {
        // A blank before the value is no other value, and takes the long way.
        const lines = (pad: string) =>
          rows.map(({ engine, characteristic, value, lower, upper, unit, uncertainty }) =>
            [engine, 1, characteristic, "top", pad + value, lower, upper, unit, uncertainty].join(","),
          );
        expect(await check(lines(" "))).toEqual(await check(lines("")));
      }),
      { numRuns: 150 },
    );
  });

  test("are found odd among their like when those are known, and when they become known", async () => {
    const bore = (value: string) => `A,1,bore,top,${value},0,100,mm,`;
    const like = Array.from({ length: 60 }, (_, i) => bore((73 + (i % 5) / 100).toFixed(2)));
    for (const at of [3, 50]) {
      const { findings } = await check(like.with(at, bore("7.302")));
      expect(findings.map(({ kind, line, label }) => [kind, line, label])).toEqual([["likely slip", at + 2, "engine A, cylinder 1, bore, top"]]);
    }
  });
});

describe("as they are found", () => {
  const lines = ["A,1,bore,top,73.02,73,73.05,mm,", "A,1,bore,top,x,73,73.05,mm,", 'A,1,"bo""re",top,73.06,73,73.05,mm,', "A,1,bore,top,73.09,73,73.05,mm,"];

  test("findings are handed on in the order of lines, and are those that come sorted otherwise", async () => {
    const found: Finding[] = [];
    const streamed = await check(lines, { found: (finding) => found.push(finding) });
    expect(found.map(({ line }) => line)).toEqual([3, 4, 5]);
    const sorted = await check(lines);
    expect(sorted.findings.map(({ line }) => line)).toEqual([5, 4, 3]);
    expect(new Set(found)).toEqual(new Set(sorted.findings));
    expect({ ...streamed, findings: [] }).toEqual({ ...sorted, findings: [] });
    expect(streamed.findings).toEqual([]);
  });

  test("a slip seen by its limits and again by its like is told once", async () => {
    const like = Array.from({ length: 40 }, (_, i) => `A,1,bore,top,${(73 + (i % 5) / 100).toFixed(2)},73,73.05,mm,`);
    for (const at of [3, 38]) {
      const found: Finding[] = [];
      await check(like.with(at, "A,1,bore,top,7.302,73,73.05,mm,"), { found: (finding) => found.push(finding) });
      expect(found.map(({ kind, line }) => [kind, line]).sort()).toEqual([
        ["likely slip", at + 2],
        ["outside limit", at + 2],
      ]);
    }
  });

  test("refused rows are handed on as they stand, with line and reason", async () => {
    const refused: RefusedRecord[] = [];
    const { rowsIn, checked } = await check([...lines, '"A\n",1'], { refused: (row) => refused.push(row) });
    expect(refused).toEqual([
      { line: 3, why: 'value holds the text "x": it must be a number', text: "A,1,bore,top,x,73,73.05,mm," },
      { line: 6, why: "the line has 2 fields where there are 9 headings", text: '"A\n",1' },
    ]);
    expect(rowsIn).toBe(checked + refused.length);
  });
});
