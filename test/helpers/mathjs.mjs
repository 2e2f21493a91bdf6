// What the sources use of mathjs. Its entry brings a thousand files, which a bundler leaves out again; in every test file they would cost two seconds.
export { createUnitClass } from "../../node_modules/mathjs/lib/esm/type/unit/Unit.js";
