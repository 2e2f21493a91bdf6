/** Where the engine's templates leave something to be desired, by template and element, and what is put there. */
const MENDED: readonly [template: string, element: string, attributes: Readonly<Record<string, string>>][] = [
  // Fields without a name for those who do not see them.
  ["o-spreadsheet-NumberEditor", "input", { "t-att-aria-label": "props.title" }],
  ["o-spreadsheet-NamedRangeSelector", "TextInput", { placeholder: "'Cell or name'" }],
  ["o-spreadsheet-GridAddRowsFooter", "input", { "aria-label": "How many rows to add" }],
  // A list that scrolls, and so must be reached by keys.
  ["o-spreadsheet-BottomBar", "div.o-sheet-list", { tabindex: "0" }],
  // Pictures say the same in words.
  ["o-spreadsheet-ImageFigure", "img", { "t-att-alt": "env.model.getters.getImage(figureId).description || ''" }],
  // The field of a cell is reached in its turn, not before everything else on the page.
  ["o-spreadsheet-Composer", "div.o-composer", { tabindex: "0", role: "textbox", "aria-label": "Content of the cell" }],
];

/** Asks a server elsewhere for the icon of every site that a cell links to. */
const UNWANTED: readonly [template: string, element: string][] = [["o-spreadsheet-LinkDisplay", "img"]];

/** The engine's templates, mended. Templates of another version of the engine that lack such a place are taken as they are. */
export function mendTemplates(xml: string): XMLDocument {
  const templates = new DOMParser().parseFromString(xml, "application/xml");
  const find = (template: string, element: string) => templates.querySelectorAll(`[t-name="${template}"] ${element}`);
  for (const [template, element, attributes] of MENDED) {
    for (const found of find(template, element)) for (const [name, value] of Object.entries(attributes)) found.setAttribute(name, value);
  }
  for (const [template, element] of UNWANTED) for (const found of find(template, element)) found.remove();
  return templates;
}
