import { asWritten, EXAMPLES } from "../calc/examples.ts";
import { crosshatch, jsonLines } from "./run.ts";

describe("calc FORMULA", () => {
  test.each([
    ["HATCH.TAPER({73.01,73.02;73.00,73.01})", "0.01\n"],
    ["=HATCH.VERDICT({0.03;0.05},,0.04)", "within\nover\n"],
    ['={1,TRUE;"a\tb",2}', "1\tTRUE\na b\t2\n"],
    ["_xldudf_HATCH_CLEARANCE(73.04,73)", "0.04\n"],
    ["1E-7*10", "0.000001\n"],
    ["HATCH.VERDICT(FLOOR(1.15,0.05),1.15,1.25)", "within\n"],
  ])("%s prints its value", async (formula, out) => {
    expect(await crosshatch(["calc", formula])).toEqual({ code: 0, out, err: "" });
  });

  test("a fault is a sentence and leaves 1", async () => {
    expect(await crosshatch(["calc", "HATCH.CLEARANCE(73.00, 73.06)"])).toEqual({
      code: 1,
      out: "",
      err: "crosshatch: CLEARANCE: shaft 73.06 is larger than hole 73: are they swapped? A press fit is one for HATCH.INTERFERENCE\n",
    });
  });
});

describe("calc -", () => {
  const calc = async (input: string | readonly string[]) => {
    const { code, out, err } = await crosshatch(["calc", "-"], { input });
    expect({ code, err }).toEqual({ code: 0, err: "" });
    return jsonLines(out);
  };

  test("every example of every function gives what it says", async () => {
    const answers = await calc(EXAMPLES.map(([formula]) => `${formula}\n`).join(""));
    expect(answers.map(({ formula }) => formula)).toEqual(EXAMPLES.map(([formula]) => formula));
    for (const [i, [formula, gives]] of EXAMPLES.entries()) {
      const { value } = answers[i]!;
      expect([formula, asWritten(Array.isArray(value) ? value : [[value as number]], gives)]).toEqual([formula, gives]);
    }
  });

  test("one answer a line, in order, whatever the line holds and however lines end", async () => {
    const lines = [
      "=1+1",
      "",
      "HATCH.CLEARANCE(40.03,39.98)\r",
      "=)(",
      "\u0000",
      "=1/0",
      '="ä\u2028ß"',
      "=NOSUCH(1)",
      "=IF(1=1,NOSUCH(1),2)",
      "=IF(1=1,2,NOSUCH(1))",
      "\ud83d",
      `=${"(".repeat(9000)}`,
      "  =2*3  ",
      "last",
    ];
    const answers = await calc(lines.join("\n"));
    expect(answers.map(({ value, fault }) => value ?? fault)).toEqual([
      2,
      "there is no formula",
      0.05,
      "the formula cannot be read",
      "the formula cannot be read",
      "the formula gives #DIV/0!: The divisor must be different from zero",
      "ä\u2028ß",
      "the formula uses the function NOSUCH, which is not known here",
      "the formula uses the function NOSUCH, which is not known here",
      2,
      expect.stringMatching(/^the formula /),
      "the formula is longer than a formula can be",
      6,
      "the formula uses a name that the workbook does not have (last)",
    ]);
    expect(answers[2]!.formula).toBe("HATCH.CLEARANCE(40.03,39.98)");
  });

  test("a formula that would take all memory is refused alone, also where its function passes errors over", async () => {
    const answers = await calc("=1\n=SUM(SEQUENCE(30000,30000))\n=COUNT(1,SEQUENCE(30000,30000))\n=2\n");
    expect(answers.map(({ value }) => value)).toEqual([1, undefined, undefined, 2]);
    const why = "This would fill 900,000,000 cells, and at most 500,000 are calculated at a time";
    expect(answers.slice(1, 3).map(({ fault }) => fault)).toEqual([`the formula gives #VALUE!: ${why}`, `the formula cannot be worked out: ${why}`]);
  }, 60_000);

  test("no input, no answers", async () => {
    expect(await calc("")).toEqual([]);
  });

  test("the last line counts without its line end, and signs cut in two are put together again", async () => {
    const euro = Buffer.from('="€"');
    const { out } = await crosshatch(["calc", "-"], { input: euro });
    expect(jsonLines(out)).toEqual([{ formula: '="€"', value: "€" }]);
  });
});
