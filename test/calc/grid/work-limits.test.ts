import * as engine from "@odoo/o-spreadsheet";
import { registerFunctions } from "../../../src/calc/grid/register-functions.ts";
import { applyWorkLimits } from "../../../src/calc/grid/work-limits.ts";
import { specs } from "../../../src/functions/index.ts";

console.debug = () => {};
console.error = () => {};

let model: engine.Model;
let effort: ReturnType<typeof applyWorkLimits>;
beforeAll(() => {
  registerFunctions(specs, engine);
  effort = applyWorkLimits(engine, { block: 10_000, live: 30_000, work: 1_000_000, seconds: 600, text: 1000 });
  expect(applyWorkLimits(engine)).toBe(effort);
  const cells = { A1: "x", A2: "2", B1: '="(a+)+$"' };
  model = new engine.Model({ version: "19.3.2", sheets: [{ id: "s", name: "S", colNumber: 3, rowNumber: 900, cells }] });
});
beforeEach(() => effort.restart());

interface Result {
  value: unknown;
  message?: unknown;
}
const result = (formula: string) => model.getters.evaluateFormulaResult("s", formula) as Result | Result[][];
const first = (formula: string): Result => {
  const given = result(formula);
  return Array.isArray(given) ? given[0]![0]! : given;
};
const said = (formula: string) => String(first(formula).message);

test.each([
  ["=SEQUENCE(1048576,16384)", "17,200,000,000"],
  ["=SUM(SEQUENCE(101,100))", "10,100"],
  ["=RANDARRAY(1000,11)", "11,000"],
  ["=MUNIT(101)", "10,200"],
  ["=EXPAND(A1,200,51)", "10,200"],
  ["=EXPAND(A1:B1,6000)", "12,000"],
  ["=WRAPROWS(A1:A3,20000)", "20,000"],
  ["=WRAPCOLS(A1:A3,1E15)", "1,000,000,000,000,000"],
  ["=HSTACK(A1:A900,SEQUENCE(1,11))", "10,800"],
  ["=VSTACK(A1:A900,SEQUENCE(1,12))", "10,800"],
  ["=CHOOSEROWS(A1:C9,SEQUENCE(3334,1,1,0))", "10,000"],
  ["=CHOOSECOLS(A1:A900,SEQUENCE(1,12,1,0))", "10,800"],
  ["=MMULT(SEQUENCE(101,1),SEQUENCE(1,101))", "10,200"],
  ["=SEQUENCE(101,1)+SEQUENCE(1,101)", "10,200"],
  ["=IF(SEQUENCE(101,1)>3,SEQUENCE(1,101),0)", "10,200"],
  ["=IFERROR(SEQUENCE(101,1),SEQUENCE(1,101))", "10,200"],
  ["=HATCH.CLEARANCE(SEQUENCE(101,1),SEQUENCE(1,101))", "10,200"],
  ['=TEXTSPLIT(SUBSTITUTE("aaaaaaaaaaaaaaaaaaaa","a",",,,,,;;;;;"),",",";")', "10,200"],
])("%s would be larger than a block may be", (formula, cells) => {
  expect(first(formula).value).toBe("#VALUE!");
  expect(said(formula)).toBe(`This would fill ${cells} cells, and at most 10,000 are calculated at a time.`);
});

test("blocks up to the bound are calculated", () => {
  expect(first("=SUM(SEQUENCE(100,100))").value).toBe(50_005_000);
  expect(first("=SUM(MMULT(SEQUENCE(1,1000),SEQUENCE(1000,1)))").value).toBe(333_833_500);
  expect(first("=SUMPRODUCT(A1:A900,A1:A900)").value).toBe(4);
});

test.each([
  '=SUBSTITUTE("aaaaaaaaaaa","a",SUBSTITUTE("bbbbbbbbbb","b","0123456789"))',
  '=TEXTJOIN("0123456789",FALSE,A1:A900)',
  "=CONCATENATE(SEQUENCE(1001))",
])("%s would be a text that no cell holds", (formula) => {
  expect(said(formula)).toBe("This text would be longer than the 1,000 characters that a cell holds.");
});

test("a text that doubles again and again ends at what a cell holds", () => {
  const doubled = (times: number): string => (times === 0 ? "A1" : `(${doubled(times - 1)}&${doubled(times - 1)})`);
  expect(String(first(`=${doubled(9)}`).value)).toHaveLength(512);
  expect(said(`=${doubled(10)}`)).toBe("This text would be longer than the 1,000 characters that a cell holds.");
});

