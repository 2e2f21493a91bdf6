import { strToU8, type Zippable, zipSync } from "fflate";
import { boxName, cellName, type Rectangle } from "../workbook/address.ts";
import type { SheetSpec, Validation, WorkbookSpec } from "../workbook/sheet-spec.ts";
import { allowed, REFUSED_TITLE, rowHeights, VERDICT_FILLS } from "../workbook/styles.ts";
import { xmlElement, xmlText } from "../xlsx/write/xml.ts";
import { toOpenFormula, toRangeAddress } from "./open-formula.ts";
import { CellStyles, pageStyles, verdictStyle } from "./styles.ts";

const BASE = "urn:oasis:names:tc:opendocument:xmlns:";
const SPACES: Readonly<Record<string, string>> = {
  ...Object.fromEntries(["office", "table", "text", "style", "config", "manifest"].map((name) => [`xmlns:${name}`, `${BASE}${name}:1.0`])),
  ...{ "xmlns:fo": `${BASE}xsl-fo-compatible:1.0`, "xmlns:number": `${BASE}datastyle:1.0`, "xmlns:of": `${BASE}of:1.2` },
  // Named in the settings of the window.
  "xmlns:ooo": "http://openoffice.org/2004/office",
  "xmlns:calcext": "urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0",
};
const HEADING = '<?xml version="1.0" encoding="UTF-8"?>\n';
const KIND = "application/vnd.oasis.opendocument.spreadsheet";
const DATE = new Date(1980, 0, 1);
/** A column's width in inches for so many characters: the letters of LibreOffice are wider, and a filter's button takes room from a heading. */
const columnInches = (characters: number): number => (8 * characters + 5) / 96;

const part = (kind: string, content: string): string => HEADING + xmlElement(`office:document-${kind}`, { ...SPACES, "office:version": "1.3" }, content);

/** Writes a described workbook as an .ods (OASIS OpenDocument 1.3). Formulas are worked out when it is opened. */
export function writeOds(book: WorkbookSpec): Uint8Array {
  const styles = new CellStyles();
  const validations = book.sheets.flatMap((sheet) => sheet.validations.map((validation) => ({ sheet, validation })));
  const tables = book.sheets.map((sheet) => tableOf(sheet, styles, (validation) => `rule${validations.findIndex((one) => one.validation === validation) + 1}`));
  const rules = validations.map(({ sheet, validation }, i) => ruleOf(sheet, validation, `rule${i + 1}`));
  const names = book.names.map(({ name, formula }) =>
    xmlElement("table:named-range", {
      "table:name": name,
      "table:base-cell-address": `$${quoted(book.sheets[0]!.name)}.$A$1`,
      "table:cell-range-address": toRangeAddress(formula),
    }),
  );
  const ranges = book.sheets.flatMap((sheet) =>
    sheet.tables.map(({ name, row, column, rows, headings, hasFilter = false }) =>
      xmlElement("table:database-range", {
        "table:name": name,
        "table:target-range-address": addressOf(sheet, { row, column, rows: rows + 1, columns: headings.length }),
        "table:display-filter-buttons": String(hasFilter),
      }),
    ),
  );
  const body =
    (rules.length ? xmlElement("table:content-validations", {}, rules.join("")) : "") +
    tables.join("") +
    xmlElement("table:named-expressions", {}, names.join("")) +
    xmlElement("table:database-ranges", {}, ranges.join(""));
  const files: Record<string, string> = {
    "content.xml": part(
      "content",
      xmlElement("office:automatic-styles", {}, styles.automatic()) + xmlElement("office:body", {}, xmlElement("office:spreadsheet", {}, body)),
    ),
    "styles.xml": part(
      "styles",
      xmlElement("office:styles", {}, VERDICT_FILLS.map(([word, fill]) => verdictStyle(word, fill)).join("")) + pageStyles(book.sheets[0]!.print),
    ),
    "settings.xml": part("settings", xmlElement("office:settings", {}, views(book.sheets))),
  };
  const listed = [["/", KIND], ...Object.keys(files).map((name) => [name, "text/xml"])];
  const manifest = listed.map(([name, type]) => xmlElement("manifest:file-entry", { "manifest:full-path": name, "manifest:media-type": type }));
  files["META-INF/manifest.xml"] =
    HEADING + xmlElement("manifest:manifest", { "xmlns:manifest": SPACES["xmlns:manifest"], "manifest:version": "1.3" }, manifest.join(""));
  // The kind comes first and as it is, so that it can be told without unpacking (part 2, 3.3).
  const packed: Zippable = { mimetype: [strToU8(KIND), { level: 0 }] };
  for (const [name, text] of Object.entries(files)) packed[name] = strToU8(text);
  return zipSync(packed, { mtime: DATE, level: 9 });
}

/** The name of a sheet where a cell's address follows. */
const quoted = (name: string): string => (/^\w+$/.test(name) ? name : `'${name.replaceAll("'", "''")}'`);

const addressOf = ({ name }: SheetSpec, area: Rectangle): string => {
  const [first, last = first] = boxName(area).split(":");
  return `${quoted(name)}.${first}:${quoted(name)}.${last}`;
};

