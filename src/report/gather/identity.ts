import { isBlank } from "../../core/cell.ts";
import { unitIn } from "../../vocabulary/units.ts";
import type { SheetSnapshot } from "../../workbook/port.ts";
import type { CopiedTable, IdentityEntry, LimitRow } from "../content.ts";
import { cellText } from "./cells.ts";

/** Words that stand beside an entry that says whose engine it is and how it was measured. */
const ENTRIES: readonly RegExp[] = [
  /^(?:owner|customer|yard|shop|boat|vessel|vehicle)$/,
  /^(?:job|order)(?: no| number)?$/,
  /^(?:engine|motor)(?: no| number| id| type| model)?$/,
  /^(?:serial|serial no|serial number|engine serial number)$/,
  /^(?:type|model)$/,
  /^(?:hours|hours run|hours in service|engine hours|running hours)$/,
  /^(?:stripped|built|measured|checked)(?: on| by)?$/,
  /^(?:date|date of measurement|inspector|technician|mechanic)$/,
  /^(?:unit|units|unit of length|length unit)$/,
  /^(?:ambient|ambient temperature|room temperature|temperature|ambient pressure)$/,
  /^(?:cylinders|standard bore|bore|stroke|oversize)$/,
];

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

const isEntryName = (text: string): boolean => ENTRIES.some((name) => name.test(plain(text)));

/** Cells of one row from the left, up to the first gap; a longer run is a table. */
const LONGEST_RUN = 4;
/** Entries stand at the head of a sheet or on one of their own; what comes further down is data. */
const MOST_ENTRIES = 40;

/** Entries such as `Serial number | 0417`: a name that is known and, right of it, what was typed. */
export function identityIn(sheets: readonly SheetSnapshot[]): IdentityEntry[] {
  const found = new Map<string, IdentityEntry>();
  for (const { values } of sheets) {
    for (const line of values) {
      for (const [c, name] of line.entries()) {
        if (typeof name !== "string" || !isBlank(line[c - 1]) || !isEntryName(name)) continue;
        const run = lengthOfRun(line.slice(c));
        const entry = line[c + 1];
        if (run > LONGEST_RUN || isBlank(entry) || (typeof entry === "string" && isEntryName(entry))) continue;
        const unit = typeof entry === "number" && typeof line[c + 2] === "string" ? ` ${cellText(line[c + 2])}` : "";
        if (!found.has(plain(name)) && found.size < MOST_ENTRIES)
          found.set(plain(name), { name: cellText(name).replace(/:$/, ""), text: `${cellText(entry, name)}${unit}` });
      }
    }
  }
  return [...found.values()];
}

const lengthOfRun = (cells: readonly unknown[]): number => {
  const end = cells.findIndex((cell) => isBlank(cell));
  return end < 0 ? cells.length : end;
};

/** Headings by which a table of gauges, or of what was measured with them, is known. */
const GAUGE_HEADINGS = /^(?:gauge|gauge id|gauge no|instrument|instrument id|instrument no|micrometer|tool)$/;
const BESIDE_GAUGES =
  /^(?:resolution|u|u of the gauge|uncertainty|expanded uncertainty|calibration|calibration due|calibrated until|calibrated|due|certificate|measured on)$/;

export function gaugesIn(sheets: readonly SheetSnapshot[]): CopiedTable[] {
  return tablesIn(
    sheets,
    (headings) => headings.some((heading) => GAUGE_HEADINGS.test(heading)) && headings.some((heading) => BESIDE_GAUGES.test(heading)),
  ).map(({ headings, rows }) => {
    // A row without a gauge has only the name of what would be measured.
    const at = headings.findIndex((heading) => GAUGE_HEADINGS.test(plain(heading)));
    return { headings, rows: rows.filter((row) => row[at] !== "") };
  });
}

const LIMIT_HEADINGS: Readonly<Record<keyof LimitRow, RegExp>> = {
  characteristic: /^(?:characteristic|feature|dimension|item|part|what|limit)$/,
  lower: /^(?:lower|lower limit|low|min|minimum|least)$/,
  upper: /^(?:upper|upper limit|high|max|maximum|most)$/,
  unit: /^(?:unit|units)$/,
  near: /^(?:near|near limit)$/,
  source: /^(?:source|from|reference|manual|where from|origin)$/,
};
const VALUE = /^(?:value|reading|readings|measured|actual|result)$/;

/** Limits that the shop has typed into a table of their own, with the source that it names. */
export function limitsIn(sheets: readonly SheetSnapshot[]): LimitRow[] {
  const columnOf = (headings: readonly string[], field: keyof LimitRow) => headings.findIndex((heading) => LIMIT_HEADINGS[field].test(plain(heading)));
  const tables = tablesIn(
    sheets,
    (headings) =>
      headings.some((heading) => LIMIT_HEADINGS.characteristic.test(heading)) &&
      headings.some((heading) => LIMIT_HEADINGS.lower.test(heading) || LIMIT_HEADINGS.upper.test(heading)) &&
      !headings.some((heading) => VALUE.test(heading)),
  );
  return tables.flatMap(({ headings, rows }) => {
    const fields = Object.keys(LIMIT_HEADINGS) as (keyof LimitRow)[];
    const at = Object.fromEntries(fields.map((field) => [field, columnOf(headings, field)])) as Record<keyof LimitRow, number>;
    return rows
      .map((row) => Object.fromEntries(fields.map((field) => [field, row[at[field]] ?? ""])) as unknown as LimitRow)
      .filter(({ lower, upper }) => lower !== "" || upper !== "");
  });
}

/** Tables whose row of headings is wanted: from it down to the first blank row, as far as its headings reach. */
function tablesIn(sheets: readonly SheetSnapshot[], isWanted: (headings: readonly string[]) => boolean): CopiedTable[] {
  const tables: CopiedTable[] = [];
  for (const { values } of sheets) {
    for (const [r, line] of values.entries()) {
      const from = line.findIndex((cell) => !isBlank(cell));
      if (from < 0) continue;
      const to = from + lengthOfRun(line.slice(from));
      const headings = line.slice(from, to).map((cell) => (typeof cell === "string" ? cellText(cell) : ""));
      if (headings.length < 2 || headings.includes("") || !isWanted(headings.map(plain))) continue;
      const rows: string[][] = [];
      for (const below of values.slice(r + 1)) {
        const cells = below.slice(from, to);
        if (cells.every(isBlank)) break;
        rows.push(cells.map((cell, c) => cellText(cell, headings[c])));
      }
      tables.push({ headings, rows });
    }
  }
  return tables;
}

/** What the workbook says its lengths are in: outright, or by the one unit of length of all its limits. */
export function unitOfLength(identity: readonly IdentityEntry[], limits: readonly LimitRow[]): string | undefined {
  const said = identity.find(({ name }) => /unit/i.test(name));
  const own = said && unitIn(`(${said.text})`, "length");
  if (own !== undefined) return own;
  const units = new Set(limits.map(({ unit }) => unitIn(`(${unit})`, "length")).filter((unit) => unit !== undefined));
  return units.size === 1 ? [...units][0] : undefined;
}
