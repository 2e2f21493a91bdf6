import { readFileSync } from "node:fs";
import { THEMES } from "../../src/pane/theme.ts";
import { coloursFile, coloursOf } from "../../src/tools/pane-colours.ts";

/** Relative luminance and contrast ratio: WCAG 2.2, definitions of those terms. */
function luminance(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light! + 0.05) / (dark! + 0.05);
}

test("black on white is 21 to 1, as WCAG 2.2 has it", () => {
  expect(contrast("#000000", "#ffffff")).toBe(21);
});

/** Letters on what they stand on: WCAG 2.2, 1.4.3 asks for 4.5. */
const LETTERS: [ink: string, ground: string][] = [
  ...["surface", "raised", "hover", "pressed", "chosen"].flatMap((ground): [string, string][] => [
    ["text", ground],
    ["quiet", ground],
  ]),
  ...["surface", "hover", "chosen"].map((ground): [string, string] => ["link", ground]),
  ...["accent", "accent-hover", "accent-pressed"].map((ground): [string, string] => ["on-accent", ground]),
  ...["outside", "doubt", "near", "fault"].map((tone): [string, string] => [`${tone}-ink`, `${tone}-fill`]),
];

/** Parts of controls on what they stand on: WCAG 2.2, 1.4.11 asks for 3. */
const PARTS: [part: string, ground: string][] = [
  ["edge", "surface"],
  ["edge", "raised"],
  ["bar", "surface"],
  ["focus", "surface"],
  ["focus", "chosen"],
];

describe.each(THEMES)("theme %s", (theme) => {
  const colours = coloursOf(theme);

  test.each(LETTERS)("letters in %s can be read on %s", (ink, ground) => {
    expect(contrast(colours[ink]!, colours[ground]!)).toBeGreaterThanOrEqual(4.5);
  });

  test.each(PARTS)("%s can be seen on %s", (part, ground) => {
    expect(contrast(colours[part]!, colours[ground]!)).toBeGreaterThanOrEqual(3);
  });
});

test("the file of colours is what the tokens make", () => {
  const [path, text] = coloursFile();
  expect(readFileSync(path, "utf8")).toBe(text);
});
