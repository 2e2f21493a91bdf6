import { LAYOUT_ON_SHEET, STORAGE_NAMESPACE, storageXml, storedTextsIn } from "../../workbook/storage.ts";
import type { UndoableEdit } from "./change.ts";
import { loadLayoutSheet, storeLayoutSheet } from "./layout-sheet.ts";

export interface StoredTexts {
  part: Excel.CustomXmlPart | undefined;
  texts: Map<string, string>;
}

/** What is kept lies in a part of the workbook file, so that other programs can read it there. One sync, or two where there is such a part. */
export async function storedIn(context: Excel.RequestContext): Promise<StoredTexts> {
  const parts = context.workbook.customXmlParts.getByNamespace(STORAGE_NAMESPACE);
  parts.load("items/id");
  await context.sync();
  // eslint-disable-next-line office-addins/load-object-before-read -- loading a property of the items loads the list
  const [part] = parts.items;
  if (!part) return { part: undefined, texts: new Map() };
  const xml = part.getXml();
  await context.sync();
  // eslint-disable-next-line office-addins/load-object-before-read -- the result of a call is there after a sync and has no load
  return { part, texts: storedTextsIn(xml.value) };
}

export async function loadText(context: Excel.RequestContext, key: string): Promise<string | null> {
  return key === LAYOUT_ON_SHEET ? loadLayoutSheet(context) : ((await storedIn(context)).texts.get(key) ?? null);
}

export async function storeText(context: Excel.RequestContext, key: string, value: string): Promise<UndoableEdit> {
  if (key === LAYOUT_ON_SHEET) return storeLayoutSheet(context, value);
  const kept = await storedIn(context);
  const before = new Map(kept.texts);
  kept.texts.set(key, value);
  return {
    result: undefined,
    where: "the pane's own notes in this workbook",
    order: () => store(context, kept),
    takeBack: async (again) => ((await storeAgain(again, before)) ? "" : "The note of it in the workbook may be the new one."),
  };
}

/** Puts earlier texts back where others are kept now; says whether they are there. */
export async function storeAgain(context: Excel.RequestContext, before: ReadonlyMap<string, string>): Promise<boolean> {
  const now = await storedIn(context);
  if (isSame(now.texts, before)) return true;
  if (before.size === 0) now.part?.delete();
  else store(context, { ...now, texts: new Map(before) });
  await context.sync();
  return isSame((await storedIn(context)).texts, before);
}

const isSame = (a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): boolean =>
  a.size === b.size && [...a].every(([key, text]) => b.get(key) === text);

/** Puts the texts back with the next sync. */
export function store(context: Excel.RequestContext, { part, texts }: StoredTexts): void {
  if (part) part.setXml(storageXml(texts));
  else context.workbook.customXmlParts.add(storageXml(texts));
}
