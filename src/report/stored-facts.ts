import { z } from "zod";
import { FINDING_KINDS } from "../check/finding.ts";

const tally = z.object({
  kind: z.enum(FINDING_KINDS),
  characteristic: z.string(),
  /** Whose, where the input names several engines. */
  engine: z.string().optional(),
  count: z.number(),
});

/** Findings of one kind about one characteristic. */
export type Tally = z.infer<typeof tally>;

const size = z.object({
  characteristic: z.string(),
  engine: z.string().optional(),
  unit: z.string().optional(),
  value: z.number(),
  lower: z.number().nullable(),
  upper: z.number().nullable(),
  isOutside: z.boolean(),
});

/** Of each characteristic the reading that its limits allow least. */
export type Size = z.infer<typeof size>;

const facts = z.object({
  /** Whose readings these are, as far as the sheets say so. */
  engine: z.string().optional(),
  /** When they were taken: `2026-11-25`. */
  day: z.string().optional(),
  tallies: z.array(tally),
  sizes: z.array(size),
  /** Findings and sizes beyond those that are kept. */
  more: z.number(),
});

/** What a summary of many inputs keeps of one of them: plain data, short however long the input is. */
export type Facts = z.infer<typeof facts>;

/** Facts that were written down; `undefined` for what are none. */
export const factsFrom = (written: unknown): Facts | undefined => facts.safeParse(written).data;
