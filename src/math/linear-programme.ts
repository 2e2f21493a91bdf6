/** Gains are scaled to about 1 by the caller; anything below this is rounding. */
const TINY = 1e-11;

export interface Optimum {
  /** The price of each row: the solution of the dual programme. */
  prices: readonly number[];
  /** The columns with a share above nothing. */
  support: readonly number[];
}

/**
 * Largest Σ gain·share over shares ≥ 0 with Σ column·share = totals, from a basis (one column for each
 * row) whose shares are known to be ≥ 0. The gains must not grow without end.
 *
 * The small linear programmes of fitting circles and planes, by the simplex method: many columns, three or
 * four rows. A column enters by its lowest index and leaves by its lowest index (Bland), which cannot go
 * round for ever; equally spaced readings make that a real danger.
 */
export function maximise(columns: readonly (readonly number[])[], gains: readonly number[], totals: readonly number[], start: readonly number[]): Optimum {
  const basis = [...start];
  for (;;) {
    const chosen = basis.map((i) => columns[i]!);
    const prices = solve(
      chosen,
      basis.map((i) => gains[i]!),
    );
    const rows = totals.map((_, r) => chosen.map((column) => column[r]!));
    const shares = solve(rows, totals);
    const entering = columns.findIndex((column, i) => gains[i]! - dot(prices, column) > TINY);
    if (entering < 0) return { prices, support: basis.filter((_, b) => shares[b]! > TINY) };
    basis[leavingPlace(basis, shares, solve(rows, columns[entering]!))] = entering;
  }
}

/** Where the entering column presses a share to nothing first; of equals, the lowest column. */
function leavingPlace(basis: readonly number[], shares: readonly number[], rates: readonly number[]): number {
  let place = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let b = 0; b < basis.length; b++) {
    if (rates[b]! <= TINY) continue;
    const ratio = Math.max(0, shares[b]!) / rates[b]!;
    if (ratio < least - TINY || (ratio < least + TINY && basis[b]! < basis[place]!)) place = b;
    least = Math.min(least, ratio);
  }
  return place;
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);

/** Solves matrix · x = right by elimination with row exchange; the matrix must not be singular, and that of a basis never is. */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, r) => [...row, right[r]!]);
  const size = rows.length;
  for (let c = 0; c < size; c++) {
    let pivot = c;
    for (let r = c + 1; r < size; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[pivot]![c]!)) pivot = r;
    [rows[c], rows[pivot]] = [rows[pivot]!, rows[c]!];
    for (let r = 0; r < size; r++) {
      if (r === c) continue;
      const share = rows[r]![c]! / rows[c]![c]!;
      for (let k = c; k <= size; k++) rows[r]![k]! -= share * rows[c]![k]!;
    }
  }
  return rows.map((row, r) => row[size]! / row[r]!);
}
