import { isBlank } from "../../core/cell.ts";
import { entriesOn, lengthOfRun } from "../../layout/entries.ts";
import { foldedHeading, gaugeFieldOf, isOneSidedLimit, isRemark, isSource, readHeadings, saysOwner } from "../../vocabulary/headings.ts";
import { identityFieldOf, isOfEntry, isOfRecord, isShopSheet, shopFieldOf } from "../../vocabulary/identity.ts";
import { parseHeading } from "../../vocabulary/parse-heading.ts";
import { remembered } from "../../vocabulary/remembered.ts";
import { unitIn } from "../../vocabulary/units.ts";
import { type CellAddress, placeName } from "../../workbook/address.ts";
import type { SheetSnapshot } from "../../workbook/port.ts";
import type { CopiedTable, IdentityEntry, LimitRow, Remark, ShopHead } from "../content.ts";
import type { Subject } from "../summary-facts.ts";
import { reportText } from "./source.ts";

/** Names are no longer than this in a summary. */
const LONGEST = 80;

/** Whether a part of a label says whose it is and not what, as `Engine A` and `Cylinder 2` and no `Cylinder bore`; and the engine that it names. */
const ownerOf = remembered((part): { isOwner: boolean; engine?: string | undefined } => {
  if (!saysOwner("engine", part) && !saysOwner("cylinder", part)) return { isOwner: false };
  const { characteristic, engine } = parseHeading(part, ["engine", "cylinder", "characteristic"]);
  return { isOwner: characteristic === undefined, engine };
});

const subjectIn = remembered((what): Subject => {
  const { characteristic = what.split(", ")[0]!.trim().toLowerCase(), engine } = parseHeading(what, ["engine", "cylinder", "characteristic", "position"]);
  return { characteristic: characteristic.slice(0, LONGEST) || "not named", engine: engine?.slice(0, LONGEST) };
});

/** The characteristic and the engine that a label names: `Engine A, Cylinder 2, Taper`. */
export function namedSubject(label: string): Subject {
  const parts = label.split(", ").map((text) => ({ text, ...ownerOf(text) }));
  const engine = parts.find((part) => part.engine !== undefined)?.engine;
  // Whose it is stands in parts of its own; what is left comes again and again.
  const what = parts.filter(({ isOwner }) => !isOwner).map(({ text }) => text);
  const subject = subjectIn(what.join(", "));
  return engine === undefined ? subject : { ...subject, engine: engine.slice(0, LONGEST) };
}

/** Entries stand at the head of a sheet or on one of their own; what comes further down is data. */
const MOST_ENTRIES = 40;

/** What the sheets say of whose engine it is and how it was measured, each name once. */
export function identityIn(sheets: readonly SheetSnapshot[]): IdentityEntry[] {
  const found = new Map<string, IdentityEntry>();
  for (const sheet of sheets) {
    for (const { name, entry, beside } of entriesOn(sheet)) {
      const unit = typeof entry === "number" && typeof beside === "string" ? ` ${reportText(beside)}` : "";
      if (!found.has(foldedHeading(name)) && found.size < MOST_ENTRIES)
        found.set(foldedHeading(name), { name: reportText(name).replace(/:$/, ""), text: `${reportText(entry, name)}${unit}` });
    }
  }
  return [...found.values()];
}

/** Tells the cells of those entries. */
export function isOfEntries(sheets: readonly SheetSnapshot[]): (cell: CellAddress) => boolean {
  const cells = new Set(
    sheets.flatMap((sheet) =>
      [...entriesOn(sheet)].map(({ at }) => placeName({ sheet: sheet.name, row: sheet.row + at.row, column: sheet.column + at.column })),
    ),
  );
  return (cell) => cells.has(placeName(cell));
}

/** Tables of gauges, or of what was measured with them. */
export function gaugesIn(sheets: readonly SheetSnapshot[]): CopiedTable[] {
  return tablesIn(sheets, (headings) => {
    const fields = headings.map(gaugeFieldOf);
    return fields.includes("gauge") && fields.some((field) => field !== undefined && field !== "gauge" && field !== "unit");
  }).map(({ headings, rows }) => {
    // A row without a gauge has only the name of what would be measured.
    const at = headings.findIndex((heading) => gaugeFieldOf(heading) === "gauge");
    return { headings, rows: rows.filter((row) => row[at] !== "") };
  });
}

type LimitColumns = Partial<Record<keyof LimitRow, number>>;

/** The columns of a table of limits and nothing else; where the limit itself is the heading of their names, that. */
function limitColumns(headings: readonly string[]): LimitColumns | undefined {
  const { at } = readHeadings(headings);
  if (at.value !== undefined || (at.lower === undefined && at.upper === undefined)) return undefined;
  const find = (isIt: (heading: string) => boolean): number | undefined => {
    const column = headings.findIndex(isIt);
    return column < 0 ? undefined : column;
  };
  const characteristic = at.characteristic ?? find(isOneSidedLimit);
  if (characteristic === undefined) return undefined;
  return { characteristic, lower: at.lower, upper: at.upper, unit: at.unit, near: at.near, source: find(isSource) };
}

