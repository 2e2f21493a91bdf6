const determinant = (m: readonly (readonly number[])[]) =>
  m[0]![0]! * (m[1]![1]! * m[2]![2]! - m[1]![2]! * m[2]![1]!) -
  m[0]![1]! * (m[1]![0]! * m[2]![2]! - m[1]![2]! * m[2]![0]!) +
  m[0]![2]! * (m[1]![0]! * m[2]![1]! - m[1]![1]! * m[2]![0]!);

/** Solves three equations by Cramer's rule; `undefined` where they have no one solution. */
export function cramer(rows: readonly (readonly number[])[], right: readonly number[]): [number, number, number] | undefined {
  const whole = determinant(rows);
  if (Math.abs(whole) < 1e-9) return undefined;
  return [0, 1, 2].map((column) => determinant(rows.map((row, n) => row.with(column, right[n]!))) / whole) as [number, number, number];
}

/** Every three of a list, in their order. */
export function* threesOf<T>(list: readonly T[]): Generator<[T, T, T]> {
  for (let i = 0; i < list.length; i++) {
    for (let j = i + 1; j < list.length; j++) {
      for (let k = j + 1; k < list.length; k++) yield [list[i]!, list[j]!, list[k]!];
    }
  }
}
