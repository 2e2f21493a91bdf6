/** Numbers that look random and are the same for the same seed and input on every machine. */
export class Random {
  #state: number;

  constructor(seed: number, index: number) {
    this.#state = (Math.imul(seed, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b)) >>> 0;
    for (let i = 0; i < 4; i++) this.next();
  }

  /** From 0 up to, not including, 1 (mulberry32, public domain). */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number from 0 to one below `count`. */
  below(count: number): number {
    return Math.floor(this.next() * count);
  }

  chance(probability: number): boolean {
    return this.next() < probability;
  }

  pick<T>(list: readonly T[]): T {
    return list[this.below(list.length)]!;
  }
}
