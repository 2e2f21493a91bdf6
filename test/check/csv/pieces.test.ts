import fc from "fast-check";
import { checkCsv, type DecimalSign, type RefusedRecord } from "../../../src/check/csv/check-csv.ts";
import { Scanner } from "../../../src/check/csv/scanner.ts";
import type { Finding } from "../../../src/check/finding.ts";

async function* pieces(text: string, size: number): AsyncGenerator<Uint8Array> {
  const bytes = Buffer.from(text);
  for (let from = 0; from < bytes.length; from += size) yield bytes.subarray(from, from + size);
}

/** Bytes that are gone through in vain, because the record does not end in them, and bytes that are copied. */
async function effortOf(text: string, size: number): Promise<{ inVain: number; copied: number; rowsIn: number }> {
  let inVain = 0;
  let copied = 0;
  const { advance } = Scanner.prototype;
  const { set } = Uint8Array.prototype;
  // Counted by hand: a spy keeps what each of a million calls was given.
  Scanner.prototype.advance = function (this: Scanner) {
    const isFound = advance.call(this);
    if (!isFound) inVain += this.bytes.length - this.next;
    return isFound;
  };
  Uint8Array.prototype.set = function (this: Uint8Array, from: ArrayLike<number>, at?: number) {
    set.call(this, from, at);
    copied += from.length;
  };
  try {
    const { rowsIn } = await checkCsv(pieces(text, size));
    return { inVain, copied, rowsIn };
  } finally {
    Scanner.prototype.advance = advance;
    Uint8Array.prototype.set = set;
  }
}

const HEAD = "cylinder,value,upper\n1,2,3\n";
const LONG = 900_000;

test.each([
  ["without a line end", `${HEAD}${"x".repeat(LONG)}`],
  ["of line ends in quotes", `${HEAD}"${"\n".repeat(LONG)}",2,3\n4,5,6\n`],
  ["of quotes", `${HEAD}"${'""'.repeat(LONG / 2)}",2,3\n4,5,6\n`],
  ["of fields", `${HEAD}${",".repeat(LONG)}\n4,5,6\n`],
])("a long record %s is not gone through again with every small piece of it", async (_, text) => {
  const { inVain, copied } = await effortOf(text, 16);
  expect(inVain).toBeLessThan(20 * text.length);
  expect(copied).toBeLessThan(10 * text.length);
});

test("ordinary lines are read as they come", async () => {
  const findings: number[] = [];
  async function* lines(): AsyncGenerator<Uint8Array> {
    yield Buffer.from(HEAD);
    for (let line = 3; line < 10; line++) {
      yield Buffer.from(`${line},9,`);
      yield Buffer.from("3\n");
      // What the line before was found to be is known before the next has come.
      expect(findings).toEqual(Array.from({ length: line - 2 }, (_, i) => i + 3));
    }
  }
  await checkCsv(lines(), { found: ({ line }) => void findings.push(line!) });
});

/** All that is told of a file whose bytes come in pieces of this size, in the order in which it is told. */
async function toldOf(text: string, size: number, decimal: DecimalSign = ".") {
  const found: Finding[] = [];
  const refused: RefusedRecord[] = [];
  const result = await checkCsv(pieces(text, size), {
    ...{ name: "r.csv", decimal },
    found: (finding) => void found.push(finding),
    refused: (row) => void refused.push(row),
  });
  return { ...result, found, refused };
}

const field = fc.constantFrom("A", "B", "bore", "73.02", "73,02", "7.302", "2.875", "x", "", '"a\nb"', '"a\r\nb"', '"73.04"', '"73,04"', '"q""u"', '"', "µ");
const like = fc.constantFrom("73.01", "73.02", "73.03", "7.302", "2.875", "73.2");

/** Rows of which most are like one another, so that slips and mixed units come about, among others of any shape. */
const line = (delimiter: string, decimal: DecimalSign) =>
  fc
    .oneof(
      {
        weight: 4,
        arbitrary: fc
          .tuple(fc.constantFrom("A", "B"), like, fc.constantFrom("mm", "mm", "in"))
          .map(([a, v, unit]) => [a, "bore", v.replace(".", delimiter === "," ? "." : decimal), "73", "73", unit, "0.5"]),
      },
      { weight: 1, arbitrary: fc.array(field, { maxLength: 7 }) },
    )
    .map((fields) => fields.join(delimiter));

test("a file that comes in pieces, wherever it is cut, comes to what it comes to at once, told in the same order", async () => {
  const text = fc.constantFrom([",", "."] as const, [";", ","] as const, [";", "."] as const).chain(([delimiter, decimal]) =>
    fc
      .tuple(
        fc.array(fc.tuple(line(delimiter, decimal), fc.constantFrom("\n", "\n", "\r\n", "\r")), { maxLength: 90 }),
        fc.boolean(),
        fc.constantFrom("", "\ufeff"),
      )
      .map(([lines, isEnded, mark]) => {
        const body = lines.map(([one, end], i) => one + (isEnded || i < lines.length - 1 ? end : "")).join("");
        return { decimal, text: `${mark}${["engine", "characteristic", "value", "lower", "upper", "unit", "uncertainty"].join(delimiter)}\n${body}` };
      }),
  );
  await fc.assert(
    fc.asyncProperty(text, fc.integer({ min: 1, max: 400 }), async ({ decimal, text: content }, size) => {
      expect(await toldOf(content, size, decimal)).toEqual(await toldOf(content, 1e9, decimal));
    }),
    { numRuns: 150 },
  );
});

test("cut anywhere, a file with quoted line breaks and groups that become known on the way comes to the same", async () => {
  const rows = Array.from(
    { length: 80 },
    (_, i) => `A,${i % 9 === 4 ? '"bo""re\nof ""A"""' : "bore"},${i === 50 ? "7.302" : (73 + (i % 5) / 100).toFixed(2)},0,100,${i === 60 ? "in" : "mm"}`,
  );
  const text = `engine,characteristic,value,lower,upper,unit\r\n${rows.join("\r\n")}`;
  const one = await toldOf(text, 1e9);
  expect(one.found.map(({ kind }) => kind).sort()).toEqual(["likely slip", "mixed units"]);
  for (let size = 1; size <= text.length; size += size < 200 ? 1 : 97) expect(await toldOf(text, size)).toEqual(one);
});

test("a quote that is never closed breaks off at the same line, and a record longer than many pieces is one record", async () => {
  const rows = ["A,bore,73,72,74,mm", `A,"${"long\n".repeat(50)}",73,72,72.5,mm`, "A,bore,x,72,74,mm"];
  for (const [body, rowsIn, unread] of [
    [rows.join("\n"), 3, undefined],
    [[...rows, 'A,"bore,1'].join("\n"), 3, "breaks off: in line 55 a quote is opened and never closed, so nothing from there on can be read"],
  ] as const) {
    const text = `engine,characteristic,value,lower,upper,unit\n${body}`;
    const one = await toldOf(text, 1e9);
    expect(one).toMatchObject({ rowsIn, refused: [{ line: 54 }], ...(unread === undefined ? {} : { unread }) });
    for (const size of [3, 10, 64]) expect(await toldOf(text, size)).toEqual(one);
  }
});
