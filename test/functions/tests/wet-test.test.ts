import fc from "fast-check";
import { wetTest } from "../../../src/functions/tests/wet-test.ts";
import { ask, BLANKS, BLANKS_AND_ZERO } from "../ask.ts";

const said = (dry: readonly unknown[], wet: readonly unknown[], ...rest: (number | string)[]) =>
  (ask(wetTest, [dry as number[]], [wet as number[]], ...rest) as string[][])[0]!;
const points = (dry: readonly unknown[], wet: readonly unknown[], ...rest: (number | string)[]) => said(dry, wet, ...rest).map((text) => text.split(":")[0]);

describe("cited values", () => {
  // TM 5-1185: a gain with oil points at the rings, no gain at the valves, two low cylinders side by
  // side at the head gasket. The readings are ours.
  test("a low cylinder that gains points at its rings", () => {
    expect(said([150, 148, 152, 100], [153, 150, 155, 140])).toEqual([
      "not low: 150, default share rule asks at least 114 (0.75 of the highest, 152)",
      "not low: 148, default share rule asks at least 114 (0.75 of the highest, 152)",
      "not low: 152, default share rule asks at least 114 (0.75 of the highest, 152)",
      "rings: from 100 to 140 with oil; default share rule asks at least 114 (0.75 of the highest, 152)",
    ]);
  });

  test("a low cylinder that does not gain points at its valves", () => {
    expect(said([150, 100, 152, 148], [153, 102, 155, 150])[1]).toBe(
      "valves: from 100 to 102 with oil; default share rule asks at least 114 (0.75 of the highest, 152)",
    );
  });

  test("two low cylinders side by side without gain point at the head gasket between them", () => {
    expect(points([150, 90, 92, 148], [153, 92, 95, 150])).toEqual(["not low", "head gasket", "head gasket", "not low"]);
    expect(said([150, 90, 92, 148], [153, 92, 95, 150])[1]).toBe(
      "head gasket: from 90 to 92 with oil, beside another low cylinder; default share rule asks at least 112.5 (0.75 of the highest, 150)",
    );
  });
});

describe("identities", () => {
  const reading = fc.integer({ min: 60, max: 160 });
  const engine = fc.array(fc.tuple(reading, fc.integer({ min: 0, max: 60 })), { minLength: 2, maxLength: 8 });

  test("the engine read from the other end points at the same parts", () => {
    fc.assert(
      fc.property(engine, (pairs) => {
        const dry = pairs.map(([low]) => low);
        const wet = pairs.map(([low, gain]) => low + gain);
        expect(points([...dry].reverse(), [...wet].reverse())).toEqual(points(dry, wet).reverse());
      }),
    );
  });

  test("in another unit they are the same parts", () => {
    fc.assert(
      fc.property(engine, (pairs) => {
        const dry = pairs.map(([low]) => low);
        const wet = pairs.map(([low, gain]) => low + gain);
        const tenths = (read: number[]) => read.map((x) => x / 10);
        expect(points(tenths(dry), tenths(wet))).toEqual(points(dry, wet));
      }),
    );
  });

  test("down a column, a bank to each, it is the same as along a row", () => {
    fc.assert(
      fc.property(engine, (pairs) => {
        const dry = pairs.map(([low]) => [low, 155]);
        const wet = pairs.map(([low, gain]) => [low + gain, 155]);
        const both = (ask(wetTest, dry, wet) as string[][]).map((row) => row[0]!.split(":")[0]);
        expect(both).toEqual(points([155, ...pairs.map(([low]) => low)], [155, ...pairs.map(([low, gain]) => low + gain)]).slice(1));
      }),
    );
  });
});

