import type { BenchmarkLine } from "./measure.ts";
import type { Profile } from "./profile.ts";

/** What belongs together, measured in a process of its own. */
export interface BenchmarkGroup {
  lines: BenchmarkLine[];
  profiles: Profile[];
}
