import type { Model } from "@odoo/o-spreadsheet";
import type { Zip } from "../xlsx/zip.ts";
import type { EngineData } from "./open-cells.ts";
import type { ToName } from "./save-cells.ts";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const STYLES = "xl/styles.xml";
/** The elements of the styles in their order (ECMA-376 part 1, 18.8.39). */
const ORDER = ["numFmts", "fonts", "fills", "borders", "cellStyleXfs", "cellXfs", "cellStyles", "dxfs", "tableStyles", "colors", "extLst"];
/** Number formats of a file's own count from here (ECMA-376 part 1, 18.8.30). */
const FIRST_OWN_FORMAT = 164;
const CELL = /<c r="([A-Z]+\d+)"(?: s="(\d+)")?/g;

/** How the cells of a file look, as the file says it. */
export interface FileLooks {
  styles: string;
  theme: string | undefined;
  /** Tells this file's styles from those of another one, from which a cell may have been pasted. */
  token: string;
}

interface KeptStyle {
  kept?: string;
}

/**
 * The styles of a file, and their numbers written into those that the grid made of them: the grid knows neither names
 * of fonts nor indents, protection, patterns and many number formats. It carries what it does not know along with the
 * cell. Gives `undefined` where the file has no styles that can be taken over.
 */
export function looksOf(zip: Zip, data: EngineData | undefined): FileLooks | undefined {
  if (!data || !zip.names().includes(STYLES)) return undefined;
  const text = (path: string) => new TextDecoder().decode(zip.read(path));
  const styles = text(STYLES);
  if (parsed(styles).documentElement.namespaceURI !== MAIN) return undefined;
  const theme = zip.names().find((name) => /^xl\/theme\/theme\d*\.xml$/.test(name));
  const token = crypto.randomUUID();
  // The grid counts from 1, the file from 0.
  for (const [id, style] of Object.entries(data.styles as Record<string, KeptStyle>)) style.kept = `${token} ${Number(id) - 1}`;
  return { styles, theme: theme && text(theme), token };
}

const parsed = (xml: string): XMLDocument => new DOMParser().parseFromString(xml, "application/xml");

/** Gives cells that look as they did when their file was opened the styles of the file again, on saving. */
export class KeptLooks {
  readonly #file: FileLooks;
  /** How cells of each of the file's styles looked when it was opened. */
  readonly #opened = new Map<string, Set<string>>();

  constructor(model: Model, file: FileLooks) {
    this.#file = file;
    for (const sheetId of model.getters.getSheetIds())
      for (const { kept, look } of lookingCells(model, sheetId))
        if (kept !== undefined) this.#opened.set(kept, (this.#opened.get(kept) ?? new Set()).add(look));
  }

