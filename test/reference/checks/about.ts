import { readFileSync } from "node:fs";
import { type Check, checksOf } from "./check.ts";

const { version } = JSON.parse(readFileSync(new URL("../../../package.json", import.meta.url), "utf8")) as { version: string };

/** The version, as the package declares it. */
export const ABOUT: readonly Check[] = checksOf("VERSION", "package.json of this project; the form is that of Semantic Versioning 2.0.0", "read", [
  ["=HATCH.VERSION()", version],
]);
