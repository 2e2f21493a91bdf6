/** One group of what the benchmark measures, bundled as it is shipped and run in a process of its own: prints what it found as JSON. */
import { assignments } from "./assignments.ts";
import type { BenchmarkGroup } from "./benchmark-group.ts";
import { elementWise } from "./element-wise.ts";
import { excel } from "./excel.ts";
import { archive, formulas, growth } from "./workbook.ts";

export const GROUPS: Record<string, () => Promise<BenchmarkGroup>> = { elementWise, assignments, formulas, growth, archive, excel };

// The engine's remarks on its own running are not part of the answer.
console.debug = () => {};
const group = GROUPS[process.argv[2] ?? ""];
if (group) process.stdout.write(JSON.stringify(await group()));
