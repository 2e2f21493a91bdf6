import { readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { withSingleRules } from "../../src/bench/colour-rules.ts";
import { crosshatch, folderOf } from "../cli/run.ts";
import { atStand, type BenchPage } from "./stand.ts";

const at = atStand("one page");

interface Rule {
  sheet: number;
  area: string;
  type: string;
  operator: string;
  formulas: string[];
  fill: string;
}

const unescaped = (text: string): string => text.replaceAll("&quot;", '"').replaceAll("&gt;", ">").replaceAll("&lt;", "<").replaceAll("&amp;", "&");

/** The colour rules of a file, the most important first, each with the fill that it gives. */
function rulesOf(bytes: Uint8Array): Rule[] {
  const parts = unzipSync(bytes);
  const fills = [...strFromU8(parts["xl/styles.xml"]!).matchAll(/<dxf>([\s\S]*?)<\/dxf>/g)].map(
    ([, dxf]) => /rgb="(?:FF)?(\w{6})"/i.exec(/<fill>[\s\S]*<\/fill>/.exec(dxf!)?.[0] ?? "")?.[1] ?? "",
  );
  const sheets = Object.keys(parts).filter((name) => /^xl\/worksheets\/sheet\d+\.xml$/.test(name));
  const number = (name: string) => Number(/\d+/.exec(name)![0]);
  return sheets
    .sort((a, b) => number(a) - number(b))
    .flatMap((name, sheet) => {
      const found = [...strFromU8(parts[name]!).matchAll(/<conditionalFormatting\b[^>]*sqref="([^"]*)"[^>]*>([\s\S]*?)<\/conditionalFormatting>/g)].flatMap(
        ([, area, inside]) =>
          [...inside!.matchAll(/<cfRule\b([^>]*)>([\s\S]*?)<\/cfRule>/g)].map(([, attributes, content]) => {
            const attribute = (key: string) => new RegExp(`\\b${key}="([^"]*)"`).exec(attributes!)?.[1] ?? "";
            const formulas = [...content!.matchAll(/<formula>([^<]*)<\/formula>/g)].map(([, text]) => unescaped(text!));
            return {
              priority: Number(attribute("priority")),
              rule: { sheet, area: area!, type: attribute("type"), operator: attribute("operator"), formulas, fill: fills[Number(attribute("dxfId"))]! },
            };
          }),
      );
      return found.sort((a, b) => a.priority - b.priority).map(({ rule }) => rule);
    });
}

async function throughTheBench(page: BenchPage, name: string, bytes: Uint8Array): Promise<Uint8Array> {
  await page.give(name, bytes);
  await page.page.locator("#book", { hasText: name }).waitFor();
  return (await page.saved()).bytes;
}

let made: Uint8Array;

beforeAll(async () => {
  const out = join(folderOf({}), "new.xlsx");
  expect((await crosshatch(["new", out, "--cylinders", "3"])).code).toBe(0);
  made = new Uint8Array(readFileSync(out));
});

test("all colours of a build sheet of ours are there after opening and saving, each for its word", async () => {
  const before = rulesOf(made);
  expect(before.length).toBeGreaterThan(20);
  const once = await throughTheBench(at.page, "colours.xlsx", made);
  expect(rulesOf(once)).toEqual(before);
  expect(rulesOf(await throughTheBench(at.page, "again.xlsx", once))).toEqual(before);
}, 120_000);

const RULES = [
  '<cfRule type="cellIs" dxfId="0" priority="4" operator="between"><formula>1</formula><formula>2</formula></cfRule>',
  '<cfRule type="cellIs" dxfId="1" priority="2" operator="equal"><formula>"a ""b"" &amp; c"</formula></cfRule>',
  '<cfRule type="expression" dxfId="0" priority="3"><formula>$B1&gt;AVERAGE($B$1:$B$5)</formula></cfRule>',
  '<cfRule type="cellIs" dxfId="1" priority="1" operator="greaterThan"><formula>$C$1*2</formula></cfRule>',
];
/** A build sheet of ours whose first colour rules are others. */
function otherBook(rules: readonly string[]): Uint8Array {
  const parts = unzipSync(made);
  const path = "xl/worksheets/sheet3.xml";
  const sheet = strFromU8(parts[path]!).replace(
    /(<conditionalFormatting\b[^>]*>)[\s\S]*?(?=<\/conditionalFormatting>)/,
    (_, start: string) => start + rules.join(""),
  );
  return zipSync({ ...parts, [path]: strToU8(sheet) });
}

test("several rules of another program's file keep their order, their formulas and their texts", async () => {
  const book = otherBook(RULES);
  const saved = rulesOf(await throughTheBench(at.page, "other.xlsx", book)).filter(({ sheet }) => sheet === 2);
  expect(saved.map(({ type, operator, formulas }) => [type, operator, ...formulas])).toEqual([
    ["cellIs", "greaterThan", "$C$1*2"],
    ["cellIs", "equal", '"a ""b"" & c"'],
    ["expression", "", "$B1>AVERAGE($B$1:$B$5)"],
    ["cellIs", "between", "1", "2"],
  ]);
  expect(saved.map(({ fill }) => fill)).toEqual(
    rulesOf(book)
      .filter(({ sheet }) => sheet === 2)
      .map(({ fill }) => fill),
  );
  expect(await at.page.message()).toBe("");
}, 60_000);

test("kinds of rules that the bench does not have are said", async () => {
  await at.page.give("average.xlsx", otherBook(['<cfRule type="aboveAverage" dxfId="0" priority="1"/>']));
  await at.page.page.locator("#book", { hasText: "average.xlsx" }).waitFor();
  expect(await at.page.message()).toBe(
    "average.xlsx also holds colour rules about averages, errors or periods, which the bench neither shows nor saves: keep the file as it is and save under another name.",
  );
}, 60_000);

test("rules of newer programs, and sheets without any, stay as they are written", () => {
  for (const xml of ["<worksheet><sheetData/></worksheet>", '<x14:conditionalFormatting><x14:cfRule type="iconSet"/></x14:conditionalFormatting>'])
    expect(withSingleRules(xml)).toBe(xml);
});
