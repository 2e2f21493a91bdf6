import type { Zip } from "../sheet/xlsx/zip.ts";
import type { Engine } from "./load-grid.ts";
import type { Addresses } from "./pictures.ts";

/** Workbook data of the engine, of which only this much is of interest here. */
export interface EngineData {
  version: string;
  sheets: EngineSheet[];
  namedRanges: Record<string, string>;
  [key: string]: unknown;
}

export interface EngineSheet {
  id: string;
  name: string;
  cells: Record<string, string>;
  colNumber: number;
  rowNumber: number;
  figures: unknown[];
  isVisible: boolean;
  [key: string]: unknown;
}

/** The engine looks a row up among all rows, which takes too long in a sheet of more than so many. */
const MOST_ROWS = 20_000;

const DOCTYPE = /<!DOCTYPE/i;

/**
 * How a workbook looks, as the engine reads it: fonts, fills, borders, number formats, widths, merged
 * cells, conditional formats, validation. `undefined` when the engine cannot read it or would take
 * too long; what the cells hold is read apart, so that nothing of it is lost with the looks.
 */
export function lookOf(engine: Engine, zip: Zip, addresses: Addresses, rows: number): EngineData | undefined {
  if (rows > MOST_ROWS) return undefined;
  const files: Record<string, unknown> = {};
  for (const name of zip.spelledNames()) {
    if (name.includes("media/image")) files[name] = { imageSrc: addresses.get(name) ?? "" };
    if (!/\.(?:xml|rels)$/.test(name)) continue;
    const xml = new TextDecoder().decode(zip.read(name));
    if (DOCTYPE.test(xml)) return undefined;
    files[name] = xml;
  }
  try {
    return engine.load(files as never) as unknown as EngineData;
  } catch {
    return undefined;
  }
}
