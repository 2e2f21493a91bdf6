/** The picture and the table of the folders of `src` for the contributors' page, from the list of what each may import. */
import type { Folder } from "./allowed-imports.ts";

type Folders = Readonly<Record<string, Folder>>;

/** All that a folder rests on, through others too. */
function below(folder: string, folders: Folders): Set<string> {
  const all = new Set<string>();
  const add = (one: string): void => {
    for (const next of folders[one]!.imports) {
      if (all.has(next)) continue;
      all.add(next);
      add(next);
    }
  };
  add(folder);
  return all;
}

/** The arrows that do not already follow from others: with all of them nobody could follow one. */
export function drawnArrows(folders: Folders): [from: string, to: string][] {
  return Object.entries(folders).flatMap(([from, { imports }]) => {
    const implied = new Set(imports.flatMap((one) => [...below(one, folders)]));
    return imports.filter((to) => !implied.has(to)).map((to): [string, string] => [from, to]);
  });
}

const idOf = (folder: string): string => folder.replaceAll("/", "_");

/** The highest first, as the picture has them. */
export function layersText(folders: Folders): string {
  const highestFirst = Object.entries(folders).reverse();
  const arrows = highestFirst.reduce((sum, [, { imports }]) => sum + imports.length, 0);
  const drawn = drawnArrows(folders);
  const boxes = highestFirst.map(([name]) => `  ${idOf(name)}["${name}"]`);
  const lines = drawn.map(([from, to]) => `  ${idOf(from)} --> ${idOf(to)}`).reverse();
  const rows = highestFirst.map(([name, { holds, imports }]) => `| ${name} | ${holds} | ${imports.join(", ") || "–"} |`);
  return [
    ...["```mermaid", "flowchart TB", ...boxes, ...lines, "```", ""],
    `Of ${arrows} arrows the picture has the ${drawn.length} that do not follow from others; the table has all:`,
    "",
    ...["| folder | holds | imports |", "|---|---|---|", ...rows, ""],
  ].join("\n");
}
