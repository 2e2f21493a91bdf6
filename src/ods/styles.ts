import type { CellSpec, SheetSpec } from "../workbook/sheet-spec.ts";
import { FOOTER, MARGINS, STYLES } from "../workbook/styles.ts";
import { xmlElement } from "../xlsx/write/xml.ts";

/** The looks of cells, columns and rows that a workbook uses, each once and by a name of its own. */
export class CellStyles {
  readonly #names = new Map<string, string>();
  readonly #parts: string[] = [];

  of({ style, format }: Pick<CellSpec, "style" | "format">): string {
    return this.#named("ce", `${style} ${format ?? ""}`, (name) => {
      const { isBold, isItalic, size, ink, fill, border, isLeft, isWrapped } = STYLES[style];
      const data = format === undefined || format === "General" ? undefined : `${name}n`;
      const cell = {
        "fo:background-color": fill,
        "fo:border": border && `0.5pt solid ${border}`,
        "fo:wrap-option": isWrapped && "wrap",
        // A filter's button stands at the foot of the cell.
        "style:vertical-align": isWrapped && "top",
      };
      const text = { "fo:font-weight": isBold && "bold", "fo:font-style": isItalic && "italic", "fo:font-size": size && `${size}pt`, "fo:color": ink };
      const inner =
        xmlElement("style:table-cell-properties", cell) +
        (isLeft ? xmlElement("style:paragraph-properties", { "fo:text-align": "start" }) : "") +
        xmlElement("style:text-properties", text);
      const own = { "style:name": name, "style:family": "table-cell", "style:data-style-name": data };
      return (data ? dataStyle(data, format!) : "") + xmlElement("style:style", own, inner);
    });
  }

  column(inches: number): string {
    return this.#named("co", inches.toFixed(3), (name) => dimension(name, "table-column", { "style:column-width": `${inches.toFixed(3)}in` }));
  }

  row(points: number): string {
    return this.#named("ro", String(points), (name) =>
      dimension(name, "table-row", { "style:row-height": `${points}pt`, "style:use-optimal-row-height": "false" }),
    );
  }

  table(): string {
    return this.#named("ta", "", (name) => xmlElement("style:style", { "style:name": name, "style:family": "table", "style:master-page-name": "Default" }));
  }

  automatic(): string {
    return this.#parts.join("");
  }

  #named(kind: string, key: string, make: (name: string) => string): string {
    const known = this.#names.get(`${kind} ${key}`);
    if (known !== undefined) return known;
    const name = `${kind}${this.#names.size + 1}`;
    this.#names.set(`${kind} ${key}`, name);
    this.#parts.push(make(name));
    return name;
  }
}

const dimension = (name: string, family: string, properties: Readonly<Record<string, string>>): string =>
  xmlElement("style:style", { "style:name": name, "style:family": family }, xmlElement(`style:${family}-properties`, properties));

/** A number format such as `0.000`, text (`@`), or a date (`yyyy-mm-dd`). */
function dataStyle(name: string, format: string): string {
  if (format === "@") return xmlElement("number:text-style", { "style:name": name }, "<number:text-content/>");
  if (/[yd]/.test(format)) {
    const dash = xmlElement("number:text", {}, "-");
    const [month, day] = ["month", "day"].map((part) => xmlElement(`number:${part}`, { "number:style": "long" }));
    return xmlElement("number:date-style", { "style:name": name }, `${xmlElement("number:year", { "number:style": "long" })}${dash}${month}${dash}${day}`);
  }
  const decimals = format.split(".")[1] ?? "";
  const least = decimals.replaceAll("#", "").length;
  const number = xmlElement("number:number", { "number:decimal-places": decimals.length, "number:min-decimal-places": least, "number:min-integer-digits": 1 });
  return xmlElement("number:number-style", { "style:name": name }, number);
}

export const verdictStyle = (word: string, fill: string): string =>
  xmlElement(
    "style:style",
    { "style:name": word.replaceAll(" ", "_"), "style:display-name": word, "style:family": "table-cell" },
    xmlElement("style:table-cell-properties", { "fo:background-color": fill }),
  );

const SIZES = { A4: [21, 29.7], letter: [21.59, 27.94] } as const;

/** Paper, margins and what stands at the foot of each page. */
export function pageStyles({ paper, isLandscape }: SheetSpec["print"]): string {
  const [short, long] = SIZES[paper];
  const [width, height] = isLandscape ? [long, short] : [short, long];
  const page = {
    ...{ "fo:page-width": `${width}cm`, "fo:page-height": `${height}cm`, "style:print-orientation": isLandscape ? "landscape" : "portrait" },
    ...{
      "fo:margin-left": `${MARGINS.left}in`,
      "fo:margin-right": `${MARGINS.right}in`,
      "fo:margin-top": `${MARGINS.top}in`,
      "fo:margin-bottom": `${MARGINS.footer}in`,
    },
    ...{ "style:scale-to-X": 1, "style:scale-to-Y": 0 },
  };
  const paragraph = (text: string): string =>
    xmlElement(
      "text:p",
      {},
      text
        .replace("&F", "<text:title/>")
        .replace("&A", "<text:sheet-name/>")
        .replace("&P", "<text:page-number>1</text:page-number>")
        .replace("&N", "<text:page-count>1</text:page-count>"),
    );
  const foot = xmlElement("style:region-left", {}, paragraph(FOOTER.left)) + xmlElement("style:region-right", {}, paragraph(FOOTER.right));
  return (
    xmlElement("office:automatic-styles", {}, xmlElement("style:page-layout", { "style:name": "page" }, xmlElement("style:page-layout-properties", page))) +
    xmlElement(
      "office:master-styles",
      {},
      xmlElement("style:master-page", { "style:name": "Default", "style:page-layout-name": "page" }, xmlElement("style:footer", {}, foot)),
    )
  );
}
