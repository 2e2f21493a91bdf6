import { type Cell, isCellError } from "../../core/cell.ts";
import { unescapeText } from "../xml.ts";
import { cellXmlText } from "./attributes.ts";

/** The errors that a cell can hold by themselves (ECMA-376 part 1, 18.18.11 and 18.17.3); newer ones are kept beside it, which is not done here. */
const ERRORS = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#GETTING_DATA"]);
/** The longest text of a cell. */
const LONGEST = 32_767;
const DIGITS = 15;

/** A cell's value as its element has it: the attribute `t`, and what stands in `<v>`. */
export interface Content {
  type: string | null;
  text: string;
}

/** How a value that is worked out is stored; `null` for a cell that holds none. */
export function contentOf(value: Cell): Content | null {
  if (value === null) return null;
  if (isCellError(value)) return { type: "e", text: ERRORS.has(value.error) ? value.error : "#VALUE!" };
  if (typeof value === "boolean") return { type: "b", text: value ? "1" : "0" };
  if (typeof value === "string") return { type: "str", text: value.slice(0, LONGEST) };
  return Number.isFinite(value) ? { type: null, text: String(value) } : { type: "e", text: "#NUM!" };
}

/** The same value as one that is stored, by all digits that a sheet keeps of a number. `shared` gives the workbook's shared texts. */
export function isStored(
  { type, text }: Content,
  stored: { type: string | undefined; text: string | null },
  shared: (index: number) => string | undefined,
): boolean {
  if (stored.text === null) return false;
  if (stored.type === "s") return type === "str" && shared(Number(stored.text)) === text;
  if ((stored.type ?? "n") !== (type ?? "n")) return false;
  if (type === "str") return unescapeText(stored.text) === text;
  if (type !== null) return stored.text.trim() === text;
  const number = stored.text.trim() === "" ? Number.NaN : Number(stored.text);
  return number === Number(text) || number.toPrecision(DIGITS) === Number(text).toPrecision(DIGITS);
}

/** `<v>…</v>`. Blanks at its ends would else be dropped. */
export function valueXml({ text }: Content, prefix: string): string {
  const space = /^\s|\s$|[\n\t]/.test(text) ? ' xml:space="preserve"' : "";
  return `<${prefix}v${space}>${cellXmlText(text)}</${prefix}v>`;
}
