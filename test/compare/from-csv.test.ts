import { compareReadings } from "../../src/compare/compare.ts";
import { forLengths } from "../../src/compare/typed-sizes.ts";
import { csv } from "./stand.ts";

const HEAD = "engine,cylinder,characteristic,position,value,lower,upper,unit,uncertainty,hours";

describe("readings in long form", () => {
  test("are read with all that stands beside them, and their line", async () => {
    const { readings, unread } = await csv(`${HEAD}\nA,1,bore,top thrust,73.02,73,73.08,mm,0.003,850\n`, { name: "build.csv" });
    expect(unread).toBeUndefined();
    expect(readings).toEqual([
      {
        ...{ engine: "A", cylinder: "1", characteristic: "bore", position: "top thrust" },
        ...{ value: 73.02, lower: 73, upper: 73.08, unit: "mm", uncertainty: 0.003, hours: 850 },
        ...{ cell: { sheet: "build.csv", row: 1, column: 4 }, line: 2, isListed: true },
      },
    ]);
  });

  test("headings go by other names, limits are not needed, and hours have names of their own", async () => {
    const { readings } = await csv("Cyl. No;Feature;Measured Value [mm];U;Engine hours\r\n2;skirt;72,98;0,002;600\r\n", { decimal: "," });
    expect(readings).toMatchObject([{ cylinder: "2", characteristic: "skirt", value: 72.98, unit: "mm", uncertainty: 0.002, hours: 600 }]);
  });

  test("an uncertainty given for the whole file serves lengths that have none of their own", async () => {
    const text = "characteristic,value,unit,uncertainty\nbore,73,mm,\nbore,73,mm,0.005\npressure,12,bar,\nratio,10,,\n";
    const { readings } = await csv(text, { uncertainty: forLengths(0.003) });
    expect(readings.map(({ uncertainty }) => uncertainty)).toEqual([0.003, 0.005, undefined, undefined]);
  });
});

describe("nothing is dropped", () => {
  test("an uncertainty, or the other side, in another unit by its heading is a fault of the reading", async () => {
    const { readings } = await csv("characteristic,value (thou),U (mm)\ngap,12,0.005\n");
    expect(readings).toMatchObject([{ value: null, fault: "the heading of uncertainty says mm and the reading is in thou: write both in one unit" }]);
    const sides = await csv("characteristic,before (mm),after (in)\ngap,0.30,0.012\n");
    const fault = "the heading of after says inches and the reading is in mm: write both in one unit";
    expect(sides.readings.map(({ value, fault: why }) => [value, why])).toEqual([
      [null, fault],
      [null, fault],
    ]);
  });

  test("blank, bad, mistyped and misfitting rows are readings with a fault", async () => {
    const { readings } = await csv(
      `${HEAD}\nA,1,bore,a,,,,mm,,\nA,1,bore,b,worn,,,mm,,\nA,1,bore,c,"73,02",,,mm,,\nA,1,bore,d,73,02,,,mm,,850\n,,,,,,,,,\nA,1,bore,e,73,,,mm,-1,\nA,1,bore,f,73,,,mm,,soon\n`,
    );
    expect(readings.map(({ line, value, fault }) => [line, value, fault])).toEqual([
      [2, null, "the reading is still blank"],
      [3, null, 'value holds the text "worn": it must be a number'],
      [4, null, 'value holds "73,02": a decimal comma is read only when a locale that writes so is given'],
      [5, null, "the line has 11 fields where there are 10 headings: is there a decimal comma outside quotes?"],
      [7, null, "uncertainty -1 is too small: it must be a number of at least 0"],
      [8, null, 'hours holds the text "soon": it must be a number of at least 0'],
    ]);
  });

  test("each is listed on its side, and places are compared or refused", async () => {
    const before = await csv(`${HEAD}\nA,1,bore,a,73,,,mm,0.003,\nA,1,bore,b,73,,,mm,0.003,\n`);
    const after = await csv(`${HEAD}\nA,1,bore,a,73.01,,,mm,0.003,\nA,1,bore,b,worn,,,mm,0.003,\nA,1,bore,c,73,,,mm,0.003,\n`);
    expect(compareReadings(before, after)).toMatchObject({
      rows: 3,
      places: [{ verdict: "differs" }],
      refused: [{ why: 'after: value holds the text "worn": it must be a number' }, { why: "it is measured after only" }].reverse(),
    });
  });
});

describe("files that cannot be read say why", () => {
  test.each([
    ["", "is empty"],
    ["size,weight\n1,2\n", "no heading for the value"],
    ["value,unit\n1,mm\n", "no heading for the characteristic or position"],
    ['value,characteristic\n1,bore\n"2,bore\n', "breaks off: in line 3 a quote is opened and never closed"],
  ])("%j", async (text, why) => {
    expect((await csv(text)).unread).toContain(why);
  });
});

test("quoted line breaks count as lines, and a long field is read whole", async () => {
  const long = "x".repeat(40_000);
  const { readings } = await csv(`characteristic,position,value\r\n"bo""re","a\r\nb",1\r\n${long},c,2`);
  expect(readings.map(({ line, characteristic, position, value }) => [line, characteristic, position, value])).toEqual([
    [2, 'bo"re', "a\r\nb", 1],
    [4, long, "c", 2],
  ]);
});
