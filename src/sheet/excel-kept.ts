import { KEPT_NAMESPACE, keptFrom, keptXml } from "./kept.ts";

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

export async function keepText(context: Excel.RequestContext, key: string, value: string): Promise<void> {
  const kept = await keptIn(context);
  kept.texts.set(key, value);
  keep(context, kept);
  await context.sync();
}

/** Puts the texts back with the next sync. */
export function keep(context: Excel.RequestContext, { part, texts }: Kept): void {
  if (part) part.setXml(keptXml(texts));
  else context.workbook.customXmlParts.add(keptXml(texts));
}
