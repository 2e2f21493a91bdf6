/**
 * What `src/pane/style/colours.css` holds: the pane's few colours as CSS variables, taken from Fluent's tokens
 * so that the pane looks at home beside Excel without loading a component library. A generated file,
 * because the tokens' modules are far larger than the two dozen colours in use.
 */
import { join } from "node:path";
import { webDarkTheme, webLightTheme } from "@fluentui/tokens";
import { root } from "./paths.ts";

const FILE = join(root, "src", "pane", "style", "colours.css");

type Token = keyof typeof webLightTheme;
type Tokens = Readonly<Record<string, string | number>>;

/** Our names for what a colour is for, and the token that has it. */
const COLOURS: Readonly<Record<string, Token>> = {
  surface: "colorNeutralBackground1",
  raised: "colorNeutralBackground2",
  hover: "colorNeutralBackground1Hover",
  pressed: "colorNeutralBackground1Pressed",
  text: "colorNeutralForeground1",
  quiet: "colorNeutralForeground2",
  line: "colorNeutralStroke2",
  edge: "colorNeutralStrokeAccessible",
  accent: "colorBrandBackground",
  "accent-hover": "colorBrandBackgroundHover",
  "accent-pressed": "colorBrandBackgroundPressed",
  "on-accent": "colorNeutralForegroundOnBrand",
  bar: "colorCompoundBrandStroke",
  link: "colorBrandForeground2",
  chosen: "colorBrandBackground2",
  focus: "colorStrokeFocus2",
  "outside-fill": "colorStatusDangerBackground2",
  "outside-ink": "colorStatusDangerForeground2",
  "doubt-fill": "colorPaletteGoldBackground2",
  "doubt-ink": "colorPaletteGoldForeground2",
  "near-fill": "colorPaletteBlueBackground2",
  "near-ink": "colorPaletteBlueForeground2",
  "fault-fill": "colorPaletteNavyBackground2",
  "fault-ink": "colorPaletteNavyForeground2",
};

/** The four themes that Office offers: two light, two dark, which differ in their surfaces alone. */
const THEMES: Readonly<Record<string, { tokens: Tokens; scheme: "light" | "dark"; surfaces: Readonly<Record<string, Token>> }>> = {
  white: { tokens: webLightTheme, scheme: "light", surfaces: {} },
  colorful: {
    tokens: webLightTheme,
    scheme: "light",
    surfaces: { surface: "colorNeutralBackground3", raised: "colorNeutralBackground1", hover: "colorNeutralBackground5" },
  },
  "dark-gray": { tokens: webDarkTheme, scheme: "dark", surfaces: { hover: "colorNeutralBackground1Selected" } },
  black: {
    tokens: webDarkTheme,
    scheme: "dark",
    surfaces: { surface: "colorNeutralBackground3", raised: "colorNeutralBackground2", hover: "colorNeutralBackground1" },
  },
};

/** The colours of one theme by our names. */
export function coloursOf(theme: string): Record<string, string> {
  const { tokens, surfaces } = THEMES[theme]!;
  return Object.fromEntries(Object.entries({ ...COLOURS, ...surfaces }).map(([name, token]) => [name, String(tokens[token])]));
}

const block = (selector: string, theme: string, indent = "") =>
  [
    `${indent}${selector} {`,
    `${indent}  color-scheme: ${THEMES[theme]!.scheme};`,
    ...Object.entries(coloursOf(theme)).map(([name, colour]) => `${indent}  --${name}: ${colour};`),
    `${indent}}`,
  ].join("\n");

/** Light and dark by the system's wish, or the theme that the host hands in. */
function coloursCss(): string {
  return `${[
    "/* Made by `npm run generate` from @fluentui/tokens. */",
    block(":root", "white"),
    `@media (prefers-color-scheme: dark) {\n${block(":root", "black", "  ")}\n}`,
    ...Object.keys(THEMES).map((theme) => block(`:root[data-theme="${theme}"]`, theme)),
  ].join("\n\n")}\n`;
}

/** For `npm run generate`. */
export const coloursFile = (): [path: string, text: string] => [FILE, coloursCss()];
