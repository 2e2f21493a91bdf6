import { rmSync } from "node:fs";
import { oneSheet } from "../xlsx/workbook-bytes.ts";
import { crosshatch, crosshatchProcess, folderOf } from "./run.ts";

// Threads and processes start, and the machine may be busy.
import.meta.jest.setTimeout(120_000);

const READINGS = "value,upper\n2,1\n1,2\n";
const folder = folderOf({
  "over.csv": READINGS,
  "over.xlsx": oneSheet([
    ["Bore", "value", "lower", "upper"],
    [1, 73.09, 73, 73.05],
  ]),
  "text.xlsx": "no workbook",
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The other tests call the command line in their own process; here it is started as its user does. */
test.each([
  ["findings, in a workbook and in readings", ["check", "over.xlsx", "over.csv"], "", 1],
  ["a file that cannot be read", ["check", "--json", "text.xlsx"], "", 2],
  ["readings on standard input", ["check", "-"], READINGS, 1],
  ["a value", ["calc", "HATCH.TAPER({73.01,73.02;73.00,73.01})"], "", 0],
  ["help", ["help", "TAPER"], "", 0],
  ["arguments that mean nothing", ["check", "--jsn"], "", 2],
])("%s: the program prints and leaves what the call does", async (_, args, input, code) => {
  const called = await crosshatch(args, { cwd: folder, input });
  expect(called.code).toBe(code);
  expect(called.out + called.err).not.toBe("");
  expect(await crosshatchProcess(args, { cwd: folder, input })).toEqual(called);
});
