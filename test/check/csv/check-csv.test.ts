import fc from "fast-check";
import { type CsvCheck, type CsvOptions, checkCsv } from "../../../src/check/csv/check-csv.ts";

const HEAD = "engine,cylinder,characteristic,position,value,lower,upper,unit,uncertainty";

async function* chunksOf(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let from = 0; from < bytes.length; from += size) yield bytes.subarray(from, from + size);
}

const check = (text: string | Uint8Array, options: CsvOptions = {}, size = 7): Promise<CsvCheck> =>
  checkCsv(chunksOf(typeof text === "string" ? new TextEncoder().encode(text) : text, size), options);

const counts = ({ rowsIn, checked, refused, unread }: CsvCheck) => ({ rowsIn, checked, refused, unread });
const told = ({ findings }: CsvCheck) => findings.map(({ line, kind, sentence }) => [line, kind, sentence]);

describe("readings in long form", () => {
  test("are judged by their own limits and uncertainty, with line, label and margin", async () => {
    const result = await check(`${HEAD}\nA,1,bore,top thrust,73.02,73,73.05,mm,0.003\nA,2,bore,top thrust,73.06,73,73.05,mm,0.003\n`, { name: "readings.csv" });
    expect(result.findings).toEqual([
      {
        kind: "outside limit",
        cell: { sheet: "readings.csv", row: 2, column: 4 },
        label: "engine A, cylinder 2, bore, top thrust",
        line: 3,
        value: 73.06,
        lower: 73,
        upper: 73.05,
        margin: -0.01,
        verdict: "over",
        details: { uncertainty: 0.003, near: 0, rule: "full U", unseen: null },
        sentence: "73.06 is over the upper limit 73.05 by 0.01, proven with an uncertainty of 0.003",
      },
    ]);
    expect(counts(result)).toEqual({ rowsIn: 2, checked: 2, refused: 0, unread: undefined });
  });

  test("headings are known by other names, in any order, with units in brackets, and others do not matter", async () => {
    const result = await check("date,Cyl. No,Upper Limit (mm),Measured Value [mm],gauge\n2026-01-05,2,0.55,0.6,G1\n");
    expect(result.findings.map(({ label, value, upper }) => [label, value, upper])).toEqual([["cylinder 2", 0.6, 0.55]]);
  });

  test("a reading or a limit still missing is checked and told; empty lines are no rows", async () => {
    const result = await check("value,lower,upper\n,0.25,0.55\n\n,,\n0.3,,\n");
    expect(told(result)).toEqual([
      [2, "missing reading", "the reading is still blank"],
      [5, "missing limit", "0.3 has no limit to be judged by"],
    ]);
    expect(counts(result)).toEqual({ rowsIn: 2, checked: 2, refused: 0, unread: undefined });
  });
});

// 0.005 mm is 0.2 thou, 0.018 in is 0.46 mm (25.4 mm to the inch: ISO 31-1).
describe("headings that give units of their own", () => {
  test("a limit or an uncertainty in another unit than the reading judges nothing: the row is refused, and both units are named", async () => {
    const thou = await check("value (thou),lower (thou),upper (thou),U (mm)\n2.1,1,2,0.005\n,1,2,0.005\n");
    expect(told(thou)).toEqual([
      [2, "refused", "the heading of uncertainty says mm and the reading is in thou: write both in one unit"],
      [3, "refused", "the heading of uncertainty says mm and the reading is in thou: write both in one unit"],
    ]);
    const inches = await check("value,upper (in),unit\n0.4,0.018,mm\n0.017,0.018,in\n0.4,0.018,spans\n");
    expect(told(inches).map(([line, kind]) => [line, kind])).toEqual([
      [4, "mixed units"],
      [4, "outside limit"],
      [2, "refused"],
    ]);
    expect(told(await check("value,lower (mm),upper (in)\n0.4,0.2,0.018\n"))).toEqual([
      [2, "refused", "the heading of upper says inches and that of lower mm: write both in one unit"],
    ]);
    expect(counts(inches)).toEqual({ rowsIn: 3, checked: 2, refused: 1, unread: undefined });
  });

  test("the same unit in all of them is one unit, however it is spelled", async () => {
    expect(told(await check("value (cm³),lower (cc),upper (ml),U (cm3)\n24.1,24,25,0.01\n"))).toEqual([]);
  });
});

