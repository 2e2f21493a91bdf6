/** Things by a key, in the order in which they come: there may be a hundred thousand of one. */
export function groupedBy<Key, Thing>(things: Iterable<Thing>, keyOf: (thing: Thing) => Key): Map<Key, Thing[]> {
  const groups = new Map<Key, Thing[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    const group = groups.get(key);
    if (group) group.push(thing);
    else groups.set(key, [thing]);
  }
  return groups;
}

/** The largest, and the smallest: too many to be arguments of one call. */
export const largestNumber = (numbers: readonly number[], least = Number.NEGATIVE_INFINITY): number => numbers.reduce((a, b) => Math.max(a, b), least);
export const smallestNumber = (numbers: readonly number[]): number => numbers.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
