/** A test's id says in which file it stands, so that of many files only those that matter need to be loaded. */
const BETWEEN = " › ";

export const idOf = (file: string, name: string): string => `${file}${BETWEEN}${name}`;

/** The names of the tests by their files. */
export function byFile(ids: readonly string[]): Map<string, string[]> {
  const files = new Map<string, string[]>();
  for (const id of ids) {
    const at = id.indexOf(BETWEEN);
    const file = id.slice(0, at);
    const names = files.get(file) ?? [];
    files.set(file, names);
    names.push(id.slice(at + BETWEEN.length));
  }
  return files;
}

/** Milliseconds of work from which a file is dear: what all functions stand on is reached by all tests. */
const DEAR = 400;

/**
 * Test files in the order in which a change of `source` is noticed at the least cost: its own, its
 * folder's and those of its whole area, the others, and of each the quick ones first. Dear ones are
 * not run at all, but for its own, those of its folder where it has none of its own, and those of the whole area. `costs` are milliseconds, as far as known.
 */
export function likelyFirst(files: Iterable<string>, source: string, costs: ReadonlyMap<string, number>): string[] {
  const own = source.replaceAll("\\", "/").replace(/^.*\/src\//, "test/");
  const folder = own.slice(0, own.lastIndexOf("/") + 1);
  const area = /^test\/\w+\//.exec(own)?.[0];
  const isNear = (file: string) => file.startsWith(folder) || file.slice(0, file.lastIndexOf("/") + 1) === area;
  const all = [...files];
  const ownTest = own.replace(/\.ts$/, ".test.ts");
  const hasOwn = all.includes(ownTest);
  const distance = (file: string) => (file === ownTest ? 0 : isNear(file) ? 1 : 2);
  const cost = (file: string) => costs.get(file) ?? 0;
  const isForAll = (file: string) => area !== folder && file.slice(0, file.lastIndexOf("/") + 1) === area;
  const isAtHand = (file: string) => file === ownTest || cost(file) <= DEAR || isForAll(file) || (!hasOwn && file.startsWith(folder));
  return all.filter(isAtHand).sort((a, b) => distance(a) - distance(b) || cost(a) - cost(b));
}
