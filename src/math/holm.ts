/**
 * Chances adjusted for how many were looked at, in the order given: with each at most 0.05 the chance that
 * any of them is wrong is at most 0.05, however they hang together. The smallest counts as often as there
 * are, the next once less, and none is adjusted below a smaller one. Source: S. Holm, Scandinavian Journal
 * of Statistics 6 (1979) 65.
 */
export function holm(chances: readonly number[]): number[] {
  const adjusted = new Array<number>(chances.length);
  let least = 0;
  const order = chances.map((_, i) => i).sort((a, b) => chances[a]! - chances[b]!);
  for (const [rank, i] of order.entries()) {
    least = Math.max(least, Math.min(1, (chances.length - rank) * chances[i]!));
    adjusted[i] = least;
  }
  return adjusted;
}
