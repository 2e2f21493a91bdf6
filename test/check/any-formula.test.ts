import fc from "fast-check";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { Cell } from "../../src/core/cell.ts";
import { specs } from "../../src/functions/index.ts";
import { type MemoryCell, memoryHost } from "../../src/hosts/memory.ts";

/** Formulas of all kinds over a few cells, so that many refer to one another and to themselves. */
const place = fc.constantFrom("A1", "$B$2", "C3", "A1:C1", "A1:C3", "B:B", "2:2", "C1#", "A3#", "Other!A1", "Gone!A1", "Name", "Table[Bore]");
const { part } = fc.letrec<{ part: string }>((tie) => ({
  part: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    place,
    fc.constantFrom("1", "73.02", '"text"', "TRUE", "#N/A", "{1,2;3,4}", ""),
    fc
      .tuple(fc.constantFrom("VERDICT", "EXPLAIN", "MARGIN", ...specs.map(({ name }) => name)), fc.array(tie("part"), { maxLength: 5 }))
      .map(([name, args]) => `HATCH.${name}(${args})`),
    fc.tuple(fc.constantFrom("IF", "SUM", "NOSUCH"), fc.array(tie("part"), { maxLength: 3 })).map(([name, args]) => `${name}(${args})`),
    fc.tuple(tie("part"), fc.constantFrom("+", "-", "*", "/", "^", "&", "=", "<>", ":", " "), tie("part")).map((parts) => parts.join("")),
  ),
}));
const value: fc.Arbitrary<Cell> = fc.oneof(
  fc.constantFrom(null, "", "within", "over", "check: no", "73,02", "Cylinder", "Value", "Upper", true, { error: "#VALUE!", message: "TAPER: no" }),
  fc.double({ noNaN: true }),
);
const cell: fc.Arbitrary<MemoryCell> = fc.oneof(value, fc.record({ formula: part.map((text) => `=${text}`), value }));

test("whatever formulas stand in a workbook, it is checked to its end and every row is counted", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.array(cell, { minLength: 3, maxLength: 4 }), { minLength: 3, maxLength: 5 }), async (cells) => {
      const result = checkWorkbook(
        await memoryHost([
          { name: "Any", cells },
          { name: "Other", cells: [[1]] },
        ]).read(),
      );
      expect(result.rowsIn).toBe(result.checked + result.refused);
      expect(result.findings.filter(({ kind }) => kind === "refused")).toHaveLength(result.refused);
      for (const { sentence, cell } of result.findings) {
        expect(sentence).not.toBe("");
        expect(sentence).not.toMatch(/undefined|NaN|\[object/);
        expect(["Any", "Other", "Gone"]).toContain(cell.sheet);
      }
    }),
    { numRuns: 1500 },
  );
});

test("spilled blocks that need one another many times over are worked out once each", async () => {
  const cells: MemoryCell[][] = Array.from({ length: 60 }, (_, i) => [{ formula: i === 59 ? "={1;2}" : `=A${i + 2}#+A${i + 2}#`, value: 1 }]);
  cells.push([{ formula: "=HATCH.VERDICT(A1#,,5)", value: "within" }]);
  expect(checkWorkbook(await memoryHost([{ name: "Any", cells }]).read()).rowsIn).toBeGreaterThan(0);
});