describe("at the limits", () => {
  test("a gain of exactly a tenth counts, a hair less does not", () => {
    expect(points([90, 150], [99, 150])[0]).toBe("rings");
    expect(points([90, 150], [98.9, 150])[0]).toBe("valves");
    // 6.6 − 6 in binary is below 0.1 × 6.
    expect(6.6 - 6).toBeLessThan(0.1 * 6);
    expect(points([6, 10], [6.6, 10])[0]).toBe("rings");
  });

  test("three quarters of the highest is not low, a hair less is", () => {
    expect(points([114, 152], [114, 152])[0]).toBe("not low");
    expect(points([113.9, 152], [113.9, 152])[0]).toBe("valves");
  });

  test("the shop's own gain and share of the highest are used", () => {
    expect(points([90, 150], [99, 150], 0.2)[0]).toBe("valves");
    expect(points([130, 150], [132, 150], 0.1, 0.9)[0]).toBe("valves");
    expect(points([90, 150], [90.1, 150], 0.001)[0]).toBe("rings");
    expect(points([90, 150], [90, 150], 0.001)[0]).toBe("valves");
  });

  test("a low neighbour whose own rings leak does not point at the gasket", () => {
    expect(points([150, 90, 92], [150, 130, 94])).toEqual(["not low", "rings", "valves"]);
  });

  test("the head gasket waits for the low neighbour's wet reading, and its place is said", () => {
    const wait =
      "wait: from 92 to 94 with oil, test the low cylinder beside it with oil too (column 2); default share rule asks at least 112.5 (0.75 of the highest, 150)";
    expect(said([150, 90, 92], [150, "", 94])).toEqual(["not low: 150, default share rule asks at least 112.5 (0.75 of the highest, 150)", "", wait]);
    expect(said([150, 90, 92], [150, "x", 94])[2]).toBe(wait);
    // A wet reading that cannot be is none yet.
    expect(said([150, 90, 92], [150, 60, 94])[2]).toBe(wait);
    const columns = ask(wetTest, [[150], [90], [92]], [[150], [""], [94]]) as string[][];
    expect(columns[2]![0]).toContain("test the low cylinder beside it with oil too (row 2)");
    const banks = ask(
      wetTest,
      [
        [150, 150],
        [90, 150],
        [92, 150],
      ],
      [
        [150, 151],
        ["", 152],
        [94, 153],
      ],
    ) as string[][];
    expect(banks[2]![0]).toContain("test the low cylinder beside it with oil too (row 2, column 1)");
  });

  test("one low neighbour that does not gain settles it, whatever the other one waits for; so do rings of its own", () => {
    expect(points([90, 91, 92, 150], ["", 92, 93, 150])).toEqual(["", "head gasket", "head gasket", "not low"]);
    expect(points([90, 91, 150], ["", 120, 150])).toEqual(["", "rings", "not low"]);
  });

  test("a neighbour without a dry reading is waited for while the bank goes on behind it", () => {
    expect(said([90, "", 150], [93, "", 155])[0]).toBe(
      "wait: from 90 to 93 with oil, test the cylinder beside it dry first (column 2); default share rule asks at least 112.5 (0.75 of the highest, 150)",
    );
    expect(points([150, 90, "x"], [155, 93, 95])).toEqual(["not low", "wait", "check"]);
    // At the end of the range there may be no more cylinders.
    expect(points([150, 90, ""], [155, 93, ""])).toEqual(["not low", "valves", ""]);
    expect(points(["", 90, 150], ["", 93, 155])).toEqual(["", "valves", "not low"]);
  });

  test("a dead cylinder is a reading: oil that does nothing points at its valves, oil that brings a tenth of the highest at its rings", () => {
    expect(said([150, 0, 152], [155, 0, 158])[1]).toBe("valves: from 0 to 0 with oil; default share rule asks at least 114 (0.75 of the highest, 152)");
    expect(points([150, 0, 152], [155, 15.1, 158])[1]).toBe("valves");
    expect(points([150, 0, 152], [155, 15.2, 158])[1]).toBe("rings");
    expect(points([150, 0, 0], [155, 0, 0])).toEqual(["not low", "head gasket", "head gasket"]);
    expect(ask(wetTest, 0, 0)).toEqual([["valves: from 0 to 0 with oil"]]);
    expect(ask(wetTest, 0, 5)).toEqual([["rings: from 0 to 5 with oil"]]);
  });

  test("the typed rule says who is low, and is named without the word default", () => {
    expect(said([150, 148, 138], [155, 150, 140], 0.1, 10, "difference")).toEqual([
      "not low: 150, difference rule asks at least 140 (highest 150 less 10)",
      "not low: 148, difference rule asks at least 140 (highest 150 less 10)",
      "valves: from 138 to 140 with oil; difference rule asks at least 140 (highest 150 less 10)",
    ]);
    expect(said([150, 150, 90], [155, 150, 92], 0.1, 0.2, "average")[2]).toBe(
      "valves: from 90 to 92 with oil; average rule asks at least 104 (0.2 below the average, 130)",
    );
    expect(said([150, 100], [155, 102], 0.1, 0.75)[1]).toBe("valves: from 100 to 102 with oil; share rule asks at least 112.5 (0.75 of the highest, 150)");
  });

  test("low cylinders of two banks are not side by side", () => {
    expect(
      (
        ask(
          wetTest,
          [
            [150, 90],
            [92, 150],
          ],
          [
            [150, 91],
            [93, 150],
          ],
        ) as string[][]
      )
        .flat()
        .map((text) => text.split(":")[0]),
    ).toEqual(["not low", "valves", "valves", "not low"]);
  });

  test("a cylinder given alone is taken to be low", () => {
    expect(ask(wetTest, 90, 130)).toEqual([["rings: from 90 to 130 with oil"]]);
    expect(ask(wetTest, 90, 92)).toEqual([["valves: from 90 to 92 with oil"]]);
  });
});

