import { rmSync } from "node:fs";
import { checkCsv } from "../../../src/check/csv/check-csv.ts";
import { crosshatch, folderOf, jsonLines } from "../../cli/run.ts";

// A third of the tolerance is common practice; numbers are invented.

const HEAD = "engine,cylinder,characteristic,value,lower,upper,uncertainty";
const rows = (uncertainty: string, values: readonly number[]) => values.map((value, i) => `A,${i + 1},clearance,${value},0.02,0.035,${uncertainty}\n`).join("");

async function* bytesOf(text: string): AsyncGenerator<Uint8Array> {
  yield new TextEncoder().encode(text);
}
const coarse = async (text: string) => (await checkCsv(bytesOf(`${HEAD}\n${text}`), {})).findings.filter(({ kind }) => kind === "coarse gauge");

test("readings whose uncertainty is more than a third of their tolerance are told once, whether they are within or not", async () => {
  for (const values of [
    [0.027, 0.028],
    [0.034, 0.027],
    [0.05, 0.027],
  ]) {
    const found = await coarse(rows("0.006", values));
    expect(found).toMatchObject([
      {
        ...{ line: 2, label: "engine A, cylinder 1, clearance", value: values[0], lower: 0.02, upper: 0.035 },
        details: { uncertainty: 0.006, tolerance: 0.015, largestUncertainty: 0.005, readings: null },
      },
    ]);
    expect(found[0]!.sentence).toBe(
      "the uncertainty 0.006 is more than a third of the tolerance 0.015 between 0.02 and 0.035, here and in rows like it: measure with a gauge whose U is at most 0.005",
    );
  }
});

test("exactly a third, one limit alone and no uncertainty are none; another uncertainty is another finding", async () => {
  expect(await coarse(`${rows("0.005", [0.027])}${rows("", [0.027])}A,1,taper,0.01,,0.02,0.015\n`)).toEqual([]);
  expect((await coarse(rows("0.006", [0.027]) + rows("0.007", [0.027]) + rows("0.006", [0.026]))).map(({ line }) => line)).toEqual([2, 3]);
});

test("the command line prints it, and rows in are still checked and refused", async () => {
  const folder = folderOf({ "a.csv": `${HEAD}\n${rows("0.006", [0.027, 0.028])}` });
  const { out } = await crosshatch(["check", "--json", "a.csv"], { cwd: folder });
  rmSync(folder, { recursive: true });
  const lines = jsonLines(out);
  expect(lines).toMatchObject([
    { kind: "coarse gauge", line: 2, value: 0.027, margin: 0.007, uncertainty: 0.006, largestUncertainty: 0.005 },
    { rowsIn: 2, checked: 2, refused: 0, findings: 1 },
  ]);
}, 60_000);
