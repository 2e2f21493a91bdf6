import { isBlank } from "../core/cell.ts";
import { around, type Rectangle, rectanglesMeet } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";

/** Cells in one row without a gap. */
interface Run {
  row: number;
  from: number;
  to: number;
  parent: Run | undefined;
}

/** Rectangles around cells that touch one another, also at a corner, in reading order. */
export function blocksOf({ row, column, values }: SheetSnapshot): Rectangle[] {
  const runs: Run[] = [];
  let above: Run[] = [];
  for (const [r, line] of values.entries()) {
    const here: Run[] = [];
    for (let c = 0; c < line.length; c++) {
      if (isBlank(line[c])) continue;
      const run: Run = { row: row + r, from: column + c, to: column + c, parent: undefined };
      while (c + 1 < line.length && !isBlank(line[c + 1])) run.to = column + ++c;
      here.push(run);
    }
    joinNeighbours(above, here);
    runs.push(...here);
    above = here;
  }
  const boxes = new Map<Run, Rectangle>();
  for (const run of runs) {
    const root = rootOf(run);
    const box = boxes.get(root);
    boxes.set(root, box ? around(box, rectangleOf(run)) : rectangleOf(run));
  }
  return overlapping([...boxes.values()]).sort((a, b) => a.row - b.row || a.column - b.column);
}

function joinNeighbours(above: readonly Run[], here: readonly Run[]): void {
  let a = 0;
  for (const run of here) {
    while (a < above.length && above[a]!.to < run.from - 1) a++;
    for (let i = a; i < above.length && above[i]!.from <= run.to + 1; i++) {
      const [one, other] = [rootOf(above[i]!), rootOf(run)];
      if (one !== other) other.parent = one;
    }
  }
}

function rootOf(run: Run): Run {
  let root = run;
  while (root.parent) root = root.parent;
  if (root !== run) run.parent = root;
  return root;
}

const rectangleOf = ({ row, from, to }: Run): Rectangle => ({ row, column: from, rows: 1, columns: to - from + 1 });

/** Rectangles that lie over one another become one. */
function overlapping(boxes: Rectangle[]): Rectangle[] {
  const out: Rectangle[] = [];
  for (const box of boxes) {
    let whole = box;
    for (let i = 0; i < out.length; i++) {
      if (!rectanglesMeet(out[i]!, whole)) continue;
      whole = around(whole, out[i]!);
      out.splice(i, 1);
      i = -1;
    }
    out.push(whole);
  }
  return out;
}
