import { registries } from "@odoo/o-spreadsheet";
import { calculate } from "../../src/calc/calculate.ts";
import type { BuildSheet } from "../../src/setup/model.ts";
import type { Rule } from "../../src/workbook/sheet-spec.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";
import { described, Made } from "./made.ts";

type Given = { value: unknown } | undefined;
type Run = (...args: (Given | Given[][])[]) => unknown;

/** A host like the builds of Excel that hand a blank cell over as 0 (OfficeDev/office-js, threads 1951 and 4702). */
function whileBlanksAreZeros<T>(work: () => T): T {
  const { mapping } = registries.functionRegistry as unknown as { mapping: Record<string, Run> };
  const own = Object.entries(mapping).filter(([name]) => name.startsWith("HATCH."));
  const zeroed = (cell: Given): Given => (cell && (cell.value ?? null) === null ? { ...cell, value: 0 } : cell);
  for (const [name, run] of own)
    mapping[name] = function (this: unknown, ...args) {
      return run.apply(
        this,
        args.map((one) => (Array.isArray(one) ? one.map((column) => column.map(zeroed)) : zeroed(one))),
      );
    };
  try {
    return work();
  } finally {
    for (const [name, run] of own) mapping[name] = run;
  }
}

/** The same numbers for the same seed: Park and Miller's generator. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const NUMBERS: Partial<Record<Rule["kind"], readonly number[]>> = {
  "above zero": [72.9, 72.96, 73, 73.02, 73.1],
  "at least zero": [0, 0, 72.9, 73, 73.1],
  number: [-0.03, 0, 0.02, 0.5],
};

/** The workbook with a part of its cells for typing filled in, and the rest blank. */
function halfFilled(book: BuildSheet, random: () => number, share: number): BuildSheet {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!;
  return {
    ...book,
    sheets: book.sheets.map((sheet) => ({
      ...sheet,
      cells: sheet.cells.map((cell) => {
        if (cell.content !== "" || cell.style !== "typed" || random() > share) return cell;
        const rule = sheet.validations.find(
          ({ area }) => cell.row >= area.row && cell.row < area.row + area.rows && cell.column >= area.column && cell.column < area.column + area.columns,
        )?.rule;
        const content = rule?.kind === "one of" ? pick(rule.words) : rule && NUMBERS[rule.kind] ? pick(NUMBERS[rule.kind]!) : "";
        return { ...cell, content };
      }),
    })),
  };
}

test("a workbook that is half filled in shows the same where a host hands its blank cells over as 0", () => {
  const differing: string[] = [];
  let filled = 0;
  for (const [seed, share] of [0.3, 0.6, 0.85, 0.95, 0.95, 0.98].entries()) {
    const random = seeded(seed + 1);
    const book = halfFilled(described({ cylinders: 4, heights: 3, axes: 2, valves: 2, secondReadings: true }), random, share);
    const file = readXlsx(writeXlsx(book));
    const shown = () => calculate(file).sheets.map(({ name, values }) => ({ name, values }));
    const [right, zeroed] = [shown(), whileBlanksAreZeros(shown)];
    filled += right.flatMap(({ values }) => values.flat()).filter((value) => typeof value === "string" && /^(within|under|over|not proven)/.test(value)).length;
    for (const [s, { name, values }] of right.entries())
      for (const [r, line] of values.entries())
        for (const [c, value] of line.entries()) {
          const [is, was] = [zeroed[s]!.values[r]![c], value].map((one) => JSON.stringify(one));
          if (is !== was) differing.push(`${name}, row ${r + 1}, column ${c + 1}: ${is} for ${was}`);
        }
  }
  expect(differing).toEqual([]);
  expect(filled).toBeGreaterThan(200);
});

test("a low cylinder beside a dead one waits for the wet test of that one, and does not point at the gasket", async () => {
  const made = await Made.of({ cylinders: 4 });
  await made.fill("PressureTests", "Dry", [150, 90, 0, 152]);
  await made.type("PressureTests", "Wet", 1, 92);
  await made.type("CompressionRule", "Rule", 0, "share");
  await made.type("CompressionRule", "Rule limit", 0, 0.75);
  const { book } = made.host.contents();
  const { sheet, row, column } = made.at("PressureTests", "Wet points at", 1);
  const said = () => calculate(book).sheets.find(({ name }) => name === sheet)!.values[row]![column];
  expect([said(), whileBlanksAreZeros(said)]).toEqual(["", ""]);
  await made.type("PressureTests", "Wet", 2, 0);
  expect(said()).toMatch(/^head gasket: from 90 to 92 with oil/);
});
