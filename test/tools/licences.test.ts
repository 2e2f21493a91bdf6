import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { licencesOf, packagesIn } from "../../src/tools/licences.ts";

test("the packages of a bundle are found by their paths, scoped and nested ones too", () => {
  const inputs = { "src/a.ts": {}, "node_modules/fflate/esm/index.js": {}, "node_modules/@scope/one/b.js": {}, "node_modules/x/node_modules/fflate/c.js": {} };
  expect(packagesIn([{ inputs: inputs as never, outputs: {} }])).toEqual([
    "node_modules/@scope/one",
    "node_modules/fflate",
    "node_modules/x/node_modules/fflate",
  ]);
});

test("a text that several packages bring stands once, under all their names", () => {
  const base = mkdtempSync(join(tmpdir(), "crosshatch-licences-"));
  const add = (name: string, files: Record<string, string>) => {
    mkdirSync(join(base, name));
    writeFileSync(join(base, name, "package.json"), JSON.stringify({ name, version: "1.0.0", license: "MIT" }));
    for (const [file, text] of Object.entries(files)) writeFileSync(join(base, name, file), text);
  };
  add("a", { LICENSE: "Free for all.\r\n" });
  add("b", { "LICENCE.txt": "Free for all." });
  add("c", { LICENSE: "Free for some.", NOTICE: "Made by c." });
  add("d", {});
  add("e", { "README.md": "# e\n\n## Licence\n\nFree on Sundays.\n\n## More\n\nNothing." });
  const rule = "=".repeat(72);
  expect(licencesOf(["e", "d", "c", "a", "b"], base)).toBe(
    [
      `${rule}\na 1.0.0 (MIT)\nb 1.0.0 (MIT)\n${rule}\n\nFree for all.\n`,
      `${rule}\nc 1.0.0 (MIT)\n${rule}\n\nFree for some.\n\nMade by c.\n`,
      `${rule}\nd 1.0.0 (MIT)\n${rule}\n\nBy its authors. The package names its licence without the text, which is at https://spdx.org/licenses/MIT.html\n`,
      `${rule}\ne 1.0.0 (MIT)\n${rule}\n\nFree on Sundays.\n`,
    ].join("\n"),
  );
  rmSync(base, { recursive: true });
});
