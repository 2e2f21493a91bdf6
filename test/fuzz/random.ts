import { Seeded } from "./seeded.ts";

/** The numbers of one input of a seed: those of its neighbours have nothing to do with them. */
export class FuzzRandom extends Seeded {
  constructor(seed: number, index: number) {
    super(Math.imul(seed, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b));
    for (let i = 0; i < 4; i++) this.next();
  }
}
