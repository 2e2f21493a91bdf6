import { type CsvCheck, checkCsv } from "../../src/check/csv/check-csv.ts";
import { edge } from "./edge-values.ts";
import { expectCounts, expectSame, expectSentence } from "./oracles.ts";
import type { FuzzOutcome, Level } from "./outcome.ts";
import type { FuzzRandom } from "./random.ts";
import { READINGS } from "./samples.ts";

/** Readings with bytes or fields changed: the same findings however the bytes arrive, no row lost. */
export const csvLevel: Level = {
  name: "CSV bytes",
  weight: 30,
  async run(random): Promise<FuzzOutcome> {
    const bytes = damaged(random.pick(READINGS), random);
    const whole = await checked(bytes, []);
    const text = bytes.toString("latin1");
    expectCounts(whole, text.split(/\r\n|\n|\r/).length);
    for (const said of [whole.unread ?? "-", ...whole.findings.map(({ sentence }) => sentence)]) expectSentence(said, text);
    const cuts = Array.from({ length: 1 + random.below(6) }, () => random.below(bytes.length + 1)).sort((a, b) => a - b);
    expectSame("the same bytes in other pieces", await checked(bytes, cuts), whole);
    return whole.unread ? "refused" : "result";
  },
};

/** Spelled in another way, the same readings: line ends, quotes around fields, a byte order mark, a blank last line. */
export const csvSpellingLevel: Level = {
  name: "CSV spelling",
  weight: 5,
  async run(random): Promise<FuzzOutcome> {
    const text = fields(random.pick(READINGS).toString(), random);
    const spelled = random.pick(SPELLINGS)(text);
    expectSame("the same readings spelled otherwise", await checked(Buffer.from(spelled), []), await checked(Buffer.from(text), []));
    return "result";
  },
};

const SPELLINGS: readonly ((text: string) => string)[] = [
  (text) => text.replaceAll("\n", "\r\n"),
  (text) => text.replaceAll("\n", "\r"),
  (text) => `\uFEFF${text}`,
  (text) => `${text}\n\n`,
  // Where a field stands in quotes already, its commas are not delimiters.
  (text) => (text.includes('"') ? text : text.replaceAll(/[^,\n]+/g, '"$&"')),
  (text) => (text.includes('"') ? text : text.replaceAll(",", "\t")),
];

async function checked(bytes: Buffer, cuts: readonly number[]): Promise<CsvCheck> {
  async function* pieces(): AsyncGenerator<Uint8Array> {
    let from = 0;
    for (const to of [...cuts, bytes.length]) {
      yield bytes.subarray(from, to);
      from = to;
    }
  }
  return await checkCsv(pieces(), { name: "fuzz.csv" });
}

function damaged(whole: Buffer, random: FuzzRandom): Buffer {
  let bytes: Buffer = Buffer.from(random.chance(0.5) ? fields(whole.toString(), random) : whole);
  for (let n = random.below(4); n > 0; n--) bytes = random.pick(DAMAGES)(bytes, random);
  return bytes;
}

const SIGNS = [0, 0x22, 0x2c, 0x3b, 0x09, 0x0a, 0x0d, 0x20, 0x2d, 0x2e, 0x30, 0x39, 0x65, 0x80, 0xc3, 0xff];

const DAMAGES: readonly ((bytes: Buffer, random: FuzzRandom) => Buffer)[] = [
  (bytes, random) => {
    if (bytes.length > 0) bytes[random.below(bytes.length)] = random.chance(0.7) ? random.pick(SIGNS) : random.below(256);
    return bytes;
  },
  (bytes, random) => bytes.subarray(0, random.below(bytes.length + 1)),
  (bytes, random) => {
    const at = random.below(bytes.length + 1);
    return Buffer.concat([bytes.subarray(0, at), bytes.subarray(at + random.below(60))]);
  },
  (bytes, random) => {
    const at = random.below(bytes.length + 1);
    return Buffer.concat([bytes.subarray(0, at), Buffer.from([random.pick(SIGNS)]), bytes.subarray(at)]);
  },
  (bytes, random) => {
    const from = random.below(bytes.length + 1);
    return Buffer.concat([bytes, bytes.subarray(from, from + random.below(400))]);
  },
];

/** Some fields replaced; those that need it in quotes. */
function fields(text: string, random: FuzzRandom): string {
  const lines = text.trimEnd().split(/\r?\n/);
  for (let n = 1 + random.below(5); n > 0; n--) {
    const at = 1 + random.below(lines.length - 1);
    const cells = lines[at]!.split(",");
    // A line break in a field would make the same text mean something else when it is spelled otherwise.
    const put = edge(random)
      .slice(0, 500)
      .replaceAll(/[\r\n\t,"]/g, "");
    cells[random.below(cells.length)] = put;
    lines[at] = cells.join(",");
  }
  return `${lines.join("\n")}\n`;
}
