import { readFileSync } from "node:fs";
import { join } from "node:path";
import { specs } from "../../src/functions/index.ts";
import { root } from "../../src/tools/paths.ts";
import { crosshatch } from "./run.ts";

const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));

test("--version prints the version of the package", async () => {
  expect(await crosshatch(["--version"])).toEqual({ code: 0, out: `${version}\n`, err: "" });
});

test("help lists the commands and every function with its summary", async () => {
  const { code, out } = await crosshatch(["help"]);
  expect(code).toBe(0);
  for (const command of ["check", "calc", "help"]) expect(out).toMatch(new RegExp(`^ {2}${command} `, "m"));
  for (const { name, summary } of specs) expect(out).toMatch(new RegExp(`^ {2}${name} +${summary.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}$`, "m"));
});

test("help NAME is the whole manual of a function, however the name is written", async () => {
  const pages = await Promise.all(["PISTONCLEARANCE", "pistonclearance", "=HATCH.PistonClearance"].map((name) => crosshatch(["help", name])));
  const [{ code, out }] = pages as [(typeof pages)[0]];
  expect(code).toBe(0);
  for (const page of pages) expect(page.out).toBe(out);
  const spec = specs.find(({ name }) => name === "PISTONCLEARANCE")!;
  expect(out).toMatch(/^HATCH\.PISTONCLEARANCE\(readings, skirt, \[basis\], \[axes\]\)\n/);
  for (const text of [spec.summary, spec.definition, spec.source, ...spec.notes!, ...spec.examples.map(({ formula }) => formula)]) expect(out).toContain(text);
  expect(out).toContain("  skirt     piston skirt, measured at 90° to the pin\n            a length above 0: a cell, or a range for a batch; needed\n");
  expect(out).toContain("            one of smallest, mean, largest: a cell, or a range for a batch; smallest if left out\n");
  expect(out).toContain("the maker's service manual and a qualified technician decide");
});

test("help of a command tells its options and exit codes", async () => {
  const { code, out } = await crosshatch(["help", "check"]);
  expect(code).toBe(0);
  expect(out).toContain("--json");
  expect(out).toContain("--locale <tag>");
  expect(out).toContain("2 when an input could not be read");
  expect((await crosshatch(["check", "--help"])).out.trimEnd()).toBe(out.trimEnd());
});

test.each([
  [["help", "TAPPER"], "there is no function or command called TAPPER; did you mean TAPER?"],
  [["help", "xyzzy"], "there is no function or command called xyzzy; crosshatch help lists them"],
  [["chek"], "unknown command 'chek'"],
  [["--loud"], "unknown option '--loud'"],
  [["calc"], "missing required argument 'formula'"],
  [["calc", "1", "2"], "too many arguments for 'calc'"],
  [[], "a command is wanted: check, calc, new or help"],
])("%j is refused in a sentence and leaves 2", async (args, sentence) => {
  const { code, out, err } = await crosshatch(args);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain(`crosshatch: ${sentence}`);
  expect(err.trimEnd().split("\n")).toHaveLength(1);
});
