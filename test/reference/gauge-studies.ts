/**
 * Thermal impedance of ten power modules, three inspectors, three repeats each: D. C. Montgomery,
 * Introduction to Statistical Quality Control; data by Houf and Berman, 1988. Rows are parts, columns
 * are inspector 1 (three), inspector 2 (three), inspector 3 (three).
 */
export const thermalImpedance = [
  [37, 38, 37, 41, 41, 40, 41, 42, 41],
  [42, 41, 43, 42, 42, 42, 43, 42, 43],
  [30, 31, 31, 31, 31, 31, 29, 30, 28],
  [42, 43, 42, 43, 43, 43, 42, 42, 42],
  [28, 30, 29, 29, 30, 29, 31, 29, 29],
  [42, 42, 43, 45, 45, 45, 44, 46, 45],
  [25, 26, 27, 28, 28, 30, 29, 27, 27],
  [40, 40, 40, 43, 42, 42, 43, 43, 41],
  [25, 25, 25, 27, 29, 28, 26, 26, 26],
  [35, 34, 34, 35, 35, 34, 35, 34, 35],
];

/**
 * Ten parts, two operators, three repeats each: D. C. Montgomery, Design and Analysis of Experiments,
 * 8th ed., problem 13.1. Rows are parts, columns are operator 1 (three), operator 2 (three).
 */
export const tenParts = [
  [50, 49, 50, 50, 48, 51],
  [52, 52, 51, 51, 51, 51],
  [53, 50, 50, 54, 52, 51],
  [49, 51, 50, 48, 50, 51],
  [48, 49, 48, 48, 49, 48],
  [52, 50, 50, 52, 50, 50],
  [51, 51, 51, 51, 50, 50],
  [52, 50, 49, 53, 48, 50],
  [50, 51, 50, 51, 48, 49],
  [47, 46, 49, 46, 47, 48],
];

/** Cut into `cells[part][operator]`. */
export const cellsOf = (rows: readonly (readonly number[])[], repeats: number): number[][][] =>
  rows.map((row) => Array.from({ length: row.length / repeats }, (_, o) => row.slice(o * repeats, (o + 1) * repeats)));
