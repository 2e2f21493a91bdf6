import type { Cell } from "../../src/core/cell.ts";
import { NAMESPACE } from "../../src/core/define.ts";
import { specs } from "../../src/functions/index.ts";
import { givesText } from "../../src/libreoffice/extension/type-library.ts";
import { asWritten, EXAMPLES } from "../calc/examples.ts";
import { argumentsOf } from "../functions/scalar-example.ts";
import { held } from "../parity/held.ts";
import { type Input, inputs } from "../parity/inputs.ts";
import { differences, expected, OWN_WAYS, type OwnWay } from "./calls.ts";
import type { Office } from "./office.ts";
import { officeWithExtension } from "./stand.ts";

const EACH = 100;
const BATCH = 20 * specs.length;
const SEED = 730;

let office: Office;
beforeAll(async () => {
  office = await officeWithExtension();
}, 120_000);
afterAll(() => office.close());

test("the function wizard lists every function with its description and its arguments in their order", async () => {
  const listed = await office.ask<{ name: string }[]>("wizard");
  const wanted = specs.map(({ name, summary, inputs }) => ({
    ...{ name: `${NAMESPACE}.${name}`, description: summary },
    // LibreOffice itself calls each of them optional.
    arguments: inputs.map(({ name: input, param }) => [input, param.isOptional ? param.help : `${param.help} (needed)`]),
  }));
  expect(listed.sort((a, b) => (a.name < b.name ? -1 : 1))).toEqual(wanted.sort((a, b) => (a.name < b.name ? -1 : 1)));
});

test("every example of every function gives in its cells what it says", async () => {
  const calls = EXAMPLES.map(([formula]): Input => {
    const spec = specs.find(({ name }) => formula.startsWith(`=${NAMESPACE}.${name}(`))!;
    const given = argumentsOf(formula).map((one) =>
      one === undefined ? null : { as: "literal" as const, rows: (Array.isArray(one) ? one : [[one]]).map((row) => row.map(held)) },
    );
    return { spec, given };
  });
  // What cells are to show is what the example says, to the decimals that it writes.
  for (const [i, [, gives]] of EXAMPLES.entries()) expect(asWritten(expected(calls[i]!).rows, gives)).toEqual(gives);
  expect(await differences(office, calls)).toEqual([]);
}, 120_000);

describe(`${EACH} calls of each function`, () => {
  const calls = [...inputs(EACH * specs.length, SEED)];

  test("show in cells what the bare call gives, or what is known that LibreOffice does to such a call", async () => {
    const found: string[] = [];
    for (let i = 0; i < calls.length; i += BATCH) found.push(...(await differences(office, calls.slice(i, i + BATCH))));
    expect(found).toEqual([]);
  }, 300_000);

  test("a function that the type library says gives text gives no number to any of them", () => {
    const numbers = calls.filter(
      (call) =>
        givesText(call.spec) &&
        expected(call)
          .rows.flat()
          .some((cell) => typeof cell === "number"),
    );
    expect(numbers.map(({ spec }) => spec.name)).toEqual([]);
    expect(specs.filter(givesText).map(({ name }) => name)).toContain("VERDICT");
  });

  test("few of them are calls that LibreOffice treats in a way of its own, some of each", () => {
    const counts = new Map<OwnWay, number>();
    for (const call of calls) {
      const { way } = expected(call);
      if (way) counts.set(way, (counts.get(way) ?? 0) + 1);
    }
    console.log([...counts].map(([way, count]) => `${count} of ${calls.length}: ${OWN_WAYS[way]}`).join("\n"));
    expect([...counts.keys()].sort()).toEqual(Object.keys(OWN_WAYS).sort());
    expect([...counts.values()].reduce((sum, count) => sum + count, 0)).toBeLessThan(0.15 * calls.length);
  });
});

test("what only gives text is compared with text as any other text is, in each form of formula", async () => {
  const key = "compared";
  await office.ask("open", { key });
  await office.ask("type", { key, sheet: "Sheet1", column: 0, row: 0, formulas: [["0.03"], ["0.05"], ["0.03"]] });
  await office.ask("type_array", { key, sheet: "Sheet1", box: [1, 0, 1, 2], formula: "=HATCH.VERDICT(A1:A3;0.02;0.04)" });
  await office.ask("type", { key, sheet: "Sheet1", column: 2, row: 0, formulas: [["=HATCH.VERDICT(A1;0.02;0.04)"]] });
  const formulas = ['=IF(B1="within";1;2)', "=EXACT(B1;C1)", '=COUNTIF(B1:B3;"within")', '=MATCH("over";B1:B3;0)', '=IF(C1="within";1;2)'];
  await office.ask("type", { key, sheet: "Sheet1", column: 3, row: 0, formulas: [formulas] });
  expect(await office.ask("cells", { key, sheet: "Sheet1", box: [3, 0, 7, 0] })).toEqual([[1, 1, 2, 2, 1]]);
  await office.ask("close", { key });
});

test("names are read in small letters, a range of one cell tells a blank, and a cell alone shows the first of a block", async () => {
  await office.ask("open", { key: "typed" });
  const typed = ["=hatch.taper(A1:B2)", "=HATCH.MARGIN(C1;-1;1)", "=HATCH.MARGIN(C1:C1;-1;1)", "=HATCH.BORESUMMARY(A1:B2)"];
  await office.ask("type", {
    key: "typed",
    sheet: "Sheet1",
    column: 0,
    row: 0,
    formulas: [
      ["73.01", "73.02"],
      ["73", "73.01"],
    ],
  });
  await office.ask("type", { key: "typed", sheet: "Sheet1", column: 3, row: 0, formulas: typed.map((one) => [one]) });
  const values = await office.ask<Cell[][]>("cells", { key: "typed", sheet: "Sheet1" });
  expect(values.map((row) => row[3])).toEqual([0.01, 1, "", "smallest"]);
  await office.ask("close", { key: "typed" });
});
