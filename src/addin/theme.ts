import type { Theme } from "../pane/mount.tsx";

const COLOUR = /^#?([\da-f]{2})([\da-f]{2})([\da-f]{2})/i;
/** Lightness of a theme's ground, of 255: black themes are about 38, dark grey ones about 100, light ones above 230. */
const BLACK = 64;
const DARK = 140;
const WHITE = 254;

/**
 * The theme that goes with the ground Office gives its panes. The ground decides rather than the
 * theme's number, because hosts count their themes differently and older ones give colours only.
 */
export function themeFor(ground: string | undefined): Theme | undefined {
  const parts = COLOUR.exec(ground ?? "");
  if (!parts) return undefined;
  const lightness = (Number.parseInt(parts[1]!, 16) + Number.parseInt(parts[2]!, 16) + Number.parseInt(parts[3]!, 16)) / 3;
  if (lightness < BLACK) return "black";
  if (lightness < DARK) return "dark-gray";
  return lightness >= WHITE ? "white" : "colorful";
}
