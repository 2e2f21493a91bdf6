/** The themes that an Office host can ask for; without one the pane follows the system's light or dark. */
export const THEMES = ["white", "colorful", "dark-gray", "black"] as const;
export type Theme = (typeof THEMES)[number];

/** Themes are blocks of `style/colours.css`; which one holds is an attribute of the page. */
export function wearTheme(page: HTMLElement, theme: Theme | undefined): void {
  if (theme) page.dataset.theme = theme;
  else delete page.dataset.theme;
}