describe("files as other programs write them", () => {
  test("byte order mark, semicolons, CRLF, quotes, line breaks and doubled quotes inside them", async () => {
    const result = await check('\uFEFF"position";"value";"upper"\r\n"top;\r\n""thrust""";"73.06";73.05\r\nlow;73.07;73.05\r\n');
    expect(result.findings.map(({ line, label, value }) => [line, label, value])).toEqual([
      [4, "low", 73.07],
      [2, 'top;\r\n"thrust"', 73.06],
    ]);
  });

  test.each([
    ["tabs", "value\tupper\n1\t2\n"],
    ["bars", "value|upper\n1|2\n"],
    ["a line that names the delimiter", "sep=;\nvalue;upper\n1;2\n"],
    ["CR alone", "value,upper\r1,2\r"],
    ["mixed line ends", "value,upper\r\n1,2\n"],
    ["no line end at all", "value,upper\n1,2"],
    ["an inch sign in a field", 'position,value,upper\n5" bore,1,2\n'],
    ["an inch sign in a heading", 'bore 5",value,upper\n1,1,2\n'],
    ["a line that names the tab", "sep=\t\nvalue\tupper\n1\t2\n"],
    ["empty fields at the end", "value,upper\n1,2,,\n"],
  ])("%s", async (_, text) => {
    expect(counts(await check(text))).toEqual({ rowsIn: 1, checked: 1, refused: 0, unread: undefined });
  });

  test("UTF-16 with a byte order mark", async () => {
    const text = "\uFEFFposition;value;upper\r\noben;2;1\r\n";
    const little = new Uint8Array(Buffer.from(text, "utf16le"));
    const big = new Uint8Array(Buffer.from(text, "utf16le").swap16());
    for (const bytes of [little, big]) expect((await check(bytes)).findings.map(({ label }) => label)).toEqual(["oben"]);
  });

  test("however the bytes arrive, the result is the same", async () => {
    const text = '\uFEFFposition;value;upper\r\n"µ\r\n";"73.06";73.05\r\nlow;tight;73.05\r\n;;73\r\n';
    const whole = await check(text, {}, 1e9);
    await fc.assert(fc.asyncProperty(fc.integer({ min: 1, max: 60 }), async (size) => expect(await check(text, {}, size)).toEqual(whole)));
  });
});

describe("decimal signs", () => {
  test("a decimal comma is refused unless it is asked for", async () => {
    const text = "value;upper\n73,06;73,05\n73;73,05\n";
    expect(told(await check(text))).toEqual([
      [2, "refused", 'value holds "73,06": a decimal comma is read only when a locale that writes so is given'],
      [3, "refused", 'upper holds "73,05": a decimal comma is read only when a locale that writes so is given'],
    ]);
    expect(told(await check(text, { decimal: "," }))).toEqual([[2, "outside limit", "73.06 is over the upper limit 73.05 by 0.01"]]);
  });

  test("a point is refused where a comma is expected, thousands are never guessed", async () => {
    expect(told(await check('value,upper\n1.234,2\n"1.234,5",2\n', { decimal: "," }))).toEqual([
      [2, "refused", 'value holds "1.234" with a point: the locale given writes a decimal comma'],
      [3, "refused", 'value holds the text "1.234,5": it must be a number'],
    ]);
  });

  test("a decimal comma outside quotes in a file with commas is noticed by the number of fields", async () => {
    expect(told(await check("position,value,upper\ntop,73,06,73,05\n"))).toEqual([
      [2, "refused", "the line has 5 fields where there are 3 headings: is there a decimal comma outside quotes?"],
    ]);
  });
});

