import { Seeded } from "../fuzz/seeded.ts";

/** Numbers of a seed that follow the normal law (Box and Muller, Annals of Mathematical Statistics 29, 1958). */
export class SeededNormal extends Seeded {
  normal(deviation = 1, mean = 0): number {
    // Away from 0, of which there is no logarithm.
    const radius = Math.sqrt(-2 * Math.log(1 - this.next()));
    return mean + deviation * radius * Math.cos(2 * Math.PI * this.next());
  }
}
