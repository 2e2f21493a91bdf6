import fc from "fast-check";
import { checkCsv } from "../../../src/check/csv/check-csv.ts";
import { isEncoding, utf8 } from "../../../src/check/csv/encoding.ts";
import { crosshatch } from "../../cli/run.ts";

async function* pieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.slice(at, at + size);
}

/** The text that comes out, and what is said of it. */
async function read(bytes: Uint8Array, size = 1e6, encoding?: string): Promise<[string, string[]]> {
  const notes: string[] = [];
  const out: Uint8Array[] = [];
  for await (const chunk of utf8(pieces(bytes, size), { encoding, noted: (sentence) => void notes.push(sentence) })) out.push(chunk);
  return [Buffer.concat(out).toString("utf8"), notes];
}

const TEXT = "cylinder,place,value\n1,Kurbelwellenlager außen – 20 °C,73,02 µ\n";
const NOT_UTF8 = "it is not UTF-8, so it is read as windows-1252: where letters look wrong, --encoding names the right one";
/** Code page 1252 by the Encoding standard's index: letters below U+0100 as their number, – as 0x96. */
const PAGE_1252 = Uint8Array.from([...TEXT], (letter) => (letter === "–" ? 0x96 : letter.codePointAt(0)!));

describe.each([1, 2, 3, 7, 1e6])("in pieces of %p bytes", (size) => {
  test("UTF-8 stays as it is, also letters of several bytes that are cut", async () => {
    expect(await read(Buffer.from(`${TEXT}𝛌 €`), size)).toEqual([`${TEXT}𝛌 €`, []]);
  });

  test("a Windows code page is known by its first letter that is no UTF-8, and said", async () => {
    expect(await read(PAGE_1252, size)).toEqual([TEXT, [NOT_UTF8]]);
  });

  test("a mark says UTF-8 or UTF-16 and is dropped", async () => {
    expect(await read(Buffer.from(`\uFEFF${TEXT}`), size)).toEqual([TEXT, []]);
    expect(await read(Buffer.from(`\uFEFF${TEXT}`, "utf16le"), size)).toEqual([TEXT, []]);
  });

  test("one damaged letter among sound ones does not make all others another encoding", async () => {
    const bytes = Buffer.concat([Buffer.from("µµµ\n"), Buffer.of(0xe9), Buffer.from(" ü\n")]);
    expect(await read(bytes, size)).toEqual(["µµµ\n\uFFFD ü\n", ["some of its letters are no UTF-8, although others are: they are read as �"]]);
  });
});

test("an encoding that is named is the one", async () => {
  // Code page 1250: ł is 0xB3, ó is 0xF3.
  expect(await read(Uint8Array.of(0x77, 0xb3, 0xf3), 1, "windows-1250")).toEqual(["włó", []]);
  expect(await read(Buffer.from("µ"), 1, "utf-8")).toEqual(["µ", []]);
  expect([isEncoding("windows-1250"), isEncoding("iso-8859-2"), isEncoding("cp-of-ours")]).toEqual([true, true, false]);
});

test("findings have the letters of the file, and the note is told", async () => {
  const notes: string[] = [];
  const csv = Uint8Array.from([..."cylinder,characteristic,position,value,upper\n1,bore,außen,73.06,73.05\n"], (letter) => letter.codePointAt(0)!);
  const { findings } = await checkCsv(pieces(csv, 1e6), { noted: (sentence) => void notes.push(sentence) });
  expect(findings.map(({ label }) => label)).toEqual([expect.stringContaining("außen")]);
  expect(notes).toEqual([NOT_UTF8]);
});

test("a name that no standard knows is refused before anything is read", async () => {
  const { code, err } = await crosshatch(["check", "readings.csv", "--encoding", "cp-of-ours"]);
  expect(code).toBe(2);
  expect(err).toContain("--encoding cp-of-ours is not known: it must be a name such as windows-1250, iso-8859-2 or utf-16le");
});

test("whatever the bytes, they read the same in pieces of any size", async () => {
  const odd = [0x37, 0xc3, 0xb5, 0xe9, 0x96, 0x20, 0xf0, 0x9d, 0x9b, 0x8c, 0x80, 0x0a];
  await fc.assert(
    fc.asyncProperty(fc.array(fc.constantFrom(...odd), { maxLength: 24 }), fc.integer({ min: 1, max: 7 }), async (bytes, size) => {
      expect(await read(Uint8Array.from(bytes), size)).toEqual(await read(Uint8Array.from(bytes)));
    }),
    { numRuns: 2000 },
  );
});
