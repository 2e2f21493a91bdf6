/** What the grid has to know of a language (its own type is not handed out). */
interface GridLocale {
  name: string;
  code: string;
  thousandsSeparator?: string;
  decimalSeparator: string;
  dateFormat: string;
  timeFormat: string;
  formulaArgSeparator: string;
  weekStart: number;
}

const ENGLISH = "en-US";
const DATE_PARTS: Readonly<Record<string, string>> = { day: "dd", month: "mm", year: "yyyy" };
/** Any number with a thousand and decimals shows both signs. */
const SHOWN = 1_234_567.8;
const MONDAY = 1;
const SUNDAY = 7;

/**
 * How numbers, dates and formulas are typed in a language of the browser, such as `en-GB`: 02/04/2025 is
 * 2 April there. Languages whose numbers have neither a point nor a comma before the decimals are typed as in English.
 */
export function localeOf(asked: string): GridLocale {
  const language = known(asked);
  const parts = new Intl.NumberFormat(language, { useGrouping: true }).formatToParts(SHOWN);
  const sign = (type: Intl.NumberFormatPartTypes) => parts.find((part) => part.type === type)?.value;
  const decimal = sign("decimal");
  if (decimal !== "." && decimal !== ",") return localeOf(ENGLISH);
  const group = sign("group");
  const date = new Intl.DateTimeFormat(language, { year: "numeric", month: "2-digit", day: "2-digit", calendar: "gregory", numberingSystem: "latn" });
  const { hour12 } = new Intl.DateTimeFormat(language, { hour: "numeric" }).resolvedOptions();
  return {
    name: language,
    code: language.replace("-", "_"),
    ...(group === undefined || group === decimal ? {} : { thousandsSeparator: /\s/.test(group) ? " " : group }),
    decimalSeparator: decimal,
    dateFormat: date
      .formatToParts(new Date(0))
      .map(({ type, value }) => DATE_PARTS[type] ?? value.trim())
      .join(""),
    timeFormat: hour12 ? "hh:mm:ss a" : "hh:mm:ss",
    formulaArgSeparator: decimal === "," ? ";" : ",",
    weekStart: language === ENGLISH ? SUNDAY : MONDAY,
  };
}

/** Some systems name a language in ways of their own, such as `en-US@posix`. */
function known(language: string): string {
  try {
    return Intl.getCanonicalLocales(language.replace(/[@.].*$/, "").replaceAll("_", "-"))[0] ?? ENGLISH;
  } catch {
    return ENGLISH;
  }
}

const MIXED = /^([+-]?)(\d+)[ -](\d+)\/(\d+)$/;
const FRACTION = /^([+-]?)()(\d+)\/(\d+)$/;
const DOUBTFUL = /^[+-]?\d{1,3}([.,'’])\d{3}$/;

/** What a cell is to hold for what was typed into it, and what is to be said of it. */
export interface Meant {
  content: string;
  said?: string;
}

interface EntryPlace {
  /** What the cell is called. */
  place: string;
  /** The number format that it has already. */
  format: string | undefined;
  locale: Pick<GridLocale, "thousandsSeparator" | "dateFormat">;
}

/**
 * What was meant by what was typed: 3 7/16 is a size and never a date, 7/16 neither in a cell of numbers; a date
 * may have points; and a thousand whose sign other languages put before decimals is nobody's guess, so it stays
 * as text. `content` is what the grid would make of it.
 */
export function meantBy(typed: string, content: string, { place, format, locale: { thousandsSeparator: group, dateFormat } }: EntryPlace): Meant {
  const text = typed.trim();
  const isOfNumbers = format !== undefined && /^[#0,]*0(?:\.[0#]+)?$/.test(format);
  const [, sign, whole, over, under] = MIXED.exec(text) ?? (isOfNumbers ? FRACTION.exec(text) : null) ?? [];
  if (under !== undefined && Number(under) > 0) return { content: `${sign === "-" ? "-" : ""}${Number(whole || 0) + Number(over) / Number(under)}` };
  if (dateFormat.includes(".") && /^\d{1,2}\.\d{1,2}\.\d{2,4}$/.test(text)) return { content: text.replaceAll(".", "/") };
  const [, found] = DOUBTFUL.exec(text) ?? [];
  if (found === undefined || found !== group) return { content };
  const [decimals, plain] = [text.replace(found, "."), text.replace(found, "")];
  return {
    content: `'${text}`,
    said: `${text} can mean ${decimals} or ${plain}. It stands in ${place} as text and counts as no number: type it so that it can mean one thing only.`,
  };
}
