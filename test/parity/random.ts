import { Seeded } from "../fuzz/seeded.ts";

/** The numbers of a seed, in one long row. */
export class ParityRandom extends Seeded {
  whole(least: number, most: number): number {
    return least + this.below(most - least + 1);
  }
}
