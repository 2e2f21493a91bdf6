import { type FileLimits, UnreadableFile } from "../xlsx/file-limits.ts";
import type { DefinedName, SheetFile } from "../xlsx/model.ts";
import type { Handlers, XmlAttributes } from "../xlsx/xml.ts";
import { fromOpenFormula, fromRangeAddress, Inexpressible } from "./open-formula.ts";
import { Amounts, TableReader } from "./table.ts";

/** What is in cells or sheets but is not their content: notes, drawings, forms, changes that are remembered. */
const ASIDE = new Set(["annotation", "shapes", "forms", "tracked-changes", "detective", "table-source"]);
/** Days on which the counting of dates begins. */
const FIRST_DAYS = { usual: "1899-12-30", from1904: "1904-01-01" };

/** A cell while its element is being read. */
interface Draft {
  attributes: XmlAttributes;
  text: string;
  paragraphs: number;
}

interface Content {
  sheets: SheetFile[];
  names: DefinedName[];
  /** Database ranges, which are what tables become. */
  ranges: { name: string; address: string }[];
  from1904: boolean;
}

/** Reads the part `content.xml` of a spreadsheet. */
export class ContentReader implements Handlers {
  readonly #content: Content = { sheets: [], names: [], ranges: [], from1904: false };
  readonly #hiddenStyles = new Set<string>();
  #style = "";
  #table: TableReader | null = null;
  #draft: Draft | null = null;
  #aside = 0;
  readonly #amounts: Amounts;

  constructor(limits: FileLimits) {
    this.#amounts = new Amounts(limits);
  }

  open(name: string, attributes: XmlAttributes): void {
    if (this.#aside > 0 || ASIDE.has(name)) {
      this.#aside++;
      return;
    }
    switch (name) {
      case "style":
        this.#style = attributes["style:name"] ?? "";
        break;
      case "table-properties":
        if (attributes["table:display"] === "false") this.#hiddenStyles.add(this.#style);
        break;
      case "null-date":
        this.#nullDate(attributes["table:date-value"] ?? FIRST_DAYS.usual);
        break;
      case "table":
        this.#openSheet(attributes);
        break;
      case "table-row":
        this.#table?.openRow(attributes);
        break;
      case "table-cell":
      case "covered-table-cell":
        this.#draft = { attributes, text: "", paragraphs: 0 };
        break;
      case "named-range":
        this.#name(attributes, () => fromRangeAddress(attributes["table:cell-range-address"] ?? ""));
        break;
      case "named-expression":
        this.#name(attributes, () => fromOpenFormula(`=${(attributes["table:expression"] ?? "").replace(/^of:=?/, "")}`));
        break;
      case "database-range":
        this.#range(attributes);
        break;
      default:
        this.#openText(name, attributes);
    }
  }

  text(piece: string): void {
    if (this.#draft && this.#aside === 0 && this.#draft.paragraphs > 0) this.#draft.text += piece;
  }

  close(name: string): void {
    if (this.#aside > 0) this.#aside--;
    else if (name === "table-cell" || name === "covered-table-cell") this.#closeCell();
    else if (name === "table-row") this.#table?.closeRow();
    else if (name === "table" && this.#table) {
      this.#content.sheets.push(this.#table.close());
      this.#table = null;
    }
  }

  result(): Content {
    return this.#content;
  }

  /** Spaces, tabs and line ends within a paragraph stand as elements. */
  #openText(name: string, attributes: XmlAttributes): void {
    if (!this.#draft) return;
    if (name === "p" && this.#draft.paragraphs++ > 0) this.#draft.text += "\n";
    else if (name === "s") this.#draft.text += " ".repeat(Math.min(Number(attributes["text:c"] ?? 1) || 1, 1000));
    else if (name === "tab") this.#draft.text += "\t";
    else if (name === "line-break") this.#draft.text += "\n";
  }

  #openSheet(attributes: XmlAttributes): void {
    if (this.#table) throw new UnreadableFile("holds a table inside a table, which is not read");
    const name = attributes["table:name"] ?? "";
    if (this.#content.sheets.some((one) => one.name.toLowerCase() === name.toLowerCase()))
      throw new UnreadableFile(`is damaged: two of its sheets have the name ${JSON.stringify(name)}`);
    this.#table = new TableReader(name, this.#hiddenStyles.has(attributes["table:style-name"] ?? ""), this.#amounts);
  }

  #closeCell(): void {
    const { attributes, text } = this.#draft!;
    this.#draft = null;
    this.#table?.cell(attributes, text);
  }

  #name(attributes: XmlAttributes, formula: () => string): void {
    const name = attributes["table:name"] ?? "";
    // Print areas and the like, as .xlsx names them.
    if (name.startsWith("_xlnm.")) return;
    const own = this.#table ? { sheet: this.#content.sheets.length } : {};
    try {
      this.#content.names.push({ name, ...own, formula: formula() });
    } catch (reason) {
      // A name that leads elsewhere: formulas that use it say that there is none.
      if (!(reason instanceof Inexpressible)) throw reason;
    }
  }

  #range(attributes: XmlAttributes): void {
    const name = attributes["table:name"] ?? "";
    // Filters without a name of their own.
    if (name.startsWith("__Anonymous") || attributes["table:contains-header"] === "false") return;
    const address = attributes["table:target-range-address"] ?? "";
    if (/\.\$?[A-Z]+\$?\d+(?::.*\$?[A-Z]+\$?\d+)?$/.test(address)) this.#content.ranges.push({ name, address: fromRangeAddress(address) });
  }

  #nullDate(day: string): void {
    if (day.startsWith(FIRST_DAYS.from1904)) this.#content.from1904 = true;
    else if (!day.startsWith(FIRST_DAYS.usual)) throw new UnreadableFile(`counts its dates from ${day}, which is not read`);
  }
}
