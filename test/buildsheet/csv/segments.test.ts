import { Readable } from "node:stream";
import fc from "fast-check";
import { GatheredSegments } from "../../../src/buildsheet/csv/gathered.ts";
import { readHead } from "../../../src/buildsheet/csv/head.ts";
import { readSegment, type Stretch } from "../../../src/buildsheet/csv/segment.ts";
import { inOrder } from "../../../src/buildsheet/csv/stretches.ts";
import { checkCsv, type DecimalSign, type Refused } from "../../../src/buildsheet/csv.ts";
import type { Finding } from "../../../src/buildsheet/finding.ts";

// Many runs over a busy machine.
import.meta.jest.setTimeout(120_000);

/** The same file in stretches of `size` bytes, each read for itself. */
async function inStretches(bytes: Buffer, size: number, decimal: DecimalSign) {
  const head = await readHead(Readable.from([bytes]));
  if ("unread" in head) return undefined;
  const found: Finding[] = [];
  const refused: Refused[] = [];
  const gathered = new GatheredSegments("r.csv", head, decimal, (finding) => void found.push(finding));
  const read = async (stretch: Stretch) => {
    const own: { found: Finding[]; refused: Refused[] } = { found: [], refused: [] };
    const segment = readSegment(stretch, {
      ...{ name: "r.csv", head, decimal, size: bytes.length, read: (from: number, to: number) => bytes.subarray(from, to) },
      begin: () => void Object.assign(own, { found: [], refused: [] }),
      found: (finding) => void own.found.push(finding),
      refused: (row) => void own.refused.push(row),
    });
    return segment && { ...segment, own };
  };
  for await (const segment of inOrder({ from: head.offset!, to: bytes.length, size, ahead: 3 }, read)) {
    const before = gathered.take(segment);
    for (const finding of segment.own.found) {
      const line = before + finding.line!;
      found.push({ ...finding, line, cell: { ...finding.cell, row: line - 1 } });
    }
    for (const row of segment.own.refused) refused.push({ ...row, line: before + row.line });
  }
  return { ...gathered.result(), found, refused };
}

async function atOnce(bytes: Buffer, decimal: DecimalSign) {
  const found: Finding[] = [];
  const refused: Refused[] = [];
  const { findings: _, ...counts } = await checkCsv(Readable.from([bytes]), {
    ...{ name: "r.csv", decimal },
    found: (finding) => void found.push(finding),
    refused: (row) => void refused.push(row),
  });
  return { ...counts, found, refused };
}

/** Findings as a set: in which order they become known is no matter, they are sorted. */
const sorted = (findings: readonly Finding[]): string[] => findings.map((finding) => JSON.stringify(finding)).sort();

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

test("a file read in stretches, wherever it is split, comes to what it comes to at once", async () => {
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
      const bytes = Buffer.from(content);
      const [one, many] = [await atOnce(bytes, decimal), await inStretches(bytes, size, decimal)];
      expect({ ...many, found: sorted(many!.found) }).toEqual({ ...one, found: sorted(one.found) });
    }),
    { numRuns: 150 },
  );
});

test("at every split of one file with quoted line breaks and groups that become known on the way", async () => {
  const rows = Array.from(
    { length: 80 },
    (_, i) => `A,${i % 9 === 4 ? '"bo""re\nof ""A"""' : "bore"},${i === 50 ? "7.302" : (73 + (i % 5) / 100).toFixed(2)},0,100,${i === 60 ? "in" : "mm"}`,
  );
  const bytes = Buffer.from(`engine,characteristic,value,lower,upper,unit\r\n${rows.join("\r\n")}`);
  const one = await atOnce(bytes, ".");
  expect(one.found.map(({ kind }) => kind).sort()).toEqual(["likely slip", "mixed units"]);
  for (let size = 1; size <= bytes.length; size += size < 200 ? 1 : 97) {
    const many = await inStretches(bytes, size, ".");
    expect({ ...many, found: sorted(many!.found) }).toEqual({ ...one, found: sorted(one.found) });
  }
});

test("a quote that is never closed breaks off at the same line, and a record longer than many stretches is one record", async () => {
  const rows = ["A,bore,73,72,74,mm", `A,"${"long\n".repeat(50)}",73,72,72.5,mm`, "A,bore,x,72,74,mm"];
  for (const text of [rows.join("\n"), [...rows, 'A,"bore,1'].join("\n")]) {
    const bytes = Buffer.from(`engine,characteristic,value,lower,upper,unit\n${text}`);
    const one = await atOnce(bytes, ".");
    for (const size of [3, 10, 64]) {
      const many = await inStretches(bytes, size, ".");
      expect({ ...many, found: sorted(many!.found) }).toEqual({ ...one, found: sorted(one.found) });
    }
  }
});
