import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder that holds package.json. */
export const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
