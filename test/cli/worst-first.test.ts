import fc from "fast-check";
import { checkCsv } from "../../src/check/csv/check-csv.ts";
import type { Finding } from "../../src/check/finding.ts";
import { tally } from "../../src/check/finding-words.ts";
import { WorstFirst } from "../../src/cli/worst-first.ts";

async function* bytesOf(text: string): AsyncGenerator<Uint8Array> {
  yield new TextEncoder().encode(text);
}

const inOrderOfLines = (findings: readonly Finding[]): string[] => findings.map((finding) => JSON.stringify(finding)).sort();

test("the worst are kept in order, the others passed on once, and all are counted, whatever was found and however few are kept", async () => {
  const field = fc.constantFrom("", "1", "2", "2.5", "3", "x", "µ\u2028", '"a\nb"', "7.302", "73.02");
  const rows = fc.array(fc.tuple(field, fc.constantFrom("", "1", "2"), fc.constantFrom("2", "2.5", "")), { maxLength: 60 });
  await fc.assert(
    fc.asyncProperty(rows, fc.integer({ min: 0, max: 30 }), async (lines, most) => {
      const text = ["value,lower,upper", ...lines.map((line) => line.join(","))].join("\n");
      const passed: Finding[] = [];
      const kept = new WorstFirst(most, (finding) => passed.push(finding));
      await checkCsv(bytesOf(text), { found: (finding) => kept.add(finding) });
      kept.sort();
      const { findings } = await checkCsv(bytesOf(text));
      expect(kept.length).toBe(findings.length);
      for (const _ of [1, 2]) expect([...kept]).toEqual(findings.slice(0, most));
      expect(inOrderOfLines(passed)).toEqual(inOrderOfLines(findings.slice(most)));
      expect(kept.words()).toEqual(tally(findings));
    }),
    { numRuns: 150 },
  );
});

test("where none is kept, each is passed on at once, in the order in which they are found", async () => {
  const found: Finding[] = [];
  const passed: Finding[] = [];
  const text = "value,lower,upper\n3,1,2\nx,1,2\n9,1,2\n,1,2\n";
  const kept = new WorstFirst(0, (finding) => passed.push(finding));
  await checkCsv(bytesOf(text), {
    found(finding) {
      found.push(finding);
      kept.add(finding);
      expect(passed).toEqual(found);
    },
  });
  expect(found.map(({ line }) => line)).toEqual([2, 3, 4, 5]);
  expect([...kept]).toEqual([]);
});
