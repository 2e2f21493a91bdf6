import fc from "fast-check";
import { wetTest } from "../../../src/functions/tests/wet-test.ts";
import { ask, BLANKS_AND_ZERO } from "../ask.ts";

const said = (dry: readonly unknown[], wet: readonly unknown[], ...rest: number[]) =>
  (ask(wetTest, [dry as number[]], [wet as number[]], ...rest) as string[][])[0]!;
const points = (dry: readonly unknown[], wet: readonly unknown[], ...rest: number[]) => said(dry, wet, ...rest).map((text) => text.split(":")[0]);

describe("cited values", () => {
  // TM 5-1185: a gain with oil points at the rings, no gain at the valves, two low cylinders side by
  // side at the head gasket. The readings are ours.
  test("a low cylinder that gains points at its rings", () => {
    expect(said([150, 148, 152, 100], [153, 150, 155, 140])).toEqual([
      "not low: 150, highest 152",
      "not low: 148, highest 152",
      "not low: 152, highest 152",
      "rings: from 100 to 140 with oil",
    ]);
  });

  test("a low cylinder that does not gain points at its valves", () => {
    expect(said([150, 100, 152, 148], [153, 102, 155, 150])[1]).toBe("valves: from 100 to 102 with oil");
  });

  test("two low cylinders side by side without gain point at the head gasket between them", () => {
    expect(points([150, 90, 92, 148], [153, 92, 95, 150])).toEqual(["not low", "head gasket", "head gasket", "not low"]);
    expect(said([150, 90, 92, 148], [153, 92, 95, 150])[1]).toBe("head gasket: from 90 to 92 with oil, beside another low cylinder");
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

  test("a low neighbour whose own rings leak does not point at the gasket, one without a wet reading does", () => {
    expect(points([150, 90, 92], [150, 130, 94])).toEqual(["not low", "rings", "valves"]);
    expect(points([150, 90, 92], [150, "", 94])).toEqual(["not low", "", "head gasket"]);
    expect(points([150, 90, 92], [150, "x", 94])).toEqual(["not low", "check", "head gasket"]);
  });

  test("a neighbour that is not measured is not taken to be low", () => {
    expect(points([150, 90, ""], [155, 93, ""])).toEqual(["not low", "valves", ""]);
    expect(points([150, 90, "x"], [155, 93, 95])).toEqual(["not low", "valves", "check"]);
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
      "valves: from 90 to 92 with oil",
      'check: dry holds the text "low": it wants a pressure above 0 (column 2)',
      'check: wet holds the text "x": it wants a pressure above 0 (column 3)',
    ]);
  });

  test("a gain in per cent is refused", () => {
    expect(ask(wetTest, 90, 130, 10)).toEqual({
      code: "too-large",
      sentence: "WETTEST: gain 10 is too large: it wants a number above 0 and of at most 1",
    });
  });
});

describe("blanks", () => {
  test("without readings there is nothing to read; a cylinder without one of its two stays blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      const cell = blank as number;
      expect(ask(wetTest, cell, 130)).toBe("");
      expect(ask(wetTest, 90, cell)).toBe("");
      expect(said([90, cell, 150], [130, 100, cell])).toEqual(["rings: from 90 to 130 with oil", "", ""]);
    }
  });

  test("blank settings are the defaults", () => {
    for (const blank of BLANKS_AND_ZERO) expect(ask(wetTest, [[90, 150]], [[99, 150]], blank, blank)).toEqual(ask(wetTest, [[90, 150]], [[99, 150]]));
  });
});
