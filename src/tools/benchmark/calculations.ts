/** What the benchmark measures of the bundled code. */
export { assignments } from "./assignments.ts";
export { elementWise } from "./element-wise.ts";
export { tenThousandFormulas } from "./workbook.ts";
