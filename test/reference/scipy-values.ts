import { readFileSync } from "node:fs";
import { join } from "node:path";

const [version, ...lines] = readFileSync(join(import.meta.dirname, "scipy", "shapes.txt"), "utf8")
  .trim()
  .split("\n");

/** As `test/reference/scipy/shapes.py` has printed it. */
export const SCIPY = `${version} (test/reference/scipy/shapes.py)`;

const values = new Map(lines.map((line) => line.split(" ")).map(([name, ...numbers]) => [name!, numbers.map(Number)]));

/** Numbers that SciPy has printed under a name: `shapes.py` makes `shapes.txt`, whose first line names the versions. */
export function fromScipy(name: string): readonly number[] {
  const numbers = values.get(name);
  if (!numbers?.length || numbers.some(Number.isNaN)) throw new Error(`shapes.txt has no numbers under ${name}`);
  return numbers;
}

/** Rows, columns and then the cells of a face. */
export function faceFromScipy(name: string): number[][] {
  const [rows, columns, ...cells] = fromScipy(name);
  return Array.from({ length: rows! }, (_, r) => cells.slice(r * columns!, (r + 1) * columns!));
}
