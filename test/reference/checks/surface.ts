import type { Check } from "./check.ts";

/** Surface texture and honing. */
export const SURFACE: readonly Check[] = [];
