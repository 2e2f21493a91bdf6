import { readChoices } from "../../src/setup/choices.ts";
import { SHEET_WORDS } from "../../src/setup/sheets.ts";

const sentences = (given: unknown): string[] => {
  const read = readChoices(given);
  return "sentences" in read ? read.sentences : [];
};

test("what is left out is completed: three heights, two axes, two valves, millimetres, one reading", () => {
  expect(readChoices({ cylinders: 3 })).toEqual({ choices: { cylinders: 3, heights: 3, axes: 2, valves: 2, unit: "mm", secondReadings: false, without: [] } });
});

test("counts may be typed as text, as forms and command lines hand them over", () => {
  expect(readChoices({ cylinders: "16", heights: "5", axes: "4", valves: "5", unit: "in", secondReadings: true })).toEqual({
    choices: { cylinders: 16, heights: 5, axes: 4, valves: 5, unit: "in", secondReadings: true, without: [] },
  });
});

test("the least and the most of each count are possible, one beyond is not", () => {
  for (const [name, least, most] of [
    ["cylinders", 1, 16],
    ["heights", 2, 5],
    ["axes", 2, 4],
    ["valves", 2, 5],
  ] as const) {
    for (const count of [least, most]) expect(sentences({ cylinders: 3, [name]: count })).toEqual([]);
    for (const count of [least - 1, most + 1]) expect(sentences({ cylinders: 3, [name]: count })).toHaveLength(1);
  }
});

test("each choice that cannot be is named in a sentence of its own", () => {
  expect(sentences({ cylinders: 17, heights: "two", axes: 2.5, unit: "cm" })).toEqual([
    "cylinders 17 is not possible: it must be a whole number from 1 to 16",
    'heights "two" is not possible: it must be a whole number from 2 to 5',
    "axes 2.5 is not possible: it must be a whole number from 2 to 4",
    'unit "cm" is not possible: it must be mm or in',
  ]);
  expect(sentences({})).toEqual(["cylinders is not given: it must be a whole number from 1 to 16"]);
  expect(sentences({ cylinders: 3, secondReadings: "yes" })).toEqual(['second readings "yes" is not possible: it must be true or false']);
  expect(sentences({ cylinders: 3, pistons: 3 })).toEqual(["pistons is no choice of a build sheet"]);
  expect(sentences(null)).toEqual(["the choices of a build sheet are wanted"]);
});

test("sheets are left out by their words or their names, in any case, between commas or as a list", () => {
  for (const without of ["run-in, Parts list", "RUN-IN LOG,parts", ["parts", "run-in"]]) {
    const read = readChoices({ cylinders: 3, without });
    expect(new Set("choices" in read ? read.choices.without : [])).toEqual(new Set(["run-in", "parts"]));
  }
});

test("a sheet that is not known is named with those that can be left out, and one sheet with readings stays", () => {
  expect(sentences({ cylinders: 3, without: "bores,camera" })).toEqual([
    expect.stringMatching(/^without "camera" is not possible: it takes any of bores, pistons, rings, crankshaft, rods, /),
  ]);
  expect(sentences({ cylinders: 3, without: SHEET_WORDS })).toEqual([
    expect.stringMatching(/^without leaves no sheet for readings: it must keep at least one of bores, /),
  ]);
});
