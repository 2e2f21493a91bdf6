import { CHARACTERISTICS } from "../../src/vocabulary/characteristics.ts";
import { FIELD_WORDS } from "../../src/vocabulary/heading-words.ts";
import { type ParsedHeading, parseHeading, positionText } from "../../src/vocabulary/parse-heading.ts";
import { HEADING_FIELDS, type HeadingField } from "../../src/vocabulary/phrases.ts";
import { POSITION_WORDS } from "../../src/vocabulary/place-words.ts";

/** What a heading says, without what it does not. */
function said(text: string | number, tells: readonly HeadingField[] = HEADING_FIELDS): Record<string, unknown> {
  const { places, rest, ...others }: ParsedHeading = parseHeading(text, tells);
  return { ...others, ...(places.length ? { place: positionText(places) } : {}), ...(rest.length ? { rest } : {}) };
}

// Headings as they stand on shop-floor sheets and in general measuring forms; what they mean is common practice.
test.each([
  ["Top thrust", { place: "top thrust" }],
  ["THRUST (top)", { place: "top thrust" }],
  ["Mid. pin", { place: "middle pin" }],
  ["Btm T", { place: "bottom", rest: ["T"] }],
  ["Upper middle, 45°", { place: "upper middle 45°" }],
  ["Cyl. no. 3", { cylinder: "3" }],
  ["Cylinder A", { cylinder: "A" }],
  ["cyl1", { cylinder: "1" }],
  ["Bore 2 top (mm)", { characteristic: "bore", cylinder: "2", place: "top", unit: "mm" }],
  ["Cylinder bore", { characteristic: "bore" }],
  ["Engine A: bores, in mm", { engine: "A", characteristic: "bore", unit: "mm", rest: ["in"] }],
  ["Port engine", { engine: "port", names: "engine" }],
  ["STBD", { engine: "starboard" }],
  ["Piston-to-wall clearance", { characteristic: "piston clearance" }],
  ["PTW", { characteristic: "piston clearance" }],
  ["Ring end gap, top", { characteristic: "ring end gap", place: "top" }],
  ["2nd ring gap", { characteristic: "ring end gap", place: "second" }],
  ["Valve lash, intake", { characteristic: "valve clearance", place: "inlet" }],
  ["EX2", { place: "exhaust 2" }],
  ["Ovality", { characteristic: "out-of-round" }],
  ["Comp. (bar)", { characteristic: "compression pressure", unit: "bar" }],
  ["Skirt Ø", { characteristic: "piston skirt" }],
  ["Gudgeon pin", { characteristic: "piston pin" }],
  ["Std bore", { characteristic: "standard bore" }],
  ["Lower limit (in)", { role: "lower", unit: "in" }],
  ["Max", { role: "upper" }],
  ["Wear limit", { role: "upper", isOneSided: true }],
  ["Bore wear", { characteristic: "bore wear" }],
  ["Average", { isNoReading: true }],
  ["Hours run", { isNoReading: true, rest: ["Hours", "run"] }],
  ["Measured on", { isNoReading: true, rest: ["Measured", "on"] }],
  ["Rod side clearance", { characteristic: "rod side clearance" }],
  ["Rotor side clearance", { rest: ["Rotor", "side", "clearance"] }],
  ["Spark plug gap", { rest: ["Spark", "plug", "gap"] }],
  ["Bore, pump side", { characteristic: "bore", rest: ["pump", "side"] }],
  ["Crankpin taper", { rest: ["taper"] }],
  ["Flywheel face run-out", { rest: ["Flywheel", "face", "run", "out"] }],
  ["Run-out, TIR", { characteristic: "run-out", rest: ["TIR"] }],
  ["Cam lobe lift, exhaust (in)", { characteristic: "lobe lift", place: "exhaust", unit: "in" }],
  ["Valve spring load, inlet (N)", { characteristic: "spring force", place: "inlet", unit: "N" }],
  ["Rod weight (g)", { characteristic: "rod mass", unit: "g" }],
  ["Valve seat runout", { characteristic: "seat run-out" }],
  ["Guide taper, EX", { characteristic: "guide taper", place: "exhaust" }],
  ["Bores, taper", { characteristic: "bore", rest: ["taper"] }],
  ["Piston ring end gap", { characteristic: "ring end gap" }],
  ["Leak-down held (bar)", { characteristic: "pressure held", unit: "bar" }],
  ["Chamber cm3", { characteristic: "chamber volume", unit: "cc" }],
  ["Leak-down%", { characteristic: "leak-down", unit: "%" }],
  ["ENGINE BUILD SHEET", { names: "engine", rest: ["BUILD", "SHEET"] }],
  ["Engine data", { names: "engine", rest: ["data"] }],
  ["Engine Old Mary build sheet", { engine: "Old Mary", rest: ["build", "sheet"] }],
  ["Engine type", { isNoReading: true, rest: ["Engine", "type"] }],
  ["Cylinder", { names: "cylinder" }],
  ["What", { names: "characteristic" }],
  ["Weather", { rest: ["Weather"] }],
])("%s is understood", (text, wanted) => {
  expect(said(text)).toEqual(wanted);
});

test("upper and lower are limits where a line tells limits, and heights where it tells heights", () => {
  expect(said("Upper", ["role"])).toEqual({ role: "upper" });
  expect(said("Upper", ["height"])).toEqual({ place: "upper" });
  expect(said("Lower thrust", ["height", "axis", "position"])).toEqual({ place: "lower thrust" });
});

test("a line that tells one thing takes any words for its name", () => {
  expect(said("Old Mary", ["engine"])).toEqual({ engine: "Old Mary" });
  expect(said("front", ["cylinder"])).toEqual({ cylinder: "front" });
  expect(said("Camshaft lobe", ["characteristic", "height", "axis", "position"])).toEqual({ characteristic: "camshaft lobe" });
  expect(said("90 degrees to pin", ["position"])).toEqual({ place: "90 degrees to pin" });
  expect(said("T", ["axis"])).toEqual({ place: "thrust" });
  expect(said("25 mm down", ["height"])).toEqual({ place: "25 mm down" });
});

test("a bare number is what its line tells", () => {
  expect(said(2, ["cylinder"])).toEqual({ cylinder: "2" });
  expect(said(2, ["engine"])).toEqual({ engine: "2" });
  expect(said(25, ["height"])).toEqual({ place: "25" });
  expect(said(2, ["role"])).toEqual({});
});

test("no word stands for two characteristics or two places, and every name is its own first word", () => {
  for (const table of [CHARACTERISTICS, POSITION_WORDS]) {
    const owners = new Map<string, string>();
    for (const [name, { words }] of Object.entries(table)) {
      for (const word of [name, ...words]) {
        expect([word, owners.get(word) ?? name]).toEqual([word, name]);
        owners.set(word, name);
      }
    }
  }
  for (const [name, words] of Object.entries(FIELD_WORDS)) expect(words).not.toContain(name);
});

test("every word of every characteristic is read as it, whatever its capitals and hyphens", () => {
  for (const [name, { words }] of Object.entries(CHARACTERISTICS)) {
    for (const word of [name, ...words]) {
      expect([word, parseHeading(word, HEADING_FIELDS).characteristic]).toEqual([word, name]);
      expect([word, parseHeading(word.toUpperCase().replaceAll(" ", "-"), HEADING_FIELDS).characteristic]).toEqual([word, name]);
    }
  }
});
