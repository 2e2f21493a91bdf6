import type { Analysis } from "../../check/analysis.ts";
import { judges } from "../../check/candidates.ts";
import type { JudgedRow } from "../../check/finding.ts";
import { isBlank } from "../../core/cell.ts";
import { indexOfRole } from "../../core/define.ts";
import { groupedBy } from "../../core/grouped.ts";
import { capitalised } from "../../core/words.ts";
import { numberText } from "../../drawings/text.ts";
import { references } from "../../formula/parse.ts";
import { argumentArea } from "../../formula/precedents.ts";
import { cellsOf } from "../../formula/workbook-cells.ts";
import type { MappedReading } from "../../layout/mapped-readings.ts";
import { fieldOf, foldedHeading, labelFrom, saysOwner } from "../../vocabulary/headings.ts";
import { isOfEntry } from "../../vocabulary/identity.ts";
import { positionText } from "../../vocabulary/parse-heading.ts";
import { type CellAddress, keyOf, placeName } from "../../workbook/address.ts";
import type { IdentityEntry, MeasuredPart, MeasuredTable } from "../content.ts";
import { numberIn, reportText } from "./source.ts";

/** A number that belongs into the tables: what the sheet calls it, and the verdicts on it. */
interface Found {
  cell: CellAddress;
  label: string;
  value: number | string | null;
  judged: JudgedRow[];
}

/**
 * Readings and judged results of every sheet, one part a sheet: the cylinders (mains, lobes) across, what was measured of each
 * down. `leftOut` are cells that stand elsewhere in the report: engine data, limits.
 */
export function measuredIn(
  analysis: Analysis,
  judged: readonly JudgedRow[],
  mapped: readonly MappedReading[],
  leftOut: (cell: CellAddress) => boolean,
): MeasuredPart[] {
  const found = new Map<string, Found>();
  for (const row of judged) {
    // Several results can be worked out from readings that begin in one cell.
    const known = found.get(`${placeName(row.cell)}|${row.label}`);
    if (known) known.judged.push(row);
    else found.set(`${placeName(row.cell)}|${row.label}`, { cell: row.cell, label: row.label, value: row.value, judged: [row] });
  }
  const add = (cell: CellAddress, label: string): void => {
    const value = numberIn(analysis.book.value(cell));
    const key = `${placeName(cell)}|${label}`;
    if (value !== null && analysis.book.formula(cell) === null && !leftOut(cell) && !found.has(key)) found.set(key, { cell, label, value, judged: [] });
  };
  for (const { cell, engine, cylinder, characteristic, places } of mapped)
    add(cell, labelFrom({ engine, cylinder, characteristic, position: positionText(places) }));
  const known = new Set(mapped.map(({ cell }) => placeName(cell)));
  for (const cell of readingsOf(analysis)) if (!known.has(placeName(cell))) add(cell, analysis.labels.of(cell));
  const bySheet = groupedBy([...found.values()], ({ cell }) => cell.sheet);
  return analysis.book.sheets.flatMap(({ name }) => {
    const own = (bySheet.get(name) ?? []).sort((a, b) => keyOf(a.cell) - keyOf(b.cell));
    const tables = tablesOf(own);
    return tables.length > 0 ? [{ title: name, tables }] : [];
  });
}

/** Cells that calls of ours work with; of those that judge only what they judge, for limits stand elsewhere, and no profile of a stylus: thousands of heights are drawn. */
function* readingsOf({ calls }: Analysis): Generator<CellAddress> {
  for (const call of calls) {
    const only = judges(call) ? indexOfRole(call.spec, "value") : undefined;
    const { draws } = call.spec;
    const drawn = draws?.kind === "surface" ? draws.profile : undefined;
    for (const [i, { name }] of call.spec.inputs.entries()) {
      if ((only !== undefined && i !== only) || name === drawn) continue;
      for (const node of references(call.args[i] ?? undefined)) {
        const area = argumentArea(node, call.context);
        if (area) yield* cellsOf(area);
      }
    }
  }
}

/**
 * Numbers that functions work with and that stand like entries, each with its name left of it and its unit right of it, on
 * sheets that hold entries and on which nothing is judged: a gasket's thickness.
 */
