import { specs } from "../../src/functions/index.ts";
import { sources } from "./imports.ts";
import { namesByHand } from "./names-by-hand.ts";

const NAMES = new Set(specs.map(({ name }) => name));
const found = (text: string) => namesByHand("src/any.tsx", text, NAMES).map(({ text: words }) => words);

test("no list of functions is kept by hand: what there is to know of a function stands on its spec", () => {
  const files = [...sources()].filter(([file]) => !file.startsWith("src/functions/"));
  expect(files.length).toBeGreaterThan(250);
  expect(files.flatMap(([file, text]) => namesByHand(file, text, NAMES).map(({ line, text: words }) => `${file}:${line} ${words}`))).toEqual([]);
});

test.each([
  ['const JUDGING = new Set(["VERDICT", "EXPLAIN"]);', ['"VERDICT"', '"EXPLAIN"']],
  ['if (spec.name === "BOREWEAR") return;', ['"BOREWEAR"']],
  ['const COSTS = { "HATCH.PISTONMATCH": paired };', ['"HATCH.PISTONMATCH"']],
  ['const RANGES = { COMPRESSIONCHECK: "pressures", WETTEST: "dry" };', ["COMPRESSIONCHECK", "WETTEST"]],
  ['const SETTINGS = ["FINISHBORE.clearance"];', ['"FINISHBORE.clearance"']],
  ["const MEASURING = /^(?:TAPER|OUTOFROUND)$/;", ["/^(?:TAPER|OUTOFROUND)$/"]],
  ['const DRAWN = "TAPER, ROUNDNESS".split(", ");', ['"TAPER, ROUNDNESS"']],
  ["const view = <li>TAPER, OUTOFROUND and the like: the profile</li>;", ["TAPER, OUTOFROUND and the like: the profile"]],
  ["const DRAWN = `ROUNDNESS`;", ["`ROUNDNESS`"]],
])("%s names functions by hand", (text, names) => {
  expect(found(text)).toEqual(names);
});

test.each([
  '/** As TAPER does. */ const VERSION = "0.1.0";',
  'const HELP = "a function, such as TAPER";',
  "const formula = `=HATCH.TAPER({block})`;",
  'const formula = "=HATCH.TAPER({73.01,73.02;73.00,73.01})";',
  "const HEADINGS = /^(?:verdict|margin)$/i;",
  'const NONE = "";',
])("%s names none", (text) => {
  expect(found(text)).toEqual([]);
});
