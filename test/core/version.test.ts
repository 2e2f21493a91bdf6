import { readFileSync } from "node:fs";
import { VERSION } from "../../src/core/version.ts";

test("the version that the functions and the pane show is the package's", () => {
  const manifest = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
  expect(VERSION).toBe(manifest.version);
});
