import { readFileSync } from "node:fs";

/** The numbers of a reference file, line by line, from the line after the last that `heading` matches; words in a line are left out. */
export function columns(file: string, heading: RegExp): number[][] {
  const lines = readFileSync(new URL(file, import.meta.url), "latin1").split(/\r?\n/);
  return lines.slice(lines.findLastIndex((line) => heading.test(line)) + 1).flatMap((line) => {
    const numbers = line
      .trim()
      .split(/\s+/)
      .filter((word) => word !== "" && Number.isFinite(Number(word)))
      .map(Number);
    return numbers.length ? [numbers] : [];
  });
}

/** Readings gathered under their label, in order of first appearance. */
export function grouped(rows: readonly (readonly [label: number, reading: number])[]): number[][] {
  const groups = new Map<number, number[]>();
  for (const [label, reading] of rows) groups.set(label, [...(groups.get(label) ?? []), reading]);
  return [...groups.values()];
}

/** How many leading digits of `value` agree with `certified`: the log relative error of NIST StRD. */
export const digits = (value: number, certified: number): number => (value === certified ? 15 : -Math.log10(Math.abs((value - certified) / certified)));
