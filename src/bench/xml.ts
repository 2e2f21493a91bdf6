import { xmlText } from "../sheet/xlsx/xml-text.ts";

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that XML 1.0 cannot hold, besides the surrogates and the two last
const UNSPEAKABLE = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g;
const LIKE_AN_ESCAPE = /_(?=x[\da-f]{4}_)/gi;

/**
 * Text of a cell: workbook files write a character that XML cannot hold as `_x0007_`, and so an
 * underscore before something that looks like that as `_x005F_` (ECMA-376 part 1, 22.4.2.4).
 */
export const cellText = (text: string): string =>
  xmlText(
    text.replace(LIKE_AN_ESCAPE, "_x005F_").replace(UNSPEAKABLE, (character) => `_x${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`),
  );
