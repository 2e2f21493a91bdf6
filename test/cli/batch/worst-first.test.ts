import fc from "fast-check";
import { checkCsv } from "../../../src/buildsheet/csv.ts";
import type { Finding } from "../../../src/buildsheet/finding.ts";
import { Heap } from "../../../src/cli/batch/heap.ts";
import { WorstFirst } from "../../../src/cli/batch/worst-first.ts";
import { findingLine } from "../../../src/cli/check-page.ts";

async function* bytesOf(text: string): AsyncGenerator<Uint8Array> {
  yield new TextEncoder().encode(text);
}

test("findings put away in a temporary file come back as they would come from memory, also twice", async () => {
  const field = fc.constantFrom("", "1", "2", "2.5", "3", "x", "µ\u2028", '"a\nb"', "7.302", "73.02");
  const rows = fc.array(fc.tuple(field, fc.constantFrom("", "1", "2"), fc.constantFrom("2", "2.5", "")), { maxLength: 60 });
  await fc.assert(
    fc.asyncProperty(rows, fc.integer({ min: 1, max: 2000 }), async (lines, most) => {
      const text = ["value,lower,upper", ...lines.map((line) => line.join(","))].join("\n");
      const kept = new WorstFirst(most);
      await checkCsv(bytesOf(text), { found: (finding) => kept.add(finding) });
      const { findings } = await checkCsv(bytesOf(text));
      expect(kept.length).toBe(findings.length);
      for (const _ of [1, 2]) expect([...kept]).toEqual(findings);
      expect([...kept.jsonLines("a\u009b.csv")]).toEqual(findings.map((finding) => findingLine("a\u009b.csv", finding)));
      kept.close();
    }),
    { numRuns: 150 },
  );
});

test("a finding longer than what is read at a time comes back whole", () => {
  const kept = new WorstFirst(100_000);
  const finding = (line: number, label: string): Finding => ({
    kind: "refused",
    cell: { sheet: "a.csv", row: line - 1, column: 0 },
    label,
    line,
    value: null,
    lower: null,
    upper: null,
    margin: null,
    verdict: null,
    sentence: "why",
  });
  const all = [1, 2, 3, 4, 5].map((line) => finding(line, "ä".repeat(60_000 * line)));
  for (const one of all) kept.add(one);
  expect([...kept]).toEqual(all);
  kept.close();
});

test("a heap gives the least first", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -9, max: 9 })), (numbers) => {
      const heap = new Heap<number>((a, b) => a - b);
      for (const number of numbers) heap.add(number);
      expect(numbers.map(() => heap.take())).toEqual([...numbers].sort((a, b) => a - b));
      expect(heap.take()).toBeUndefined();
    }),
  );
});