test("blocks that are there at the same time are bounded together; those that are used up do not count", () => {
  const blocks = (count: number, join: string) => Array.from({ length: count }, () => "SUM(SEQUENCE(100,100))").join(join);
  const held = (count: number) => `=COUNT(${Array.from({ length: count }, () => "SEQUENCE(100,100)").join(",")})`;
  expect(first(`=${blocks(20, "+")}`).value).toBe(1_000_100_000);
  expect(first(held(3)).value).toBe(30_000);
  expect(effort.refused).toBeUndefined();
  // COUNT passes errors over, so what it leaves out has to be told beside it.
  first(held(4));
  expect(effort.refused).toBe("The blocks that formulas fill here come to more than 30,000 cells together.");
});

test("many calls together end at what may be worked", () => {
  // Each sum twice over the 2,700 cells, which have to be read the first time alone.
  const sums = (count: number) => Array.from({ length: count }, () => "SUMPRODUCT(A1:C900*1)").join("+");
  expect(first(`=${sums(60)}`).value).toBe(120);
  expect(effort.exhausted).toBeUndefined();
  expect(said(`=${sums(100)}`)).toBe("The formulas here take more work together than is done at a time.");
  expect(effort.exhausted).toBe("work");
  effort.restart();
  expect(first(`=${sums(60)}`).value).toBe(120);
  effort.restart(2_000_000);
  expect(first(`=${sums(100)}`).value).toBe(200);
  effort.restart();
  expect(said("=NETWORKDAYS(1,2000001)")).toBe("The formulas here take more work together than is done at a time.");
});

test("a range that many formulas look through counts for what is new in it", () => {
  const sums = Array.from({ length: 300 }, () => "SUM(A1:C900)").join("+");
  for (let i = 0; i < 10; i++) expect(first(`=${sums}`).value).toBe(600);
  expect(effort.exhausted).toBeUndefined();
});

test("the clock is the last stop", () => {
  const { now } = Date;
  const many = `=SUM(${Array.from({ length: 4100 }, () => "SQRT(4)").join(",")})`;
  try {
    Date.now = () => now() + 700_000;
    expect(said(many)).toBe("The formulas here take longer than 600 seconds.");
  } finally {
    Date.now = now;
  }
  expect(effort.exhausted).toBe("time");
  effort.restart();
  expect(first(many).value).toBe(8200);
});

test("a function of ours costs what it declares: pairing 50 bores takes more than is done at a time, pairing 20 does not", () => {
  const paired = (count: number) => `=HATCH.PISTONMATCH(73+SEQUENCE(${count})/1000,72.95+SEQUENCE(${count})/1000,0.04)`;
  expect(said(paired(50))).toBe("The formulas here take more work together than is done at a time.");
  expect(first(paired(20)).value).toBe("bore");
});

test("a call that asks for too much takes nothing from the others", () => {
  expect(said("=NETWORKDAYS(1,2000001)")).toBe("The formulas here take more work together than is done at a time.");
  expect(first("=SUM(A1:C900)").value).toBe(2);
});

test("patterns that may never end are refused", () => {
  expect(said('=REGEXTEST("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaab",B1)')).toBe(
    "Search patterns of this kind are not worked out here: some never come to an end.",
  );
});

test("days after the year 9999 are none, as in other sheets", () => {
  expect([first("=YEAR(2958465)").value, first("=YEAR(2958466)").value, first("=ISOWEEKNUM(1E9)").value]).toEqual([9999, "#NUM!", "#NUM!"]);
});

test("what is no number is an error, also in a block", () => {
  expect(first("=10^400")).toMatchObject({ value: "#NUM!", message: "This comes to no number that a cell can hold." });
  const block = result("=10^{1;400}") as Result[][];
  expect(block[0]!.map(({ value }) => value)).toEqual([10, "#NUM!"]);
});

test("an exception inside a function is not told in the words of the engine's makers", () => {
  engine.addFunction("BROKEN", {
    description: "broken",
    args: [],
    compute: () => {
      throw new TypeError("x is undefined");
    },
  });
  effort = applyWorkLimits({
    ...engine,
    registries: {
      functionRegistry: Object.assign(Object.create(Object.getPrototypeOf(engine.registries.functionRegistry)), engine.registries.functionRegistry),
    },
  } as never);
  expect(said("=BROKEN()")).toBe("This part of the formula led to a fault in its function.");
});