describe("what cannot be read", () => {
  test.each([
    ["", "is empty"],
    ["\n\n", "is empty"],
    ["a\0b,c\n", "is no text file"],
    ['value,"upper\n1,2\n', "has in line 1 a quote that is opened and never closed"],
    [
      "engine,lower,upper\nA,1,2\n",
      "has in line 1 no heading for the value; the table needs value and lower or upper, and where known engine, cylinder, characteristic, position, unit, uncertainty",
    ],
    [
      "\nvalue,engine\n1,A\n",
      "has in line 2 no heading for a lower or upper limit; the table needs value and lower or upper, and where known engine, cylinder, characteristic, position, unit, uncertainty",
    ],
  ])("%j is not checked, and why", async (text, unread) => {
    expect(counts(await check(text))).toEqual({ rowsIn: 0, checked: 0, refused: 0, unread });
  });

  test("two columns that could both be the value are not chosen between", async () => {
    expect((await check("reading,measured,upper\n1,2,3\n")).unread).toContain("no heading for the value");
    expect((await check("reading,value,upper\n9,2,3\n")).findings).toEqual([]);
  });

  test("an open quote ends the file where it stands; what came before is checked", async () => {
    const text = 'value,upper\n1,2\n"3,2\n4,2\n';
    expect(counts(await check(text))).toEqual({
      rowsIn: 1,
      checked: 1,
      refused: 0,
      unread: "breaks off: in line 3 a quote is opened and never closed, so nothing from there on can be read",
    });
  });

  test("a line with too few fields is refused, not filled up", async () => {
    expect(told(await check("value,lower,upper\n0.3,0.25\n"))).toEqual([[2, "refused", "the line has 2 fields where there are 3 headings"]]);
  });

  test.each([["1e999"], ["NaN"], ["Infinity"], ["0x10"], ["1 2"], ["=1+1"], ["#DIV/0!"], ["tight"], ["−1"]])("%s is no reading", async (value) => {
    expect(counts(await check(`value,upper\n${value},2\n`))).toEqual({ rowsIn: 1, checked: 0, refused: 1, unread: undefined });
  });

  test("a file that is not read on is let go", async () => {
    for (const text of ["position,bore\n1,2\n", 'value,upper\n"1,2\n'.padEnd(1_100_000, "x")]) {
      let isOpen = true;
      async function* file(): AsyncGenerator<Uint8Array> {
        try {
          yield new TextEncoder().encode(text);
          yield new TextEncoder().encode("3,4\n");
        } finally {
          isOpen = false;
        }
      }
      expect((await checkCsv(file())).unread).toBeDefined();
      expect(isOpen).toBe(false);
    }
  });

  test("a fault of the source itself is not taken for a fault of the file", async () => {
    async function* broken(): AsyncGenerator<Uint8Array> {
      yield new TextEncoder().encode("value,upper\n1,2\n");
      throw new Error("the disk is gone");
    }
    await expect(checkCsv(broken())).rejects.toThrow("the disk is gone");
  });
});

describe("slips and units over a whole file", () => {
  const row = (i: number, value: number | string, unit = "mm") => `A,${i},bore,top,${value},,,${unit},`;
  const rows = (count: number) => Array.from({ length: count }, (_, i) => row(i, (73 + (i % 5) / 100).toFixed(2)));

  test("one odd reading is found among few and among many, early and late", async () => {
    for (const [count, at] of [
      [6, 2],
      [500, 3],
      [500, 480],
    ] as const) {
      const lines = rows(count);
      lines[at] = row(at, "7.302");
      const slips = told(await check([HEAD, ...lines].join("\n"), {}, 4096)).filter(([, kind]) => kind !== "missing limit");
      const sentence = expect.stringMatching(/^7\.302 is far from 73\.\d+, the middle of similar readings: is the decimal point in its place\?$/);
      expect(slips).toEqual([[at + 2, "likely slip", sentence]]);
    }
  });

  test("engines and characteristics are kept apart", async () => {
    const lines = rows(8).flatMap((line, i) => [line, line.replace("bore", "crankpin").replace(/,7[\d.]+/, `,${39.98 + i / 1000}`)]);
    expect(told(await check([HEAD, ...lines].join("\n"))).filter(([, kind]) => kind !== "missing limit")).toEqual([]);
  });

  test("more groups than are kept open change nothing for those that are", async () => {
    const lines = Array.from({ length: 6000 }, (_, i) => `E${i},1,bore,top,73.02,73,73.05,mm,`);
    expect(counts(await check([HEAD, ...lines].join("\n"), {}, 65_536))).toEqual({ rowsIn: 6000, checked: 6000, refused: 0, unread: undefined });
  });
});

test("whatever stands in the lines, each is counted once", async () => {
  const field = fc.oneof(fc.constantFrom("", "73.02", "73,02", '"', '"a"', "x;y", "\t", "-1", "in"), fc.string({ maxLength: 6 }));
  const line = fc
    .array(
      field.map((text) => `"${text.replaceAll('"', '""')}"`),
      { minLength: 4, maxLength: 4 },
    )
    .map((fields) => fields.join(","));
  await fc.assert(
    fc.asyncProperty(fc.array(line, { maxLength: 30 }), async (lines) => {
      const result = await check(["value,lower,upper,unit", ...lines].join("\n"), {}, 64);
      expect(result.unread).toBeUndefined();
      expect(result.rowsIn).toBe(result.checked + result.refused);
      expect(result.findings.filter(({ kind }) => kind === "refused")).toHaveLength(result.refused);
    }),
    { numRuns: 200 },
  );
});
