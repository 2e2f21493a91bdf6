import { Analysis } from "../../check/analysis.ts";
import { checkAnalysed } from "../../check/check-workbook.ts";
import { type JudgedRow, JudgedRows } from "../../check/finding.ts";
import { entriesOn } from "../../layout/entries.ts";
import type { Mapping } from "../../layout/mapping.ts";
import { type CellAddress, placeName } from "../../workbook/address.ts";
import type { SheetHost, WorkbookSnapshot } from "../../workbook/port.ts";
import type { ReportInput, SheetContent } from "../content.ts";
import { pictureNote } from "../picture.ts";
import { drawnBores } from "./bores.ts";
import { changesIn, facesIn, surfacesIn, testsIn, tracesIn, turnsIn } from "./drawables.ts";
import { gaugesIn, holdsLimits, identityIn, isOfEntries, limitsIn, recordsIn, remarksIn, shopIn, unitOfLength } from "./identity.ts";
import { mappedContent } from "./mapped.ts";
import { measuredIn, settingsIn } from "./measured.ts";
import { Source } from "./source.ts";

/** A workbook checked for a report: plain data that can be handed to the thread that writes it. */
export function reportInput(snapshot: WorkbookSnapshot, mapping?: Mapping, notes: readonly string[] = []): ReportInput {
  const analysis = new Analysis(snapshot);
  const judged = new JudgedRows();
  const result = checkAnalysed(analysis, mapping, judged.take);
  const { rows, counts } = judged;
  return { name: snapshot.name, result, judged: { rows, counts }, content: gather(analysis, rows, mapping), notes };
}

/**
 * Looks in a workbook that has been looked through for what a report shows beside its verdicts: whose engine, which gauges,
 * whose limits, and what can be drawn, by our functions first and then by a layout of the shop's own.
 */
export function gather(analysis: Analysis, judged: readonly JudgedRow[], mapping?: Mapping): SheetContent {
  const { book, calls } = analysis;
  const { sheets } = book;
  const identity = identityIn(sheets);
  const limits = limitsIn(sheets);
  const source = new Source(analysis, judged, unitOfLength(identity, limits));
  const bores = drawnBores(source, calls);
  const tests = testsIn(source, calls);
  const mapped = mapping && mappedContent(analysis.mapped(mapping), (cell) => source.isDrawn(cell));
  const judgedOn = new Set(judged.map(({ cell }) => cell.sheet));
  const unjudged = sheets.filter(({ name }) => !judgedOn.has(name));
  const [ofEntries, ofLimits] = [unjudged.filter((sheet) => !entriesOn(sheet).next().done), unjudged.filter(holdsLimits)].map(
    (some) => new Set(some.map(({ name }) => name)),
  ) as [Set<string>, Set<string>];
  const isEntry = isOfEntries(sheets);
  const settings = settingsIn(analysis, (cell) => ofEntries.has(cell.sheet) && !isEntry(cell));
  const elsewhere = new Set(settings.map(({ cell }) => placeName(cell)));
  const isElsewhere = (cell: CellAddress): boolean => ofLimits.has(cell.sheet) || isEntry(cell) || elsewhere.has(placeName(cell));
  return {
    identity: [...identity, ...settings.map(({ name, text }) => ({ name, text }))],
    gauges: gaugesIn(sheets),
    limits: limits.length > 0 ? limits : (mapped?.limits ?? []),
    bores: [...bores, ...(mapped?.bores ?? [])],
    traces: tracesIn(source, calls),
    turns: turnsIn(source, calls),
    faces: facesIn(source, calls),
    surfaces: surfacesIn(source, calls),
    tests: [...tests, ...(mapped?.tests ?? [])],
    changes: changesIn(source, calls),
    measured: measuredIn(analysis, judged, mapping ? analysis.mapped(mapping).readings : [], isElsewhere),
    records: recordsIn(sheets),
    remarks: remarksIn(sheets),
    shop: shopIn(sheets),
  };
}

/** The same with the picture of the shop's sheet, where the host has one; and why it does not stand on the paper, where it does not. */
export async function withPicture(content: SheetContent, host: Pick<SheetHost, "firstPicture">): Promise<{ content: SheetContent; notes: string[] }> {
  const picture = content.shop && (await host.firstPicture(content.shop.sheet));
  if (!content.shop || !picture) return { content, notes: [] };
  const shop = { ...content.shop, picture };
  const note = pictureNote(shop);
  return { content: { ...content, shop }, notes: note === undefined ? [] : [note] };
}