function tableOf(sheet: SheetSpec, styles: CellStyles, ruleName: (validation: Validation) => string): string {
  const { cells, widths, frozen, merges, verdicts, validations } = sheet;
  const byPlace = new Map(cells.map((cell) => [`${cell.row},${cell.column}`, cell]));
  const inside = (area: Rectangle, row: number, column: number): boolean =>
    row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns;
  const heights = rowHeights(sheet);
  const rows = Math.max(...cells.map(({ row }) => row + 1), ...validations.map(({ area }) => area.row + area.rows));
  const columns = Math.max(...cells.map(({ column }) => column + 1), ...merges.map(({ column, columns: wide }) => column + wide), widths.length);
  const lines = Array.from({ length: rows }, (_, row) => {
    const own = Array.from({ length: columns }, (__, column) => {
      const cell = byPlace.get(`${row},${column}`);
      const rule = validations.find(({ area }) => inside(area, row, column));
      const merged = merges.find((area) => inside(area, row, column));
      const isHead = merged?.row === row && merged.column === column;
      const attributes = {
        "table:style-name": cell && styles.of(cell),
        "table:content-validation-name": rule && ruleName(rule),
        "table:number-columns-spanned": isHead ? merged.columns : undefined,
        "table:number-rows-spanned": isHead ? merged.rows : undefined,
      };
      return cellPart(cell?.content ?? "", merged && !isHead ? "table:covered-table-cell" : "table:table-cell", attributes);
    });
    const height = heights.get(row);
    return xmlElement("table:table-row", { "table:style-name": height === undefined ? undefined : styles.row(height) }, own.join(""));
  });
  const heads = lines.slice(0, frozen.rows);
  return xmlElement(
    "table:table",
    { "table:name": sheet.name, "table:style-name": styles.table() },
    widths.map((width) => xmlElement("table:table-column", { "table:style-name": styles.column(columnInches(width)) })).join("") +
      (heads.length ? xmlElement("table:table-header-rows", {}, heads.join("")) : "") +
      lines.slice(frozen.rows).join("") +
      conditions(sheet, verdicts),
  );
}

function cellPart(content: number | string, name: string, attributes: Readonly<Record<string, string | number | undefined>>): string {
  if (content === "") return xmlElement(name, attributes);
  if (typeof content === "number") return xmlElement(name, { ...attributes, "office:value-type": "float", "office:value": content });
  if (content.startsWith("=")) return xmlElement(name, { ...attributes, "table:formula": toOpenFormula(content.slice(1)) });
  const lines = content.split("\n").map((line) => xmlElement("text:p", {}, xmlText(line)));
  return xmlElement(name, { ...attributes, "office:value-type": "string" }, lines.join(""));
}

/** Fills that repeat the words of verdicts; a part of LibreOffice's own that other programs pass over. */
function conditions(sheet: SheetSpec, verdicts: readonly Rectangle[]): string {
  if (verdicts.length === 0) return "";
  const made = verdicts.map((area) => {
    const base = `${quoted(sheet.name)}.${cellName(area)}`;
    const each = VERDICT_FILLS.map(([word]) =>
      xmlElement("calcext:condition", {
        "calcext:apply-style-name": word.replaceAll(" ", "_"),
        "calcext:value": `="${word}"`,
        "calcext:base-cell-address": base,
      }),
    );
    return xmlElement("calcext:conditional-format", { "calcext:target-range-address": addressOf(sheet, area) }, each.join(""));
  });
  return xmlElement("calcext:conditional-formats", {}, made.join(""));
}

const SIGNS = { greaterThan: ">", greaterThanOrEqual: ">=" } as const;

function ruleOf(sheet: SheetSpec, { area, rule, sentence }: Validation, name: string): string {
  const only = allowed(rule);
  const list = (inner: string): string => `of:cell-content-is-in-list(${inner})`;
  const condition =
    only.type === "custom"
      ? `of:is-true-formula(${only.formula}())`
      : only.type !== "list"
        ? `of:cell-content-is-${only.type === "date" ? "date" : "decimal-number"}() and cell-content()${SIGNS[only.operator]}${only.bound}`
        : "words" in only
          ? list(only.words.map((word) => `"${word}"`).join(";"))
          : list(only.name);
  return xmlElement(
    "table:content-validation",
    {
      "table:name": name,
      "table:condition": condition,
      "table:allow-empty-cell": "true",
      "table:base-cell-address": `${quoted(sheet.name)}.${cellName(area)}`,
    },
    xmlElement(
      "table:error-message",
      { "table:title": REFUSED_TITLE, "table:display": "true", "table:message-type": "stop" },
      xmlElement("text:p", {}, xmlText(sentence)),
    ),
  );
}

/** Rows and columns that stay in view: a setting of the window, by sheet. */
function views(sheets: readonly SheetSpec[]): string {
  const item = (name: string, type: string, value: number | string): string =>
    xmlElement("config:config-item", { "config:name": name, "config:type": type }, String(value));
  const entries = sheets.map(({ name, frozen: { rows, columns } }) => {
    const across = columns
      ? item("HorizontalSplitMode", "short", 2) + item("HorizontalSplitPosition", "int", columns) + item("PositionRight", "int", columns)
      : "";
    const down = rows ? item("VerticalSplitMode", "short", 2) + item("VerticalSplitPosition", "int", rows) + item("PositionBottom", "int", rows) : "";
    return xmlElement("config:config-item-map-entry", { "config:name": name }, across + down + item("ActiveSplitRange", "short", rows && columns ? 3 : 2));
  });
  const tables = xmlElement("config:config-item-map-named", { "config:name": "Tables" }, entries.join(""));
  const view = xmlElement(
    "config:config-item-map-indexed",
    { "config:name": "Views" },
    xmlElement("config:config-item-map-entry", {}, item("ViewId", "string", "view1") + tables),
  );
  return xmlElement("config:config-item-set", { "config:name": "ooo:view-settings" }, view);
}
