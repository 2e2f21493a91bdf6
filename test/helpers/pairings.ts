/** Every way to give each row its own column; with more rows than columns the rest of the rows get −1. Earliest columns first. */
export function pairings(rows: number, columns: number): number[][] {
  const found: number[][] = [];
  const taken = new Set<number>();
  const made: number[] = [];
  const spareRows = Math.max(rows - columns, 0);
  const extend = () => {
    if (made.length === rows) {
      found.push([...made]);
      return;
    }
    for (let column = 0; column < columns; column++) {
      if (taken.has(column)) continue;
      taken.add(column);
      made.push(column);
      extend();
      made.pop();
      taken.delete(column);
    }
    if (made.filter((column) => column < 0).length >= spareRows) return;
    made.push(-1);
    extend();
    made.pop();
  };
  extend();
  return found;
}

/** The first of the pairings that is least by `keys`, the first key first; −1 and forbidden pairs are for `keys` to weigh. */
export function leastBy(all: readonly number[][], keys: (pairing: readonly number[]) => number[]): { pairing: number[]; keys: number[] } {
  let best = { pairing: all[0]!, keys: keys(all[0]!) };
  for (const pairing of all) {
    const weighed = keys(pairing);
    const at = weighed.findIndex((key, i) => key !== best.keys[i]);
    if (at >= 0 && weighed[at]! < best.keys[at]!) best = { pairing, keys: weighed };
  }
  return best;
}
