import { decimalText } from "./added.ts";
import { firstDay } from "./first-days.ts";
import { declared, type GridParts, notHere, type OwnFunction, Reader, SheetFault, singleOf } from "./own-function.ts";
import { toPlaces } from "./rounding.ts";

/** A format cut at its `;`, which does not count inside quotes or brackets. */
const sectionsOf = (format: string): string[] => format.match(/(?:"[^"]*"|\\.|\[[^\]]*\]|[^;"\\[])+|(?<=^|;)(?=;|$)/g) ?? [""];
/** Without what is written as it stands. */
const bare = (format: string): string => format.replaceAll(/"[^"]*"|\\.|\[[^\]]*\]/g, "");

const FRACTION = /^(?:([#0?]+)(\s+))?([#?0]+)\/([#?0]+|\d+)$/;
const ELAPSED = /\[(h+|m+|s+)\]/i;
const isOfDates = (section: string): boolean =>
  /[ymdhs]/i.test(
    bare(section)
      .replace(/general/i, "")
      .replace(/E[+-]/, ""),
  ) || ELAPSED.test(section);

/** The fraction nearest to a value between 0 and 1 whose lower number is at most so large. */
function nearestFraction(value: number, most: number): [number, number] {
  let best: [number, number] = [Math.round(value), 1];
  for (let below = 2; below <= most; below++) {
    const above = Math.round(value * below);
    // The 15th digit tells nothing: of equal ones the first, with the smallest numbers, is kept.
    if (Math.abs(above / below - value) < Math.abs(best[0] / best[1] - value) - 1e-15) best = [above, below];
  }
  return best;
}

const padded = (value: number, places: string, isAtEnd = false): string => {
  const text = String(value);
  const fill = places.includes("?") ? " " : places.includes("0") ? "0" : "";
  return fill === "" ? text : isAtEnd ? text.padEnd(places.length, fill === "0" ? " " : fill) : text.padStart(places.length, fill);
};

function asFraction(value: number, [, whole, gap = "", above, below]: RegExpExecArray): string {
  const isFixed = /^\d+$/.test(below!) && !/^0+$/.test(below!);
  const number = whole ? Math.floor(value) : 0;
  const rest = value - number;
  let [top, bottom] = isFixed ? [Math.round(rest * Number(below)), Number(below)] : nearestFraction(whole ? rest : rest, 10 ** Math.min(4, below!.length) - 1);
  let full = number;
  if (whole && top === bottom) [full, top] = [full + 1, 0];
  if (!whole) return `${padded(top!, above!)}/${isFixed ? below : padded(bottom!, below!, true)}`;
  const front =
    full === 0 && top !== 0 && !whole.includes("0") ? (whole.includes("?") ? " ".repeat(whole.length) : "") : padded(full, whole.replaceAll("#", ""));
  if (top === 0) return `${front}${gap}${" ".repeat(above!.length + 1 + below!.length)}`;
  return `${front}${gap}${padded(top!, above!)}/${isFixed ? below : padded(bottom!, below!, true)}`;
}

const DATE_PARTS = /"([^"]*)"|\\(.)|\[(h+|m+|s+)\]|(am\/pm|a\/p)|(y+|m+|d+|h+|s+)|\.(0+)|\[[^\]]*\]|(.)/gi;
/** The day after the last of the year 9999. */
const AFTER_LAST_DAY = 2_958_466;
const EPOCH = Date.UTC(1899, 11, 30);
const named = (date: Date, how: Intl.DateTimeFormatOptions): string => date.toLocaleDateString("en-US", { ...how, timeZone: "UTC" });

/** A day or a time, also one that goes on beyond the day, as `[h]:mm`; minutes are those `m` that stand beside hours or seconds. */
function asDate(value: number, section: string): string | undefined {
  const parts = [...section.matchAll(DATE_PARTS)];
  const decimals = Math.max(0, ...parts.map(([, , , , , , behind]) => behind?.length ?? 0));
  const units = parts.map(([, , , elapsed, , part]) => (elapsed ?? part)?.[0]?.toLowerCase());
  // What is left over by the binary number is less than a thousandth of a second; below the seconds that are shown they are rounded.
  const seconds = toPlaces(value * 86_400, decimals, "nearest");
  if (seconds < 0) return undefined;
  const total = Math.floor(seconds);
  if (total >= AFTER_LAST_DAY * 86_400) return undefined;
  const date = new Date(EPOCH + total * 1000);
  const first = firstDay(total / 86_400);
  const [year, month, day] = first ? [first.year, first.month, first.day] : [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
  const isOf12 = parts.some(([, , , , noon]) => noon);
  const minutes = (i: number): boolean => {
    const before = units.slice(0, i).findLast((unit) => unit);
    return before === "h" || units.slice(i + 1).find((unit) => unit) === "s";
  };
  const padTo = (number: number, length: number): string => String(number).padStart(Math.min(2, length), "0");
  const hours = date.getUTCHours();
  const shown = ([, quoted, escaped, elapsed, noon, part, behind, sign]: RegExpMatchArray, i: number): string => {
    if (quoted ?? escaped ?? sign) return (quoted ?? escaped ?? sign)!;
    if (elapsed) return String(Math.floor(total / { h: 3600, m: 60, s: 1 }[units[i] as "h"])).padStart(elapsed.length, "0");
    if (noon) return noon.length > 3 ? (hours < 12 ? "AM" : "PM") : hours < 12 ? "A" : "P";
    if (behind) return `.${(seconds - total).toFixed(decimals).slice(2)}`;
    const length = part?.length ?? 0;
    if (units[i] === "y") return length > 2 ? String(year) : String(year).slice(-2);
    if (units[i] === "h") return padTo(isOf12 ? hours % 12 || 12 : hours, length);
    if (units[i] === "s") return padTo(date.getUTCSeconds(), length);
    if (units[i] === "d") return length < 3 ? padTo(day, length) : named(date, { weekday: length === 3 ? "short" : "long" });
    if (units[i] !== "m") return "";
    if (length < 3 && minutes(i)) return padTo(date.getUTCMinutes(), length);
    if (length < 3) return padTo(month, length);
    const name = named(new Date(Date.UTC(year, month - 1)), { month: length === 3 ? "short" : "long" });
    return length === 5 ? name[0]! : name;
  };
  return parts.map(shown).join("");
}

const SCIENTIFIC = /^[0#](\.0*)?E([+-])(0+)$/i;

/** As 1.23E+04. */
function asPower(value: number, [, behind = "", sign, places]: RegExpExecArray): string {
  const [mantissa, power] = value.toExponential(Math.max(0, behind.length - 1)).split("e") as [string, string];
  const size = String(Math.abs(Number(power))).padStart(places!.length, "0");
  return `${mantissa}E${Number(power) < 0 ? "-" : sign === "+" ? "+" : ""}${size}`;
}

/** How many decimals of the value itself a format of numbers shows; `undefined` where it is none. */
function placesIn(section: string): number | undefined {
  const plain = bare(section);
  if (!/[0#?]/.test(plain) || /E[+-]/i.test(plain)) return undefined;
  const behind = /\.([0#?]*)/.exec(plain)?.[1]?.length ?? 0;
  const shares = plain.match(/%/g)?.length ?? 0;
  const thousands = /[0#?](,+)(?:\.|$|[^0#?,])/.exec(plain)?.[1]?.length ?? 0;
  return behind + 2 * shares - 3 * thousands;
}

/** Colours, which a text does not show; what leaves room as wide as a letter, or fills what is left; brackets as they stand. */
const LOOKS = /("[^"]*"|\\.)|\[(?:black|blue|cyan|green|magenta|red|white|yellow|colou?r ?\d+)\]|(_.)|\*.|([()])/gi;
const withoutLooks = (format: string): string =>
  format.replaceAll(LOOKS, (_, plain?: string, room?: string, bracket?: string) => plain ?? (room ? '" "' : bracket ? `"${bracket}"` : ""));

/** A number without a format, in eleven letters: 0.333333333, 1.23457E+11. */
function generalText(value: number): string {
  const size = Math.abs(value);
  const places = Math.max(0, 9 - Math.floor(Math.log10(Math.max(1, size))));
  const rounded = toPlaces(value, places, "nearest");
  const loses = size < 1e-4 && rounded !== Number(value.toPrecision(6));
  if (size < 1e11 && !loses) return places > 0 ? rounded.toFixed(places).replace(/\.?0+$/, "") : String(rounded);
  const [mantissa, power] = value.toExponential(5).split("e") as [string, string];
  return `${Number(mantissa)}E${power[0]}${power.slice(1).padStart(2, "0")}`;
}

/** Signs of a date that are not worked out: placeholders of numbers, and the letters of other calendars. */
const STRANGE_IN_DATES = /[#?]|(?<![.0])0|[beg]/i;
/** A time in text that office programs read in different ways, or none of them: minutes and seconds from 60 up, parts of a second. */
const STRANGE_TIME = /^(?:\d+[-/.]\d+[-/.]\d+ )?\d+:(?:(?:[6-9]\d|\d{3,})(?::.*)?|\d\d?:(?:[6-9]\d|\d{3,}).*|\d+(?::\d+)?\.\d*)$/;

const unknownFormat = (format: string): SheetFault => new SheetFault("#VALUE!", notHere(`TEXT does not work out the format ${JSON.stringify(format)} here.`));

/** What a section of a format makes of a text, which stands where its `@` does. */
const aroundText = (section: string, text: string): string =>
  section.replaceAll(/"([^"]*)"|\\(.)|\[[^\]]*\]|(@)/g, (_, quoted?: string, escaped?: string, place?: string) => (place ? text : (quoted ?? escaped ?? "")));

/** TEXT as office programs have it: text passes through, decimals are rounded as they are written, fractions and hours beyond the day are known. */
export function textFunctions(grid: GridParts): Record<string, OwnFunction> {
  const reader = new Reader(grid.helpers);
  const { formatValue } = grid.helpers;
  return {
    TEXT: declared(grid.helpers, "A number as text in a format", ["value (any)", "format (string)"], function (given, wanted) {
      const value = singleOf(given);
      const format = withoutLooks(reader.text(wanted));
      const read = typeof value === "string" ? reader.inText(value, this.locale) : reader.number(given, this);
      if (typeof value === "boolean") return reader.text(given);
      if (bare(format).includes('"')) return unknownFormat(format);
      const [, , , ofText] = sectionsOf(format);
      if (typeof value === "string" && STRANGE_TIME.test(value))
        return new SheetFault(
          "#VALUE!",
          notHere(`TEXT of the text ${JSON.stringify(value)}: times in text are read as h:mm or h:mm:ss, with minutes and seconds below 60.`),
        );
      if (read === undefined && ofText !== undefined)
        return sectionsOf(format)
          .slice(0, 3)
          .some((one) => bare(one).includes("@"))
          ? unknownFormat(format)
          : aroundText(ofText, String(value));
      if (read === undefined) return format.includes("@") && !/[0#?]/.test(bare(format)) ? bare(format).replaceAll("@", String(value)) : reader.text(given);
      if (format === "") return read < 0 ? "-" : "";
      const sections = sectionsOf(format);
      const own = sections.length > 2 && read === 0 ? 2 : sections.length > 1 && read < 0 ? 1 : 0;
      const section = sections[own]!;
      const sign = read < 0 && own === 0 ? "-" : "";
      if (/^general$/i.test(section)) return generalText(read);
      const fraction = FRACTION.exec(section);
      if (fraction) return sign + asFraction(Math.abs(read), fraction);
      if (bare(section).includes("/") && /[?#0]\s*\//.test(bare(section))) return unknownFormat(format);
      if (isOfDates(section) && STRANGE_IN_DATES.test(bare(section).replaceAll(/(?<=s[^ymdh]*)\.0+/gi, ""))) return unknownFormat(format);
      if (isOfDates(section)) return asDate(read, section) ?? new SheetFault("#VALUE!", "No day and no time is below 0, and none is after the year 9999.");
      if (/,/.test(bare(section)) && /[0#?],? +[0#?]|,\./.test(bare(section))) return unknownFormat(format);
      const places = placesIn(section);
      const shown = places === undefined ? read : toPlaces(read, places, "nearest");
      const scientific = SCIENTIFIC.exec(section);
      if (scientific) return asPower(read, scientific);
      try {
        return section === "" ? "" : formatValue((own === 1 ? Math.abs(shown) : shown) as never, { format: section, locale: this.locale } as never);
      } catch {
        return unknownFormat(format);
      }
    }),
    DOLLAR: declared(grid.helpers, "A number as an amount in dollars", ["value (number)", "decimals (number, default=2)"], function (given, decimals) {
      const text = decimalText(reader.number(given, this), Math.trunc(reader.number(decimals, this, 2)), true);
      return text.startsWith("-") ? `($${text.slice(1)})` : `$${text}`;
    }),
  };
}
