import type { Check } from "./check.ts";

/** Masses of pistons and rods, and what a crankshaft is balanced with. */
export const BALANCE: readonly Check[] = [];
