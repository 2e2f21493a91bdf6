import { encodingOf } from "./edit.ts";
import { scan } from "./scan.ts";

/**
 * A colour of a workbook's styles as red, green and blue (ECMA-376 part 1, 18.8.3 and 18.8.19): given as
 * such, by its place in the theme with a tint, or in the palette of old.
 */
export type Colour = Readonly<Record<string, string>>;

/** The theme's places 0 to 11, in the order in which styles count them (18.8.3, and the light before the dark as programs do). */
const THEME = ["lt1", "dk1", "lt2", "dk2", "accent1", "accent2", "accent3", "accent4", "accent5", "accent6", "hlink", "folHlink"];
const DRAWING = new Set(["http://schemas.openxmlformats.org/drawingml/2006/main", "http://purl.oclc.org/ooxml/drawingml/main"]);

/** The palette of 18.8.27, from place 8 on; 0 to 7 are the same as 8 to 15. */
const PALETTE = (
  "000000 FFFFFF FF0000 00FF00 0000FF FFFF00 FF00FF 00FFFF 800000 008000 000080 808000 800080 008080 C0C0C0 808080 " +
  "9999FF 993366 FFFFCC CCFFFF 660066 FF8080 0066CC CCCCFF 000080 FF00FF FFFF00 00FFFF 800080 800000 008080 0000FF " +
  "00CCFF CCFFFF CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99 3366FF 33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696 " +
  "003366 339966 003300 333300 993300 993366 333399 333333"
).split(" ");

/** `#RRGGBB`, or `undefined` where the colour is left to the machine. `theme`: the theme's colours by name. */
export function resolvedColour({ rgb, theme, indexed, tint }: Colour, themeColours: ReadonlyMap<string, string>): string | undefined {
  const plain = rgb ? rgb.slice(-6) : theme ? themeColours.get(THEME[Number(theme)] ?? "") : indexed ? paletteColour(Number(indexed)) : undefined;
  if (!plain || !/^[\da-f]{6}$/i.test(plain)) return undefined;
  return `#${tinted(plain, Number(tint ?? 0)).toUpperCase()}`;
}

const paletteColour = (place: number): string | undefined => PALETTE[place < 8 ? place : place - 8];

/** The colours of a theme's part by their names. */
export function themeColours(part: Uint8Array, name: string): Map<string, string> {
  const found = new Map<string, string>();
  scan(
    encodingOf(part).utf8,
    name,
    {
      open({ name: element, attributes: { val, lastClr } }, inside) {
        const place = inside.at(-1) ?? "";
        if (inside.at(-2) !== "clrScheme" || found.has(place)) return;
        const colour = element === "sysClr" ? lastClr : val;
        if (colour) found.set(place, colour);
      },
    },
    (uri) => DRAWING.has(uri),
  );
  return found;
}

/** Lighter or darker by its lightness (18.8.19). Programs round along the way, and come to colours that differ by a step or two of 255. */
function tinted(rgb: string, tint: number): string {
  if (!(tint >= -1 && tint <= 1) || tint === 0) return rgb;
  const parts = [0, 2, 4].map((at) => Number.parseInt(rgb.slice(at, at + 2), 16) / 255);
  const lightness = (Math.max(...parts) + Math.min(...parts)) / 2;
  const wanted = tint < 0 ? lightness * (1 + tint) : lightness * (1 - tint) + tint;
  // Hue and saturation stay: a part lies as far from the lightness as that lightness leaves room for.
  const room = (at: number): number => 1 - Math.abs(2 * at - 1);
  const stretch = room(lightness) === 0 ? 0 : room(wanted) / room(lightness);
  return parts.map((part) => hex(wanted + (part - lightness) * stretch)).join("");
}

const hex = (part: number): string =>
  Math.round(part * 255)
    .toString(16)
    .padStart(2, "0");