  /** In the parts of a saved workbook: the file's styles and theme, and beside them those that the grid has given to cells since. */
  restoreIn(parts: Map<string, string>, model: Model, toName: ToName): void {
    const styles = new Styles(this.#file.styles, parts.get(STYLES)!);
    model.getters.getSheetIds().forEach((sheetId, i) => {
      const path = `xl/worksheets/sheet${i}.xml`;
      const own = this.#unchanged(model, sheetId, toName);
      const restored = parts.get(path)!.replace(CELL, (_, name: string, grid = "0") => {
        const number = own.get(name) ?? styles.numberOf(Number(grid));
        return `<c r="${name}"${number ? ` s="${number}"` : ""}`;
      });
      parts.set(path, restored);
    });
    parts.set(STYLES, styles.xml());
    if (this.#file.theme !== undefined) addTheme(parts, this.#file.theme);
  }

  /** The file's own number of the style of each cell that looks as it did. */
  #unchanged(model: Model, sheetId: string, toName: ToName): Map<string, number> {
    const own = new Map<string, number>();
    for (const { col, row, kept, look } of lookingCells(model, sheetId)) {
      const [token, number] = kept?.split(" ") ?? [this.#file.token, 0];
      if (token === this.#file.token && (kept === undefined ? look === PLAIN : this.#opened.get(kept)?.has(look))) own.set(toName(col, row), Number(number));
    }
    return own;
  }
}

/** All that the grid knows of the looks of a cell, and the number of its style where it comes from a file. */
function* lookingCells({ getters }: Model, sheetId: string): Generator<{ col: number; row: number; kept: string | undefined; look: string }> {
  for (const { id } of Object.values(getters.getCells(sheetId))) {
    const position = getters.getCellPosition(id);
    const { style, format } = getters.getCell(position) ?? {};
    const { kept, ...known } = (style ?? {}) as KeptStyle;
    // What was set and taken back may stand in another order, or as nothing.
    const set = Object.entries(known).filter(([, value]) => value);
    yield { col: position.col, row: position.row, kept, look: JSON.stringify([set.sort(), format, getters.getCellBorder(position)]) };
  }
}

/** Of a cell that nobody has given a look: the grid shows it in one by what it holds, such as a link. */
const PLAIN = JSON.stringify([[], undefined, undefined]);

/** The styles of a file, to which those of the grid are added that its cells need. */
class Styles {
  readonly #own: XMLDocument;
  readonly #grid: XMLDocument;
  readonly #added = new Map<number, number>();

  constructor(own: string, grid: string) {
    this.#own = parsed(own);
    this.#grid = parsed(grid);
    // Fills by rules are the grid's, and so are their looks, to which nothing but the rules may point then.
    this.#list("dxfs").replaceChildren(...this.#gridList("dxfs").map((node) => this.#own.importNode(node, true)));
    this.#list("tableStyles").replaceChildren();
  }

  /** The number that a style of the grid has here; its first is the look of cells that have none of their own. */
  numberOf(grid: number): number {
    if (grid === 0) return 0;
    const known = this.#added.get(grid);
    if (known !== undefined) return known;
    const style = this.#own.importNode(this.#gridList("cellXfs")[grid]!, true) as Element;
    for (const [attribute, list] of [
      ["fontId", "fonts"],
      ["fillId", "fills"],
      ["borderId", "borders"],
    ] as const)
      style.setAttribute(attribute, String(this.#append(list, this.#gridList(list)[Number(style.getAttribute(attribute))]!)));
    style.setAttribute("numFmtId", String(this.#formatOf(Number(style.getAttribute("numFmtId")))));
    const number = this.#append("cellXfs", style);
    this.#added.set(grid, number);
    return number;
  }

  xml(): string {
    for (const list of this.#own.documentElement.children) if (list.hasAttribute("count")) list.setAttribute("count", String(list.children.length));
    return new XMLSerializer().serializeToString(this.#own);
  }

  #formatOf(id: number): number {
    if (id < FIRST_OWN_FORMAT) return id;
    const code = (formats: readonly Element[]) => formats.find((one) => Number(one.getAttribute("numFmtId")) === id)!.getAttribute("formatCode");
    const wanted = code(this.#gridList("numFmts"));
    const own = [...this.#list("numFmts").children];
    const same = own.find((one) => one.getAttribute("formatCode") === wanted);
    if (same) return Number(same.getAttribute("numFmtId"));
    const format = this.#own.createElementNS(MAIN, "numFmt");
    const free = own.reduce((most, one) => Math.max(most, Number(one.getAttribute("numFmtId")) + 1), FIRST_OWN_FORMAT);
    format.setAttribute("numFmtId", String(free));
    format.setAttribute("formatCode", wanted ?? "General");
    this.#append("numFmts", format);
    return free;
  }

  #append(list: string, node: Element): number {
    const into = this.#list(list);
    into.append(this.#own.importNode(node, true));
    return into.children.length - 1;
  }

  #gridList(name: string): Element[] {
    return [...(this.#grid.getElementsByTagNameNS(MAIN, name)[0]?.children ?? [])];
  }

  /** A list of the file's, which it is given in its place where it has none. */
  #list(name: string): Element {
    const root = this.#own.documentElement;
    const found = [...root.children].find(({ localName }) => localName === name);
    if (found) return found;
    const made = this.#own.createElementNS(MAIN, root.prefix ? `${root.prefix}:${name}` : name);
    made.setAttribute("count", "0");
    const after = ORDER.slice(ORDER.indexOf(name) + 1);
    root.insertBefore(made, [...root.children].find(({ localName }) => after.includes(localName)) ?? null);
    return made;
  }
}

const RELATION = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/theme";
const TYPE = "application/vnd.openxmlformats-officedocument.theme+xml";

/** The colours and fonts that styles name by their place in the theme. */
function addTheme(parts: Map<string, string>, theme: string): void {
  parts.set("xl/theme/theme1.xml", theme);
  for (const [path, end, added] of [
    ["[Content_Types].xml", "</Types>", `<Override PartName="/xl/theme/theme1.xml" ContentType="${TYPE}"/>`],
    ["xl/_rels/workbook.xml.rels", "</Relationships>", `<Relationship Id="rIdTheme" Type="${RELATION}" Target="theme/theme1.xml"/>`],
  ] as const)
    parts.set(path, parts.get(path)!.replace(end, added + end));
}
