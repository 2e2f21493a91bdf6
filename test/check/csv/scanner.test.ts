import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { plainNumber } from "../../../src/check/csv/fields.ts";
import { EMPTY, Scanner } from "../../../src/check/csv/scanner.ts";

/** Everything that the scanner finds in a text that comes in pieces of `size` bytes. */
function scanned(text: string, delimiter: string, size: number) {
  const records: { line: number; fields: string[]; raw: string }[] = [];
  const scanner = new Scanner(delimiter, 1);
  const take = (): void => {
    while (scanner.advance()) records.push({ line: scanner.line, fields: scanner.texts(), raw: scanner.raw() });
  };
  const bytes = Buffer.from(text);
  for (let from = 0; from < bytes.length; from += size) {
    scanner.feed(bytes.subarray(from, from + size));
    take();
  }
  scanner.end();
  take();
  return { records, isOpen: scanner.isOpen };
}

/** The same by a parser of others; `undefined` where a quote stays open. */
function parsed(text: string, delimiter: string): string[][] | undefined {
  try {
    return parse(text, {
      delimiter,
      record_delimiter: ["\r\n", "\n", "\r"],
      relax_quotes: true,
      relax_column_count: true,
      skip_empty_lines: false,
    }) as string[][];
  } catch {
    return undefined;
  }
}

describe("beside csv-parse, which reads the same quotes, delimiters and line ends", () => {
  const text = fc
    .array(fc.constantFrom('"', '"', ",", ",", "\n", "\r\n", "\r", "a", "7", " ", "µ", '""', '"x"', '"x",', "§"), { maxLength: 30 })
    .map((pieces) => pieces.join(""));

  test.each([[","], ["§"]])("whatever stands in the text, delimiter %s, however it arrives, every field is the same", (delimiter) => {
    fc.assert(
      fc.property(text, fc.integer({ min: 1, max: 40 }), (content, size) => {
        const { records, isOpen } = scanned(content, delimiter, size);
        const expected = parsed(content, delimiter);
        expect(isOpen).toBe(expected === undefined);
        if (expected) expect(records.map(({ fields }) => fields)).toEqual(expected);
      }),
      { numRuns: 3000 },
    );
  });
});

test("a number read in passing is the number that its text is, or none", () => {
  const text = fc
    .array(fc.constantFrom('"', ",", ";", "\n", "\r\n", "7", "73", ".", "-", "0", " ", "e3", '"7"', '"7"3', '"-7,5";', "123456789", "§", "µ", ""), {
      maxLength: 30,
    })
    .map((pieces) => pieces.join(""));
  fc.assert(
    fc.property(
      text,
      fc.integer({ min: 1, max: 40 }),
      fc.constantFrom([",", "."] as const, [";", ","] as const, ["§", "."] as const),
      (content, size, [delimiter, decimal]) => {
        const scanner = new Scanner(delimiter, 1, [0, 1, 2, 70], decimal);
        const take = (): void => {
          while (scanner.advance()) {
            for (let field = 0; field < Math.min(scanner.fields, 3); field++) {
              const written = Buffer.from(scanner.text(field));
              const number = scanner.numbers[field]!;
              if (number === EMPTY) expect(written.length).toBe(0);
              else if (!Number.isNaN(number)) expect(number).toBe(plainNumber(written, 0, written.length, decimal));
              else if (scanner.isBare(field)) expect(plainNumber(written, 0, written.length, decimal)).toBeNaN();
              if (written.length === 0 && scanner.isBare(field)) expect(number).toBe(EMPTY);
            }
          }
        };
        const bytes = Buffer.from(content);
        for (let from = 0; from < bytes.length; from += size) {
          scanner.feed(bytes.subarray(from, from + size));
          take();
        }
        scanner.end();
        take();
      },
    ),
    { numRuns: 3000 },
  );
});

test("lines are counted through quoted line breaks, and the text of a record is what stood there", () => {
  const { records } = scanned('a,"b\r\nc"\r\n"d ""e""",f"\n\n"g"h,1', ",", 3);
  expect(records).toEqual([
    { line: 1, fields: ["a", "b\r\nc"], raw: 'a,"b\r\nc"' },
    { line: 3, fields: ['d "e"', 'f"'], raw: '"d ""e""",f"' },
    { line: 4, fields: [""], raw: "" },
    { line: 5, fields: ['"g"h', "1"], raw: '"g"h,1' },
  ]);
});

test("a record of more than a million bytes is given up, in a quote or not", () => {
  const long = "x".repeat(1_100_000);
  for (const text of [`1,2\n"${long}`, `1,2\n${long}`]) {
    const { records, isOpen } = scanned(text, ",", 65_536);
    expect({ count: records.length, isOpen }).toEqual({ count: 1, isOpen: true });
  }
});

test("a record of more fields than any table has is read whole", () => {
  const wide = Array.from({ length: 500 }, (_, i) => String(i));
  expect(scanned(wide.join(";"), ";", 7).records[0]!.fields).toEqual(wide);
});
