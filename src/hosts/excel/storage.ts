import { KEPT_NAMESPACE, keptFrom, keptXml } from "../../workbook/storage.ts";
import type { Change } from "./change.ts";

export interface Kept {
  part: Excel.CustomXmlPart | undefined;
  texts: Map<string, string>;
}

/** What is kept lies in a part of the workbook file, so that other programs can read it there. One sync, or two where there is such a part. */
export async function keptIn(context: Excel.RequestContext): Promise<Kept> {
  const parts = context.workbook.customXmlParts.getByNamespace(KEPT_NAMESPACE);
  parts.load("items/id");
  await context.sync();
  // eslint-disable-next-line office-addins/load-object-before-read -- loading a property of the items loads the list
  const [part] = parts.items;
  if (!part) return { part: undefined, texts: new Map() };
  const xml = part.getXml();
  await context.sync();
  // eslint-disable-next-line office-addins/load-object-before-read -- the result of a call is there after a sync and has no load
  return { part, texts: keptFrom(xml.value) };
}

export async function recallText(context: Excel.RequestContext, key: string): Promise<string | null> {
  return (await keptIn(context)).texts.get(key) ?? null;
}

export async function keepText(context: Excel.RequestContext, key: string, value: string): Promise<Change> {
  const kept = await keptIn(context);
  const before = new Map(kept.texts);
  kept.texts.set(key, value);
  return {
    result: undefined,
    where: "the pane's own notes in this workbook",
    order: () => keep(context, kept),
    takeBack: async (again) => ((await keepAgain(again, before)) ? "" : "The note of it in the workbook may be the new one."),
  };
}

/** Puts earlier texts back where others are kept now; says whether they are there. */
export async function keepAgain(context: Excel.RequestContext, before: ReadonlyMap<string, string>): Promise<boolean> {
  const now = await keptIn(context);
  if (isSame(now.texts, before)) return true;
  if (before.size === 0) now.part?.delete();
  else keep(context, { ...now, texts: new Map(before) });
  await context.sync();
  return isSame((await keptIn(context)).texts, before);
}

const isSame = (a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): boolean =>
  a.size === b.size && [...a].every(([key, text]) => b.get(key) === text);

/** Puts the texts back with the next sync. */
export function keep(context: Excel.RequestContext, { part, texts }: Kept): void {
  if (part) part.setXml(keptXml(texts));
  else context.workbook.customXmlParts.add(keptXml(texts));
}
