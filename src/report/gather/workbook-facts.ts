import type { Finding, JudgedRow } from "../../check/finding.ts";
import { type CallExpression, ownCalls, ownName, parseFormula } from "../../formula/parse.ts";
import { specByName } from "../../functions/index.ts";
import { CHARACTERISTICS } from "../../vocabulary/characteristics.ts";
import { DAY_IDENTITY, ENGINE_IDENTITY, type IdentityField, identityFieldOf } from "../../vocabulary/identity.ts";
import { unitIn } from "../../vocabulary/units.ts";
import type { CellAddress } from "../../workbook/address.ts";
import type { SheetSnapshot } from "../../workbook/port.ts";
import type { IdentityEntry, LimitRow } from "../content.ts";
import { type Facts, KeptSizes, type Subject, Tallies } from "../summary-facts.ts";
import { identityIn, limitsIn, namedSubject, unitOfLength } from "./identity.ts";

/** What a summary of many workbooks keeps of one. */
export function factsOf(sheets: readonly SheetSnapshot[], findings: readonly Finding[], judged: readonly JudgedRow[]): Facts {
  const identity = identityIn(sheets);
  const limits = limitsIn(sheets);
  const tallies = new Tallies();
  const sizes = new KeptSizes();
  const derived = derivedIn(sheets);
  const subjectAt = ({ label, cell }: Pick<Finding, "label" | "cell">): Subject => {
    const characteristic = derived(cell);
    return characteristic === undefined ? namedSubject(label) : { ...namedSubject(label), characteristic };
  };
  for (const finding of findings) tallies.add(finding.kind, subjectAt(finding));
  const length = unitOfLength(identity, limits);
  for (const row of judged) {
    const { label, value, lower, upper, margin, verdict } = row;
    if (typeof value !== "number" || margin === null) continue;
    const subject = subjectAt(row);
    const unit = unitIn(label, "length") ?? unitIn(label, "pressure") ?? unitByLimits(subject.characteristic, limits, length);
    sizes.add({ ...subject, unit, value, lower, upper, isOutside: verdict === "over" || verdict === "under" }, margin);
  }
  return { engine: engineIn(identity), day: dayIn(identity), tallies: tallies.all, sizes: sizes.all, more: tallies.more + sizes.more };
}

/**
 * What a cell's own formula comes to, where it is one of ours that declares it: beside the word compression a difference between
 * cylinders is none of their pressures.
 */
function derivedIn(sheets: readonly SheetSnapshot[]): (cell: CellAddress) => string | undefined {
  const byName = new Map(sheets.map((sheet) => [sheet.name, sheet]));
  return ({ sheet, row, column }) => {
    const page = byName.get(sheet);
    const formula = page?.formulas[row - page.row]?.[column - page.column];
    const tree = typeof formula === "string" ? parseFormula(formula) : undefined;
    const { derives } = (tree && ownCalls(tree)[0] === tree && specByName.get(ownName(tree as CallExpression)!)) || {};
    return derives?.length === 1 ? derives[0]!.characteristic : undefined;
  };
}

/** The unit beside the limit that the shop has typed for it. */
function unitByLimits(characteristic: string, limits: readonly LimitRow[], length: string | undefined): string | undefined {
  const own = limits.filter((limit) => namedSubject(limit.characteristic).characteristic === characteristic);
  const units = new Set(own.map(({ unit }) => unit).filter(Boolean));
  if (units.size === 1) return [...units][0];
  if (!Object.hasOwn(CHARACTERISTICS, characteristic)) return undefined;
  const { kind } = CHARACTERISTICS[characteristic]!;
  return kind === "length" ? length : kind === "percent" ? "%" : undefined;
}

/** The entries of these fields, in the order of the fields. */
const entriesOf = (identity: readonly IdentityEntry[], fields: readonly IdentityField[]): IdentityEntry[] =>
  fields.flatMap((field) => identity.filter(({ name }) => identityFieldOf(name) === field));

const engineIn = (identity: readonly IdentityEntry[]): string | undefined => entriesOf(identity, ENGINE_IDENTITY)[0]?.text;

/** A day is one that the sheet keeps as a date, or that is written year first. */
function dayIn(identity: readonly IdentityEntry[]): string | undefined {
  for (const { text } of entriesOf(identity, DAY_IDENTITY)) {
    const [day] = /^\d{4}-\d{2}-\d{2}/.exec(text) ?? [];
    if (day !== undefined && !Number.isNaN(Date.parse(day))) return day;
  }
  return undefined;
}
