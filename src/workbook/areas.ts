import type { Box } from "./sheet-spec.ts";

interface Place {
  row: number;
  column: number;
}

/** The cells in few rectangles, each cell in one of them: runs down a column, joined with equal ones beside them. Only cells of one kind go together. */
export function areasOf<Cell extends Place>(cells: readonly Cell[], kindOf: (cell: Cell) => string = () => ""): (Box & { first: Cell })[] {
  const runs: (Box & { first: Cell; kind: string })[] = [];
  for (const first of [...cells].sort((a, b) => a.column - b.column || a.row - b.row)) {
    const { row, column } = first;
    const kind = kindOf(first);
    const last = runs.at(-1);
    if (last && last.column === column && last.row + last.rows === row && last.kind === kind) last.rows++;
    else runs.push({ row, column, rows: 1, columns: 1, first, kind });
  }
  const joined = new Map<string, (Box & { first: Cell })[]>();
  for (const { kind, ...run } of runs) {
    const key = `${run.row},${run.rows},${kind}`;
    const beside = joined.get(key) ?? [];
    const last = beside.at(-1);
    if (last && last.column + last.columns === run.column) last.columns++;
    else beside.push(run);
    joined.set(key, beside);
  }
  return [...joined.values()].flat();
}
