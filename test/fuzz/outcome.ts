/** What came of one input. */
export type FuzzOutcome = "result" | "refused";

/** The input led to what must never be: a fault of ours, or a result that is wrong without saying so. */
export class Defect extends Error {
  override readonly name = "Defect";
}

/** How one kind of input is made from the samples, tried, and looked at. */
export interface Level {
  name: string;
  /** How often it comes up, beside the others. */
  weight: number;
  run(random: import("./random.ts").FuzzRandom): FuzzOutcome | Promise<FuzzOutcome>;
}
