import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { typeLibrary, typeText } from "../../src/libreoffice/extension/type-library.ts";

/** Where Debian's development kit puts it. */
const WRITER = "/usr/lib/libreoffice/sdk/bin/unoidl-write";
const KNOWN_TYPES = "/usr/lib/libreoffice/program/types.rdb";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "crosshatch-types-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

(existsSync(WRITER) ? test : test.skip).each([
  ["the functions", undefined],
  [
    "functions without inputs, with one, and with many",
    [
      ["NONE", 0],
      ["ONE", 1],
      ["MANY", 12],
      ["ALSO", 2],
    ] as const,
  ],
])("the type library of %s is byte for byte what unoidl-write makes of the same interface", (_, given) => {
  const methods = given?.map(([name, params]) => ({ name, params, givesText: params === 1 }));
  writeFileSync(join(folder, "hatch.idl"), typeText(methods));
  execFileSync(WRITER, [KNOWN_TYPES, join(folder, "hatch.idl"), join(folder, "hatch.rdb")]);
  const theirs = readFileSync(join(folder, "hatch.rdb"));
  // The writer names itself and its version, to a zero.
  const maker = theirs.toString("latin1", 17, theirs.indexOf(0, 17));
  expect(maker).toContain("unoidl-write");
  expect(typeLibrary(maker, methods).equals(theirs)).toBe(true);
});