describe("faults", () => {
  test("a reading that oil would have lowered is not read", () => {
    expect(said([90, 150], [70, 150])[0]).toBe("check: wet 70: oil cannot lower a reading of 90, measure both again");
    expect(points([90, 150], [85, 150])[0]).toBe("valves");
  });

  test("readings that do not pair up are refused", () => {
    expect(ask(wetTest, [[90, 150]], [[92]])).toEqual({
      code: "shape",
      sentence: "WETTEST: wet is 1×1 cells, which does not fit dry of 1×2: ranges must be of one size, or one row, one column or one cell",
    });
  });

  test("columns of readings of unequal length are refused too", () => {
    expect(ask(wetTest, [[90], [150]], [[92], [152], [154]])).toEqual({
      code: "shape",
      sentence: "WETTEST: wet is 3×1 cells, which does not fit dry of 2×1: ranges must be of one size, or one row, one column or one cell",
    });
  });

  test("a bad reading keeps to its own cell", () => {
    expect(said([90, "low", 150], [92, 100, "x"])).toEqual([
      "wait: from 90 to 92 with oil, test the cylinder beside it dry first (column 2); default share rule asks at least 112.5 (0.75 of the highest, 150)",
      'check: dry holds the text "low": it must be a pressure of at least 0 (column 2)',
      'check: wet holds the text "x": it must be a pressure of at least 0 (column 3)',
    ]);
  });

  test("a rule without its limit is refused: only the share rule has a usual one", () => {
    expect(ask(wetTest, [[90, 150]], [[92, 150]], "", "", "difference")).toEqual({
      code: "missing",
      sentence: "WETTEST: low is not given: it must be a number above 0, as the difference rule has no usual limit",
    });
  });

  test("a limit by which every cylinder would pass is refused as COMPRESSIONCHECK refuses it", () => {
    expect(ask(wetTest, [[90, 150]], [[92, 150]], "", 0.25)).toEqual({
      code: "unfit",
      sentence: "WETTEST: low 0.25: for the share rule type the least share of the highest reading, from 0.5 to 1, such as 0.75",
    });
    expect(ask(wetTest, [[6.5, 10.3]], [[6.6, 10.3]], "", 20, "difference")).toEqual({
      code: "unfit",
      sentence: "WETTEST: low 20: the difference rule takes a pressure, and this is more than half of the highest reading 10.3: is it in their unit?",
    });
    expect(ask(wetTest, [[0, 0]], [[0, 0]])).toEqual({
      code: "unfit",
      sentence: "WETTEST: dry 0: no cylinder shows any pressure, so there is none to judge the others by",
    });
  });

  test("a gain in per cent is refused", () => {
    expect(ask(wetTest, 90, 130, 10)).toEqual({
      code: "too-large",
      sentence: "WETTEST: gain 10 is too large: it must be a number above 0 and at most 1",
    });
  });
});

describe("blanks", () => {
  test("without readings there is nothing to read; a cylinder without one of its two stays blank", () => {
    for (const blank of BLANKS) {
      const cell = blank as number;
      expect(ask(wetTest, cell, 130)).toBe("");
      expect(ask(wetTest, 90, cell)).toBe("");
      expect(points([90, cell, 150], [130, 100, cell])).toEqual(["rings", "", ""]);
    }
  });

  test("blank settings are the defaults", () => {
    for (const blank of BLANKS_AND_ZERO) expect(ask(wetTest, [[90, 150]], [[99, 150]], blank, blank, blank)).toEqual(ask(wetTest, [[90, 150]], [[99, 150]]));
  });
});
