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
 * show which pairs occur in any best pairing (reduced cost 0), and only these go on to the next table.
 *
 * @returns the column of each row, −1 for a row left over; `undefined` when the forbidden pairs leave no pairing.
 */
export function assign(tables: readonly Costs[]): number[] | undefined {
  const columns = tables[0]![0]!.length;
  let open: boolean[][] | undefined;
  let pairing: number[] = [];
  for (const costs of tables) {
    const solved = solve(squared(costs, open));
    if (!solved) return undefined;
    ({ open, pairing } = solved);
  }
  return earliest(open!, pairing)
    .slice(0, tables[0]!.length)
    .map((column) => (column < columns ? column : -1));
}

/** As `assign`, but first makes the costliest single pair as cheap as can be, and only then the sum. */
export function assignEvenly(costs: Costs): number[] | undefined {
  const steps = [...new Set(costs.flat())].filter(Number.isFinite).sort((a, b) => a - b);
  const capped = (most: number, cost: (c: number) => number): Costs => costs.map((row) => row.map((c) => (c <= most ? cost(c) : Number.POSITIVE_INFINITY)));
  const nothing = () => 0;
  let low = 0;
  let high = steps.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (solve(squared(capped(steps[middle]!, nothing)))) high = middle;
    else low = middle + 1;
  }
  return assign([capped(steps[low] ?? 0, (c) => c)]);
}

/** Rows or columns that cost nothing whatever they meet make the table square; pairs not `open` are forbidden. */
function squared(costs: Costs, open?: boolean[][]): number[][] {
  const size = Math.max(costs.length, costs[0]!.length);
  return Array.from({ length: size }, (_, r) =>
    Array.from({ length: size }, (_, c) => (open && !open[r]![c] ? Number.POSITIVE_INFINITY : (costs[r]?.[c] ?? 0))),
  );
}

interface Solved {
  /** Column of each row in one best pairing. */
  pairing: number[];
  /** The pairs that best pairings are made of: every complete pairing of them is a best one. */
  open: boolean[][];
}

function solve(table: number[][]): Solved | undefined {
  const least = Math.min(...table.map((row) => Math.min(...row)));
  if (!Number.isFinite(least)) return undefined;
  const made = linearSumAssignment(table, { maximaze: false });
  const pairing = Array.from(made.rowAssignments);
  if (pairing.includes(-1)) return undefined;
  const { dualVariableForRows: ofRow, dualVariableForColumns: ofColumn } = made;
  const open = table.map((row, r) => row.map((cost, c) => cost - least - ofRow[r]! - ofColumn[c]! === 0));
  return { pairing, open };
}

/**
 * Of all complete pairings of open pairs the one that gives the first row the earliest column, then
 * the second row, …: each row in turn takes the earliest open column whose owner can, over a chain
 * of later rows, be moved on to the column that becomes free.
 */
function earliest(open: readonly (readonly boolean[])[], pairing: readonly number[]): number[] {
  const columnOf = [...pairing];
  const rowOf: number[] = [];
  for (const [row, column] of columnOf.entries()) rowOf[column] = row;
  for (let row = 0; row < columnOf.length; row++) {
    const next = chainsTo(columnOf[row]!, row, open, columnOf);
    let mover = row;
    let column = open[row]!.findIndex((isOpen, at) => isOpen && next[at] !== undefined);
    // Each column on the chain is taken by the mover; its owner moves on along the chain.
    while (columnOf[mover] !== column) {
      const owner = rowOf[column]!;
      columnOf[mover] = column;
      rowOf[column] = mover;
      if (owner === row) break;
      mover = owner;
      column = next[column]!;
    }
  }
  return columnOf;
}

/** For every column from which a chain of rows after `row` leads to `goal`, the next column on that chain. */
function chainsTo(goal: number, row: number, open: readonly (readonly boolean[])[], columnOf: readonly number[]): (number | undefined)[] {
  const next: (number | undefined)[] = [];
  next[goal] = goal;
  const reached = [goal];
  for (const column of reached) {
    for (let later = row + 1; later < columnOf.length; later++) {
      const own = columnOf[later]!;
      if (next[own] !== undefined || !open[later]![column]) continue;
      next[own] = column;
      reached.push(own);
    }
  }
  return next;
}