const LIMIT_FIELDS: readonly (keyof LimitRow)[] = ["characteristic", "lower", "upper", "unit", "near", "source"];

/** Limits that the shop has typed into a table of their own, with the source that it names. */
export function limitsIn(sheets: readonly SheetSnapshot[]): LimitRow[] {
  return tablesIn(sheets, (headings) => limitColumns(headings) !== undefined).flatMap(({ headings, rows }) => {
    const at = limitColumns(headings)!;
    return rows
      .map((row) => Object.fromEntries(LIMIT_FIELDS.map((field) => [field, at[field] === undefined ? "" : row[at[field]]!])) as unknown as LimitRow)
      .filter(({ lower, upper }) => lower !== "" || upper !== "");
  });
}

/** Whether a table of limits stands on a sheet, filled or not. */
export const holdsLimits = (sheet: SheetSnapshot): boolean => tablesIn([sheet], (headings) => limitColumns(headings) !== undefined).length > 0;

/** Tables of torques and of parts, without rows in which nothing was typed beside the name and columns in which nothing stands. */
export function recordsIn(sheets: readonly SheetSnapshot[]): (CopiedTable & { title: string })[] {
  return sheets.flatMap((sheet) =>
    tablesIn([sheet], (headings) => headings.some(isOfRecord)).flatMap(({ headings, rows }) => {
      const written = rows.filter((row) => row.slice(1).some(Boolean));
      const kept = headings.map((_, c) => written.some((row) => row[c] !== ""));
      const fewer = (row: readonly string[]) => row.filter((_, c) => kept[c]);
      return written.length > 0 ? [{ title: reportText(sheet.name), headings: fewer(headings), rows: written.map(fewer) }] : [];
    }),
  );
}

/** What stands under a heading of remarks, about what the rest of its row names. Beside entries such a column explains them. */
export function remarksIn(sheets: readonly SheetSnapshot[]): Remark[] {
  return sheets.flatMap((sheet) =>
    tablesIn([sheet], (headings) => headings.some(isRemark) && !headings.some(isOfRecord) && !headings.some(isOfEntry)).flatMap(({ headings, rows }) => {
      const at = headings.findIndex(isRemark);
      return rows.flatMap((row) => {
        const about = row.filter((text, c) => c !== at && text !== "" && (c < at || !/^[-+]?[\d.,]+$/.test(text)));
        return row[at] ? [{ about: about.slice(0, MOST_ABOUT).join(", ") || reportText(sheet.name), text: row[at] }] : [];
      });
    }),
  );
}

const MOST_ABOUT = 4;

/** The head of the paper, from a sheet that is called by what it is about: names in its first column and what was typed right of them. */
export function shopIn(sheets: readonly SheetSnapshot[]): ShopHead | undefined {
  const sheet = sheets.find(({ name }) => isShopSheet(name));
  if (!sheet) return undefined;
  const typed = sheet.values.flatMap((line) => {
    const at = line.findIndex((cell) => !isBlank(cell));
    const [field, text] = [at < 0 ? undefined : shopFieldOf(String(line[at])), reportText(line[at + 1])];
    return field === undefined || text === "" ? [] : [{ field, text: field === "contact" ? `${reportText(line[at])} ${text}` : text }];
  });
  const name = typed.find(({ field }) => field === "name")?.text ?? "";
  const lines = typed.filter(({ field }) => field !== "name").map(({ text }) => text);
  return { sheet: sheet.name, name, lines };
}

/** Tables whose row of headings is wanted: from it down to the first blank row, as far as its headings reach. */
function tablesIn(sheets: readonly SheetSnapshot[], isWanted: (headings: readonly string[]) => boolean): CopiedTable[] {
  const tables: CopiedTable[] = [];
  for (const { values } of sheets) {
    for (const [r, line] of values.entries()) {
      const from = line.findIndex((cell) => !isBlank(cell));
      if (from < 0) continue;
      const to = from + lengthOfRun(line.slice(from));
      const headings = line.slice(from, to).map((cell) => (typeof cell === "string" ? reportText(cell) : ""));
      if (headings.length < 2 || headings.includes("") || !isWanted(headings)) continue;
      const rows: string[][] = [];
      for (const below of values.slice(r + 1)) {
        const cells = below.slice(from, to);
        if (cells.every(isBlank)) break;
        rows.push(cells.map((cell, c) => reportText(cell, headings[c])));
      }
      tables.push({ headings, rows });
    }
  }
  return tables;
}

/** What the workbook says its lengths are in: outright, or by the one unit of length of all its limits. */
export function unitOfLength(identity: readonly IdentityEntry[], limits: readonly LimitRow[]): string | undefined {
  const said = identity.find(({ name }) => identityFieldOf(name) === "unit");
  const own = said && unitIn(`(${said.text})`, "length");
  if (own !== undefined) return own;
  const units = new Set(limits.map(({ unit }) => unitIn(`(${unit})`, "length")).filter((unit) => unit !== undefined));
  return units.size === 1 ? [...units][0] : undefined;
}
