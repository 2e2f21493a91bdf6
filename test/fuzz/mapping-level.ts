import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { isUnread, readMapping } from "../../src/layout/mapping.ts";
import { LAYOUT_KEY } from "../../src/workbook/storage.ts";
import { edge, NUMBERS } from "./edge-values.ts";
import { expectCounts, expectSame, expectSentence } from "./oracles.ts";
import { Defect, type FuzzOutcome, type Level } from "./outcome.ts";
import type { FuzzRandom } from "./random.ts";
import { BOOKS, untouched } from "./samples.ts";

const LAID = BOOKS.filter(({ book }) => book.storedTexts.has(LAYOUT_KEY));

/** The layout that a workbook keeps, with parts of its JSON changed. */
export const mappingLevel: Level = {
  name: "kept layouts",
  weight: 8,
  async run(random): Promise<FuzzOutcome> {
    const sample = random.pick(LAID);
    const kept = sample.book.storedTexts.get(LAYOUT_KEY)!;
    const { snapshot, result } = await untouched(sample);
    const json = random.chance(0.2) ? damagedText(kept, random) : changedJson(kept, random);
    const mapping = readMapping(json);
    if (isUnread(mapping)) {
      expectSentence(mapping.unread, json);
      return "refused";
    }
    const found = checkWorkbook(snapshot, mapping);
    expectCounts(found);
    for (const { sentence } of found.findings) expectSentence(sentence, json);
    if (JSON.stringify(mapping) === JSON.stringify(readMapping(kept))) expectSame("the same layout", found, result);
    if (Object.keys(Object.prototype).length > 0) throw new Defect("the layout reached the prototype of all objects");
    return "result";
  },
};

function damagedText(text: string, random: FuzzRandom): string {
  const at = random.below(text.length);
  return text.slice(0, at) + random.pick(["", '"', "{", "[", ",", edge(random).slice(0, 50)]) + text.slice(at + random.below(10));
}

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

function changedJson(text: string, random: FuzzRandom): string {
  let json = JSON.parse(text) as Json;
  for (let n = random.below(4); n > 0; n--) json = changed(json, random);
  return JSON.stringify(json).replaceAll('"proto"', '"__proto__"');
}

/** One place somewhere inside is changed. */
function changed(json: Json, random: FuzzRandom): Json {
  if (typeof json !== "object" || json === null || random.chance(0.1)) return replacement(json, random);
  if (Array.isArray(json)) {
    if (json.length === 0) return random.chance(0.5) ? [replacement(0, random)] : json;
    const i = random.below(json.length);
    const how = random.below(6);
    if (how === 0) return json.toSpliced(i, 1);
    if (how === 1) return [...json, json[i]!];
    return json.with(i, changed(json[i]!, random));
  }
  const keys = Object.keys(json);
  if (keys.length === 0) return { proto: 1 };
  const key = random.pick(keys);
  const how = random.below(10);
  if (how === 0) return Object.fromEntries(Object.entries(json).filter(([one]) => one !== key));
  if (how === 1) return { ...json, [random.pick(["proto", "constructor", edge(random).slice(0, 30)])]: json[key]! };
  if (how === 2) return Object.fromEntries(Object.entries(json).reverse());
  return { ...json, [key]: changed(json[key]!, random) };
}

function replacement(json: Json, random: FuzzRandom): Json {
  if (typeof json === "number" && random.chance(0.7)) return random.chance(0.5) ? random.pick(NUMBERS) : json + random.pick([-1, 1, 2, 10, 100]);
  if (typeof json === "boolean" && random.chance(0.7)) return !json;
  return random.pick<Json>([null, true, 0, [], {}, [json], edge(random), random.pick(NUMBERS)]);
}
