import { escaped, mostDecimals, numberText, sharedStart, signedText, widthOf, withoutControlCharacters, wrapped } from "../../src/drawings/text.ts";
import { HOSTILE, TAMED } from "./tree.ts";

describe("text that somebody typed", () => {
  test("loses what steers a terminal or turns the direction of writing, and nothing else", () => {
    expect(withoutControlCharacters(HOSTILE)).toBe(TAMED);
    expect(withoutControlCharacters("⌀ 73 µm, 10 Ω, Ärmel, 気筒 🔧")).toBe("⌀ 73 µm, 10 Ω, Ärmel, 気筒 🔧");
  });

  test("becomes one line", () => {
    expect(withoutControlCharacters(" Cylinder\r\n1\u2028top ")).toBe("Cylinder 1 top");
  });

  test("half a surrogate pair, which no file may hold, goes", () => {
    expect(withoutControlCharacters("a\ud83db\udd27c")).toBe("abc");
  });

  test("is escaped for text and for quoted attributes alike", () => {
    expect(escaped(`a<b>&"c"'d'`)).toBe("a&lt;b&gt;&amp;&quot;c&quot;&#39;d&#39;");
  });
});

describe("numbers", () => {
  test("are written as typed, with a true minus sign", () => {
    expect(numberText(73.05)).toBe("73.05");
    expect(numberText(-0.005)).toBe("−0.005");
    expect(numberText(73.04 - 73)).toBe("0.04");
  });

  test("get the decimals asked for", () => {
    expect(numberText(73, 3)).toBe("73.000");
    expect(numberText(-0.0001, 2)).toBe("0.00");
  });

  test("a difference carries its sign, nothing carries none", () => {
    expect([0.04, -0.04, 0, 0.0001, -0.0001].map((x) => signedText(x, 2))).toEqual(["+0.04", "−0.04", "0.00", "0.00", "0.00"]);
  });

  test("decimals are those of the number that was typed most exactly", () => {
    expect(mostDecimals([73, 73.1, 73.025])).toBe(3);
    expect(mostDecimals([1e-7, 73.04 - 73])).toBe(7);
    expect(mostDecimals([1e21])).toBe(0);
    expect(mostDecimals([])).toBe(0);
  });
});

describe("lines", () => {
  test("break between words and are no wider than their room", () => {
    const lines = wrapped("below the ring ridge, ten millimetres down", 90, 11);
    expect(lines.join(" ")).toBe("below the ring ridge, ten millimetres down");
    for (const line of lines) expect(widthOf(line, 11)).toBeLessThanOrEqual(90);
  });

  test("a word longer than a line is cut and lost nowhere", () => {
    const lines = wrapped("x".repeat(50), 60, 11);
    expect(lines.join("")).toBe("x".repeat(50));
    for (const line of lines) expect(widthOf(line, 11)).toBeLessThanOrEqual(60);
  });

  test("more lines than there is room for end in an ellipsis that still fits", () => {
    const lines = wrapped("one two three four five six seven eight", 50, 11, 2);
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/…$/);
    expect(widthOf(lines[1]!, 11)).toBeLessThanOrEqual(50);
  });

  test("no words make no lines", () => {
    expect(wrapped("  ", 50, 11)).toEqual([]);
  });
});

test("names are parted from the words that all begin with, and never quite used up", () => {
  expect(sharedStart(["Cylinder 1", "Cylinder 2"])).toEqual(["Cylinder", ["1", "2"]]);
  expect(sharedStart(["Engine A, Cylinder 1"])).toEqual(["Engine A, Cylinder", ["1"]]);
  expect(sharedStart(["front", "front left"])).toEqual(["", ["front", "front left"]]);
  expect(sharedStart([])).toEqual(["", []]);
});
