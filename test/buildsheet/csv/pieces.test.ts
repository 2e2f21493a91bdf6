import { Scanner } from "../../../src/buildsheet/csv/scanner.ts";
import { checkCsv } from "../../../src/buildsheet/csv.ts";

const { spyOn } = import.meta.jest;

async function* pieces(text: string, size: number): AsyncGenerator<Uint8Array> {
  const bytes = Buffer.from(text);
  for (let from = 0; from < bytes.length; from += size) yield bytes.subarray(from, from + size);
}

/** Bytes that are gone through in vain, because the record does not end in them, and bytes that are copied. */
async function effortOf(text: string, size: number): Promise<{ inVain: number; copied: number; rowsIn: number }> {
  let inVain = 0;
  let copied = 0;
  const { advance } = Scanner.prototype;
  const { copy } = Buffer.prototype;
  const scans = spyOn(Scanner.prototype, "advance").mockImplementation(function (this: Scanner) {
    const isFound = advance.call(this);
    if (!isFound) inVain += this.bytes.length - this.next;
    return isFound;
  });
  const copies = spyOn(Buffer.prototype, "copy").mockImplementation(function (this: Buffer, ...args: Parameters<typeof copy>) {
    const count = copy.apply(this, args);
    copied += count;
    return count;
  });
  try {
    const { rowsIn } = await checkCsv(pieces(text, size));
    return { inVain, copied, rowsIn };
  } finally {
    scans.mockRestore();
    copies.mockRestore();
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
