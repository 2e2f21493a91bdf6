import fc from "fast-check";
import { strFromU8, strToU8, zipSync } from "fflate";
import { calculate } from "../../../src/calc/calculate.ts";
import { UnreadableFile } from "../../../src/xlsx/file-limits.ts";
import type { CellFile } from "../../../src/xlsx/model.ts";
import { markedCopy } from "../../../src/xlsx/patch/marked-copy.ts";
import { readXlsx } from "../../../src/xlsx/read/read.ts";
import { partsOf } from "./marking.ts";
import { richParts } from "./rich-book.ts";

const CONCERNED = [
  "xl/worksheets/sheet1.xml",
  "xl/worksheets/sheet1.xml",
  "xl/styles.xml",
  "xl/workbook.xml",
  "xl/_rels/workbook.xml.rels",
  "[Content_Types].xml",
  "xl/theme/theme1.xml",
];

/** What marking may change. */
const CHANGES = /^(?:\[Content_Types\]\.xml|xl\/(?:workbook|styles|worksheets\/sheet\d)\.xml|xl\/_rels\/workbook\.xml\.rels)$/;

/** Tags, attributes and texts of a part: what is taken out, doubled or put elsewhere mostly leaves it well-formed. */
const pieces = (xml: string): string[] => xml.split(/(<[^>]*>| [\w:]+="[^"]*")/).filter(Boolean);

function mutated(xml: string, [how, from, to]: readonly [string, number, number]): string {
  const all = pieces(xml);
  const at = from % all.length;
  const [piece] = all.splice(at, how === "double" ? 0 : 1);
  if (how === "double") all.splice(at, 0, all[at]!);
  if (how === "move") all.splice(to % all.length, 0, piece!);
  if (how === "number") all.splice(at, 0, piece!.replace(/\d+/, String(to)));
  return all.join("");
}

const formulas = (cells: readonly CellFile[]): string[] =>
  cells.flatMap(({ row, column, formula }) => (formula === undefined ? [] : [`${row},${column} ${formula}`]));

// A workbook of which something is not as it should be is refused, or its copy is as readable as itself: nothing in between.
test("a mutated workbook is refused with a sentence, or has a copy with the same formulas and every other part", () => {
  const outcomes = { unread: 0, refused: 0, marked: 0 };
  const mutation = fc.tuple(fc.constantFrom("drop", "double", "move", "number"), fc.nat(5000), fc.nat(5000));
  fc.assert(
    fc.property(fc.constantFrom(...CONCERNED), mutation, (name, how) => {
      const parts = new Map(richParts());
      parts.set(name, strToU8(mutated(strFromU8(parts.get(name)!), how)));
      const bytes = zipSync(Object.fromEntries(parts), { level: 1 });
      let step: keyof typeof outcomes = "unread";
      try {
        const book = readXlsx(bytes);
        step = "refused";
        const sheet = book.sheets[0]?.name ?? "";
        const marks = [
          { cell: { sheet, row: 3, column: 1 }, tone: "near" as const },
          { cell: { sheet, row: 20, column: 3 }, tone: "doubt" as const },
        ];
        const copy = markedCopy(bytes, { book, calculated: calculate(book), marks, page: { lines: [], remarks: [] } });
        const again = readXlsx(copy.bytes);
        for (const { name: own, cells } of book.sheets) expect(formulas(again.sheets.find((one) => one.name === own)?.cells ?? [])).toEqual(formulas(cells));
        expect(again.sheets).toHaveLength(book.sheets.length + 1);
        const after = partsOf(copy.bytes);
        for (const [part, content] of parts) if (!CHANGES.test(part)) expect([part, Buffer.compare(after[part]!, content)]).toEqual([part, 0]);
        step = "marked";
      } catch (reason) {
        if (!(reason instanceof UnreadableFile)) throw reason;
      }
      outcomes[step]++;
    }),
    { numRuns: 150, seed: 20260105 },
  );
  expect(outcomes.marked).toBeGreaterThan(outcomes.refused);
}, 120_000);
