import { writeFileSync } from "node:fs";
import { productParts } from "../../../../src/tools/generated.ts";

for (const [path, text] of await productParts()) writeFileSync(path, text);
