import type { Cell } from "../core/cell.ts";
import type { XmlAttributes } from "../xlsx/xml.ts";

const DAY = 86_400_000;
/** The day that a sheet's dates count from. */
const FIRST_DAY = Date.UTC(1899, 11, 30);
const DURATION = /^(-?)PT?(?:(\d+)H)?(?:(\d+)M)?(?:([\d.,]+)S)?$/;

/** The value of a cell by its type (OASIS OpenDocument 1.3 part 3, 19.385 office:value-type); dates as numbers of days. */
export function cellValue(attributes: XmlAttributes, text: string): Cell {
  if (attributes["calcext:value-type"] === "error") return { error: text };
  switch (attributes["office:value-type"]) {
    case undefined:
    case "void":
      return null;
    case "boolean":
      return attributes["office:boolean-value"] === "true";
    case "date":
      return dateValue(attributes["office:date-value"] ?? "");
    case "time":
      return timeValue(attributes["office:time-value"] ?? "");
    case "string":
      return attributes["office:string-value"] ?? text;
    default:
      return finite(Number(attributes["office:value"]));
  }
}

const finite = (number: number): number | null => (Number.isFinite(number) ? number : null);

function dateValue(written: string): number | null {
  const at = Date.parse(written.includes("T") ? `${written}Z` : `${written}T00:00:00Z`);
  return finite((at - FIRST_DAY) / DAY);
}

function timeValue(written: string): number | null {
  const [whole, sign, hours, minutes, seconds] = DURATION.exec(written) ?? [];
  if (whole === undefined) return null;
  const days = (Number(hours ?? 0) * 3600 + Number(minutes ?? 0) * 60 + Number((seconds ?? "0").replace(",", "."))) / 86_400;
  return sign ? -days : days;
}