export function settingsIn(analysis: Analysis, isOfSettings: (cell: CellAddress) => boolean): (IdentityEntry & { cell: CellAddress })[] {
  const { book } = analysis;
  const found = new Map<string, IdentityEntry & { cell: CellAddress }>();
  for (const cell of readingsOf(analysis)) {
    if (!isOfSettings(cell) || cell.column === 0) continue;
    const beside = (by: number) => book.value({ ...cell, column: cell.column + by });
    const [name, number, unit] = [beside(-1), numberIn(book.value(cell)), beside(1)];
    const isAlone = typeof name === "string" && (cell.column === 1 || isBlank(beside(-2))) && typeof unit !== "number";
    if (isAlone && number !== null && book.formula(cell) === null)
      found.set(placeName(cell), { cell, name: reportText(name), text: [numberText(number), reportText(unit)].filter(Boolean).join(" ") });
  }
  return [...found.values()];
}

/** A name that ends in a number or a letter of its own: `Cylinder 2`, `Main 1`, `Engine A`. */
const NUMBERED = /^(\p{L}.*?)\s+(?:\d{1,3}|\p{Lu})$/u;

interface Owned {
  kind: string;
  owner: string;
  name: string;
}

/** Whose a number is, of which kind, and what is left of its name. */
function ownerOf(label: string): Owned {
  const parts = label.split(", ");
  const isNumbered = NUMBERED.test(parts[0]!);
  // `Engine A, Cylinder 2` is one owner.
  const depth = isNumbered && saysOwner("engine", parts[0]!) && NUMBERED.test(parts[1] ?? "") ? 2 : Number(isNumbered);
  const rest = parts.slice(depth).filter((part, i, all) => !(i > 0 && i === all.length - 1 && saysNothing(part)));
  const name = rest.join(", ") || "reading";
  return {
    kind: parts
      .slice(0, depth)
      .map((part) => foldedHeading(NUMBERED.exec(part)![1]!))
      .join(", "),
    owner: parts.slice(0, depth).map(capitalised).join(", "),
    name: capitalised(name),
  };
}

/** Headings that only say that something stands below them. */
const saysNothing = (heading: string): boolean => fieldOf(heading) === "value" || isOfEntry(heading);

interface Kind {
  owners: Set<string>;
  rows: Map<string, Map<string, Found>>;
}

/** A table for each kind of owner; what belongs to no one of them stands in one column, lists of one name in as many as they are long. */
function tablesOf(found: readonly Found[]): MeasuredTable[] {
  const byKind = new Map<string, Kind>();
  const owned = found.map((one) => ({ one, ...ownerOf(one.label) }));
  const ownersOf = new Map<string, Set<string>>();
  for (const { kind, owner } of owned) ownersOf.set(kind, (ownersOf.get(kind) ?? new Set()).add(owner));
  const times = new Map<string, number>();
  for (const { one, ...own } of owned) {
    const { kind, owner, name } = ownersOf.get(own.kind)!.size > 1 ? own : withinOnly(own);
    const known = byKind.get(kind);
    const table: Kind = known ?? { owners: new Set(), rows: new Map() };
    if (!known) byKind.set(kind, table);
    const row = table.rows.get(name) ?? new Map<string, Found>();
    table.rows.set(name, row);
    const key = JSON.stringify([kind, name, owner]);
    const time = (times.get(key) ?? 0) + 1;
    times.set(key, time);
    const place = time === 1 ? owner : owner === "" ? String(time) : `${owner} (${time})`;
    row.set(place, one);
    table.owners.add(place);
  }
  return [...byKind.values()].flatMap(({ owners, rows }) => {
    const isList = owners.has("2") && owners.has("");
    const measured = [...owners].filter((owner) => [...rows].some(([name, cells]) => cells.has(owner) && !isPlace(name)));
    if (measured.length === 0) return [];
    return [
      {
        owners: measured.map((owner) => (isList && owner === "" ? "1" : owner)),
        rows: [...rows].map(([name, cells]) => ({ name, cells: measured.map((owner) => cells.get(owner) ?? null) })),
      },
    ];
  });
}

/** Of a single camshaft its bearings are the owners, where names are numbered so. */
function withinOnly(own: Owned): Owned {
  const { kind, owner, name } = own;
  const at = name.indexOf(", ");
  const first = name.slice(0, at);
  if (owner === "" || at < 0 || !NUMBERED.test(first)) return own;
  return { kind: `${kind}, ${foldedHeading(NUMBERED.exec(first)![1]!)}`, owner: first, name: name.slice(at + 2) };
}

/** Of numbers that only say where the others were read. */
const isPlace = (name: string): boolean => ["angle", "crank angle"].includes(foldedHeading(name));
