import { readFileSync } from "node:fs";
import { THEMES } from "../../src/pane/mount.tsx";
import { coloursFile, coloursOf } from "../../src/tools/pane-colours.ts";
import { MARK_FILL } from "../../src/workbook/port.ts";

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

/**
 * How dichromats see a colour: Viénot, Brettel, Mollon, Digital video colourmaps for checking the legibility of displays by dichromats,
 * Color Research & Application 24 (1999) 243–252: linear RGB to cone responses, of which the missing one follows from the others.
 * Matrix and coefficients from memory.
 */
const CONES = [
  [17.8824, 43.5161, 4.11935],
  [3.45565, 27.1554, 3.86714],
  [0.0299566, 0.184309, 1.46709],
];
const BACK = [
  [0.0809444479, -0.130504409, 0.116721066],
  [-0.0102485335, 0.0540193266, -0.113614708],
  [-0.000365296938, -0.00412161469, 0.693511405],
];
const EYES: Readonly<Record<string, number[][]>> = {
  "all three kinds of cones": [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  "no cones for red (protanopia)": [
    [0, 2.02344, -2.52581],
    [0, 1, 0],
    [0, 0, 1],
  ],
  "no cones for green (deuteranopia)": [
    [1, 0, 0],
    [0.494207, 0, 1.24827],
    [0, 0, 1],
  ],
};

const times = (matrix: number[][], vector: number[]) => matrix.map((row) => row.reduce((sum, part, at) => sum + part * vector[at]!, 0));

/** CIE 1976 L*a*b* of sRGB under D65, as seen with those eyes: IEC 61966-2-1 and CIE 15. */
function lab(colour: string, eyes: number[][]): number[] {
  const linear = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  const seen = times(BACK, times(eyes, times(CONES, linear))).map((part) => Math.min(1, Math.max(0, part)));
  const [x, y, z] = times(
    [
      [0.4124, 0.3576, 0.1805],
      [0.2126, 0.7152, 0.0722],
      [0.0193, 0.1192, 0.9505],
    ],
    seen,
  ).map((part, at) => {
    const share = part / [0.9505, 1, 1.089][at]!;
    return share > 216 / 24389 ? Math.cbrt(share) : ((24389 / 27) * share + 16) / 116;
  });
  return [116 * y! - 16, 500 * (x! - y!), 200 * (y! - z!)];
}

const difference = (one: string, other: string, eyes: number[][]): number => {
  const [a, b] = [lab(one, eyes), lab(other, eyes)];
  return Math.hypot(...a.map((part, at) => part - b[at]!));
};

/** About 2.3 is just noticeable (Mahy and others 1994, from memory); patches that are not side by side need several times that. */
const TOLD_APART = 10;

describe.each(Object.entries(EYES))("to eyes with %s", (_, eyes) => {
  const fills = { ...Object.fromEntries(THEMES.map((theme) => [theme, fillsOf(theme)])), "marked cells": Object.values(MARK_FILL) };

  test.each(Object.entries(fills))("the four tones differ: %s", (_place, colours) => {
    for (const [at, one] of colours.entries())
      for (const other of colours.slice(0, at)) expect([one, other, difference(one, other, eyes) >= TOLD_APART]).toEqual([one, other, true]);
  });
});

function fillsOf(theme: string): string[] {
  const colours = coloursOf(theme);
  return ["outside", "doubt", "near", "fault"].map((tone) => colours[`${tone}-fill`]!);
}

test("letters in a marked cell can be read", () => {
  for (const fill of Object.values(MARK_FILL)) expect(contrast("#000000", fill)).toBeGreaterThanOrEqual(7);
});

test("the file of colours is what the tokens make", () => {
  const [path, text] = coloursFile();
  expect(readFileSync(path, "utf8")).toBe(text);
});
