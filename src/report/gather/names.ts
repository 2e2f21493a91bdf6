/** Names of the rows and columns of a block, from what the sheet calls its cells. */
export interface BlockNames {
  /** What all cells have in common: `Engine A, Cylinder 2`. */
  shared: string;
  rows: string[];
  columns: string[];
}

/** Takes names such as `Cylinder 2, top, Thrust` or `Cylinder 2, Top thrust` apart into whose they are, which row and which column. */
export function namesOf(labels: readonly (readonly string[])[]): BlockNames {
  const pieces = labels.map((line) => line.map((label) => label.split(", ").filter(Boolean)));
  const all = pieces.flat();
  const isSingle = all.length <= 1;
  const depth = isSingle ? (all[0]?.length ?? 0) : sharedDepth(all);
  const rest = pieces.map((line) => line.map((own) => wordsIn(own.slice(depth).join(" "))));
  const everywhere = new Set(rest.flat().reduce((left, own) => left.filter((word) => own.includes(word)), rest[0]?.[0] ?? []));
  const columnCount = labels[0]?.length ?? 0;
  const rows = rest.map((line) => wordsOfAll(line, everywhere));
  const columns = Array.from({ length: columnCount }, (_, c) =>
    wordsOfAll(
      rest.map((line) => line[c]!),
      everywhere,
    ),
  );
  return {
    shared: all[0]?.slice(0, depth).join(", ") ?? "",
    rows: labels.length > 1 ? rows : rows.map(() => ""),
    columns: columnCount > 1 ? columns : columns.map(() => ""),
  };
}

function sharedDepth(all: readonly (readonly string[])[]): number {
  const shortest = Math.min(...all.map((own) => own.length));
  let depth = 0;
  while (depth < shortest && all.every((own) => own[depth] === all[0]![depth])) depth++;
  return depth;
}

const wordsIn = (text: string): string[] => text.split(/[\s,]+/).filter(Boolean);

/** Words that stand in all of these, without those that stand everywhere. Compared without regard to capitals. */
function wordsOfAll(lines: readonly (readonly string[])[], everywhere: ReadonlySet<string>): string {
  const [first = [], ...others] = lines;
  return first.filter((word) => !everywhere.has(word) && others.every((own) => own.some((other) => other.toLowerCase() === word.toLowerCase()))).join(" ");
}

/** Names that tell the rows apart, or numbers in their place. */
export function distinct(names: readonly string[], word: string): string[] {
  const isTelling = names.every(Boolean) && new Set(names).size === names.length;
  return isTelling ? [...names] : names.map((_, i) => `${word} ${i + 1}`);
}
