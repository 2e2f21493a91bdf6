import type { GridPicture } from "../hosts/bench/pictures.ts";
import { FILE_LIMITS } from "../xlsx/file-limits.ts";
import { relationsOf } from "../xlsx/read/parts.ts";
import { base64Of } from "../xlsx/read/pictures.ts";
import type { Zip } from "../xlsx/zip.ts";

/** Kinds of picture that a browser shows and the grid writes again. */
const KINDS: Readonly<Record<string, string>> = { png: "image/png", jpg: "image/jpeg", jpeg: "image/jpeg", gif: "image/gif", webp: "image/webp" };

/** Addresses of the picture files of a workbook by their names; an empty one for a kind that is not shown. */
export type Addresses = ReadonlyMap<string, string>;

/** Each picture file as an address of its own, which holds the file. */
export function addressesIn(zip: Zip): Addresses {
  const files = zip.spelledNames().filter((name) => /^xl\/media\//i.test(name));
  return new Map(files.map((name) => [name, addressOf(name, zip.read(name)!)]));
}

function addressOf(name: string, bytes: Uint8Array): string {
  const kind = KINDS[name.slice(name.lastIndexOf(".") + 1).toLowerCase()];
  return kind === undefined ? "" : `data:${kind};base64,${base64Of(bytes)}`;
}

/** A picture of a sheet as the grid reads it. */
interface Figure {
  id: string;
  tag: string;
  col: number;
  row: number;
  width: number;
  height: number;
  data?: Partial<GridPicture>;
}

/** The pictures among the figures that the grid has read on a sheet, with the words that it leaves out. Ids are the workbook's, not the sheet's. */
export function picturesAmong(figures: readonly unknown[], sheetId: string, words: readonly Words[]): Figure[] {
  const pictures = (figures as Figure[]).filter(({ tag, data }) => tag === "image" && data?.path);
  return pictures.map((figure, i) => {
    const { width, height, col, row, data } = figure;
    const own = words.find((one) => one.col === col && one.row === row && one.address === data!.path);
    return {
      ...figure,
      id: `${sheetId}-picture${i + 1}`,
      data: { ...data, size: { width, height }, name: own?.name ?? `Picture ${i + 1}`, description: own?.description ?? "" },
    };
  });
}

/** How a picture is called and what it shows, with the place and the file by which it is known again. */
export interface Words {
  col: number;
  row: number;
  address: string;
  name: string;
  description: string;
}

const ANCHOR = /<(?:\w+:)?(?:one|two)CellAnchor\b[\s\S]*?<\/(?:\w+:)?(?:one|two)CellAnchor>/g;
const attribute = (xml: string, name: string): string | undefined => new RegExp(`\\b${name}="([^"]*)"`).exec(xml)?.[1];
const number = (xml: string, name: string): number => Number(new RegExp(`<(?:\\w+:)?${name}>(\\d+)<`).exec(xml)?.[1]);

/** Words of all pictures in a workbook file (ECMA-376 part 1, 20.5.2.25 and 20.1.2.2.8). */
export function wordsIn(zip: Zip, addresses: Addresses): Words[] {
  const drawings = zip.spelledNames().filter((name) => /^xl\/drawings\/[^/]+\.xml$/i.test(name));
  return drawings.flatMap((name) => {
    const files = new Map(relationsOf(zip, name, FILE_LIMITS).map(({ id, target }) => [id, target]));
    const xml = new TextDecoder().decode(zip.read(name));
    return [...xml.matchAll(ANCHOR)].flatMap(([anchor]) => {
      const address = addresses.get(files.get(attribute(anchor, "embed") ?? "") ?? "");
      if (!address) return [];
      const properties = /<(?:\w+:)?cNvPr\b[^>]*>/.exec(anchor)?.[0] ?? "";
      const words = { name: plain(attribute(properties, "name")), description: plain(attribute(properties, "descr")) };
      return [{ col: number(anchor, "col"), row: number(anchor, "row"), address, ...words }];
    });
  });
}

/** Text of an attribute, read by the browser; `<` cannot stand in one. */
const plain = (text = ""): string => new DOMParser().parseFromString(`<x t="${text}"/>`, "application/xml").documentElement.getAttribute("t") ?? "";
