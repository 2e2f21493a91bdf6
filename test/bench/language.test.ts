import { localeOf, meantBy } from "../../src/bench/language.ts";
import { atStand } from "./stand.ts";

// Common practice of each country, as the Unicode locale data (cldr.unicode.org) has it.
test.each([
  ["en-US", ".", ",", "mm/dd/yyyy", ",", "hh:mm:ss a"],
  ["en-GB", ".", ",", "dd/mm/yyyy", ",", "hh:mm:ss"],
  ["de-DE", ",", ".", "dd.mm.yyyy", ";", "hh:mm:ss"],
  ["fr-FR", ",", " ", "dd/mm/yyyy", ";", "hh:mm:ss"],
  ["de-CH", ".", expect.any(String), "dd.mm.yyyy", ",", "hh:mm:ss"],
  ["sv-SE", ",", " ", "yyyy-mm-dd", ";", "hh:mm:ss"],
])("%s", (language, decimalSeparator, thousandsSeparator, dateFormat, formulaArgSeparator, timeFormat) => {
  expect(localeOf(language)).toMatchObject({ decimalSeparator, thousandsSeparator, dateFormat, formulaArgSeparator, timeFormat });
});

test("a language that is named in a system's own way is known by its start, one that is none is English", () => {
  expect(localeOf("en-US@posix")).toEqual(localeOf("en-US"));
  expect(localeOf("de_DE.UTF-8")).toEqual(localeOf("de-DE"));
  expect(localeOf("??")).toEqual(localeOf("en-US"));
});

const meant = (typed: string, language = "en-US", format?: string) => meantBy(typed, typed, { place: "C4", format, locale: localeOf(language) });

test("fractions of an inch are sizes: mixed ones everywhere, others where numbers are", () => {
  // 7/16 in is 0.4375 in by division.
  expect(["3 7/16", "3-7/16", "-1 1/2", " 2 1/64 "].map((typed) => meant(typed).content)).toEqual(["3.4375", "3.4375", "-1.5", "2.015625"]);
  expect([meant("7/16", "en-US", "0.0000").content, meant("7/16", "en-US", "m/d/yyyy").content, meant("7/16").content]).toEqual(["0.4375", "7/16", "7/16"]);
  expect(meant("1 1/0").content).toBe("1 1/0");
});

test.each([
  ["73,025", "en-US"],
  ["73,025", "en-GB"],
  ["73.025", "de-DE"],
  ["-1,200", "en-US"],
])("%s in %s can mean two things: it stays text, and is said", (typed, language) => {
  const { content, said } = meant(typed, language);
  expect(content).toBe(`'${typed}`);
  expect(said).toContain(`${typed} can mean ${typed.replace(",", ".")} or ${typed.replace(/[.,]/, "")}. It stands in C4 as text`);
});

test.each([
  ["73.025", "en-US"],
  ["73,025", "de-DE"],
  ["73,02", "en-US"],
  ["1,234,567", "en-US"],
  ["73,025", "fr-FR"],
  ["=SUM(1,200)", "en-US"],
])("%s in %s can mean one thing alone and is left to the grid", (typed, language) => {
  expect(meant(typed, language)).toEqual({ content: typed });
});

describe("typed on the bench", () => {
  const at = atStand("no page");

  test.each([
    // Days from 30 December 1899 to 2 April and to 4 February 2025.
    ["en-GB", [["02/04/2025", 45749]]],
    [
      "en-US",
      [
        ["02/04/2025", 45692],
        ["3 7/16", 3.4375],
        ["73,025", "73,025"],
      ],
    ],
    [
      "de-DE",
      [
        ["02.04.2025", 45749],
        ["73,025", 73.025],
        ["=HATCH.CLEARANCE(73,025;72,985)", 0.04],
      ],
    ],
  ] as const)(
    "in %s: %j",
    async (locale, cells) => {
      const page = await at.stand.page({ locale });
      for (const [i, [typed, value]] of cells.entries()) {
        const cell = `F${30 + i}`;
        await page.type(cell, typed);
        expect([typed, await page.value(`Bores!${cell}`)]).toEqual([typed, value]);
        expect(await page.message()).toBe(
          value === "73,025"
            ? "73,025 can mean 73.025 or 73025. It stands in F32 as text and counts as no number: type it so that it can mean one thing only."
            : "",
        );
      }
      await page.close();
    },
    60_000,
  );

  test("what a file holds is the same in every language, and is saved the same", async () => {
    const page = await at.stand.page({ locale: "de-DE" });
    try {
      expect([await page.value("Bores!C4"), await page.formula("Bores!C16")]).toEqual([73.025, expect.stringMatching(/^=HATCH\.TAPER\([^;]*\)$/)]);
      await page.type("C4", "73,031");
      const { bytes } = await page.saved();
      const { readXlsx } = await import("../../src/xlsx/read/read.ts");
      const cells = readXlsx(bytes).sheets[0]!.cells;
      const at = (row: number, column: number) => cells.find((cell) => cell.row === row && cell.column === column)!;
      expect([at(3, 2).value, at(15, 2).formula]).toEqual([73.031, expect.stringMatching(/^HATCH\.TAPER\([^;]*\)$/)]);
    } finally {
      await page.close();
    }
  }, 60_000);
});
