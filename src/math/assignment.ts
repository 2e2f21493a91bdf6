import { linearSumAssignment } from "linear-sum-assignment";

/**
 * What it costs to pair a row with a column: whole numbers, so that ties are true ties, and
 * `Infinity` for a pair that must not be made. Rows of one length.
 */
export type Costs = readonly (readonly number[])[];

/**
 * Pairs rows with columns one to one, as many as the shorter side has, at the least sum of costs.
 * With several tables the first decides, the second decides between the pairings that the first
 * leaves equal, and so on; what is still equal then goes to the earliest column for the first row,
 * for the second row, … so that the answer depends on the costs alone.
 *
 * Exact: the shortest augmenting path method of Jonker and Volgenant (library). Its dual values
 * show which pairs the best pairings are made of, and only these go on to the next table.
 *
 * @returns the column of each row, −1 for a row left over; `undefined` when the forbidden pairs leave no pairing.
 */
export function assign(tables: readonly Costs[]): number[] | undefined {
  const columns = tables[0]![0]!.length;
  let best: Best | undefined;
  for (const costs of tables) {
    best = solve(best ? among(best, padded(costs)) : padded(costs));
    if (!best) return undefined;
  }
  return earliest(best!).map((column) => (column < columns ? column : -1));
}

/** As `assign`, but first makes the costliest single pair as cheap as can be, and only then the sum. */
export function assignEvenly(costs: Costs): number[] | undefined {
  const steps = [...new Set(costs.flat())].sort((a, b) => a - b);
  const capped = (most: number, cost: (c: number) => number): Costs => costs.map((row) => row.map((c) => (c <= most ? cost(c) : Number.POSITIVE_INFINITY)));
  let low = 0;
  let high = steps.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (solve(padded(capped(steps[middle]!, () => 0)))) high = middle;
    else low = middle + 1;
  }
  return assign([capped(steps[low] ?? 0, (c) => c)]);
}

/** With fewer columns than rows, columns of no cost stand for "left over". */
function padded(costs: Costs): number[][] {
  const missing = Math.max(costs.length - costs[0]!.length, 0);
  return costs.map((row) => [...row, ...new Array<number>(missing).fill(0)]);
}

/** The best pairings of a table: all those that are made of open pairs and cover every needed column. */
interface Best {
  /** The column of each row in one of them. */
  pairing: number[];
  open: boolean[][];
  needed: boolean[];
}

function solve(table: number[][]): Best | undefined {
  const least = table.reduce((a, row) => Math.min(a, ...row), Number.POSITIVE_INFINITY);
  const made = linearSumAssignment(table, { maximaze: false });
  const pairing = Array.from(made.rowAssignments);
  if (pairing.includes(-1)) return undefined;
  const { dualVariableForRows: ofRow, dualVariableForColumns: ofColumn } = made;
  // Complementary slackness: a pair of reduced cost 0, a column of dual value 0 that may stay free.
  const open = table.map((row, r) => row.map((cost, c) => cost - least - ofRow[r]! - ofColumn[c]! === 0));
  return { pairing, open, needed: Array.from(ofColumn, (dual) => dual !== 0) };
}

/** The table that has the best pairings of an earlier one only: other pairs forbidden, a needed column worth more than all costs. */
function among({ open, needed }: Best, table: number[][]): number[][] {
  const most = table.flat().reduce((a, cost) => (Number.isFinite(cost) ? Math.max(a, Math.abs(cost)) : a), 0);
  const worth = 2 * most * table.length + 1;
  return table.map((row, r) => row.map((cost, c) => (open[r]![c] ? cost - (needed[c] ? worth : 0) : Number.POSITIVE_INFINITY)));
}

/**
 * Of the best pairings the one that gives the first row the earliest column, then the second row, …:
 * each row in turn takes the earliest open column from which a chain of later rows, each moving on to
 * the next column, ends in the column that the row gives up.
 */
function earliest(best: Best): number[] {
  const columnOf = [...best.pairing];
  const rowOf: (number | undefined)[] = new Array(best.needed.length);
  for (const [row, column] of columnOf.entries()) rowOf[column] = row;
  for (const [row, goal] of columnOf.entries()) {
    const next = chainsTo(goal, row, best, columnOf, rowOf);
    const chain = [best.open[row]!.findIndex((isOpen, at) => isOpen && next[at] !== undefined)];
    while (chain.at(-1) !== goal) chain.push(next[chain.at(-1)!]!);
    // Into each column of the chain moves who was in the one before it.
    const movers = [row, ...chain.map((column) => rowOf[column])];
    for (const [i, column] of chain.entries()) {
      const mover = movers[i];
      rowOf[column] = mover;
      // A free column has no row to move on; the one after it on the chain is left free in its place.
      if (mover !== undefined) columnOf[mover] = column;
    }
  }
  return columnOf;
}

/** For every column from which a chain of rows after `row` leads to `goal`, the next column on that chain. */
function chainsTo(
  goal: number,
  row: number,
  { open, needed }: Best,
  columnOf: readonly number[],
  rowOf: readonly (number | undefined)[],
): (number | undefined)[] {
  const next: (number | undefined)[] = [];
  next[goal] = goal;
  const reached = [goal];
  let freed = false;
  const reach = (column: number, from: number) => {
    if (next[column] !== undefined) return;
    next[column] = from;
    reached.push(column);
  };
  for (const column of reached) {
    for (let later = row + 1; later < columnOf.length; later++) if (open[later]![column]) reach(columnOf[later]!, column);
    if (needed[column] || freed) continue;
    freed = true;
    for (const [free, taker] of rowOf.entries()) if (taker === undefined) reach(free, column);
  }
  return next;
}
