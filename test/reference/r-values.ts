import { readFileSync } from "node:fs";
import { join } from "node:path";

/** Values that R has printed, by name: `test/reference/r/change-and-wear.R` makes `change-and-wear.txt`, whose first line names the version. */
export const rValues: ReadonlyMap<string, readonly number[]> = new Map(
  readFileSync(join(import.meta.dirname, "r", "change-and-wear.txt"), "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(" "))
    .map(([name, ...numbers]) => [name!, numbers.map(Number)]),
);

export function fromR(name: string): readonly number[] {
  const values = rValues.get(name);
  if (!values?.length || values.some(Number.isNaN)) throw new Error(`change-and-wear.txt has no numbers under ${name}`);
  return values;
}
