import { readFileSync } from "node:fs";
import { HyperFormula } from "hyperformula";
import { calculate } from "../../src/calc/calculate.ts";
import { evaluateWithModel } from "../../src/calc/evaluate-with-model.ts";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import type { BenchmarkGroup } from "./benchmark-group.ts";
import { bookFile, type Content, clearanceRows, NATIVE, OURS } from "./book-file.ts";
import { type BenchmarkLine, RUNS, ratioLine, show, type Timing, together } from "./measure.ts";
import { profiled } from "./profile.ts";

const FORMULAS = 50_000;
const OPENED = "opened, calculated and checked";

async function checked(bytes: Uint8Array): Promise<void> {
  const host = await openWorkbook(bytes, "book.xlsx");
  checkWorkbook(await host.read());
}

/** The same sheet in native formulas, in the engine as it comes. */
function native(bytes: Uint8Array): void {
  const book = readXlsx(bytes);
  [...evaluateWithModel(book).values(0)];
}

/** Formulas of ours in one workbook, against native ones. */
export async function formulas(): Promise<BenchmarkGroup> {
  const [ours, theirs] = [clearanceRows(FORMULAS, OURS), clearanceRows(FORMULAS, NATIVE)];
  const [ourFile, theirFile] = [bookFile(ours), bookFile(theirs)];
  const [ourBook, theirBook] = [readXlsx(ourFile), readXlsx(theirFile)];
  const other = theirs.map((row) => row.map(plain));
  const count = `${FORMULAS.toLocaleString("en").replaceAll(",", " ")} formulas`;
  const [whole, engine, alone, nativeAlone, hyper] = (await together([
    () => checked(ourFile),
    () => native(theirFile),
    () => calculate(ourBook),
    () => calculate(theirBook),
    () => HyperFormula.buildFromArray(other, { licenseKey: "gpl-v3" }).getSheetValues(0),
  ])) as [Timing, Timing, Timing, Timing, Timing];
  const profile = `${count} of ours, ${OPENED}`;
  return {
    lines: [
      ratioLine(`${count} of ours ${OPENED}; native formulas opened and calculated by the engine as it comes`, whole, engine, { aim: 1.2, profile }),
      ratioLine(`${count} of ours calculated; native formulas calculated the same way`, alone, nativeAlone),
      ratioLine(`${count} of ours calculated; native formulas built and calculated by HyperFormula`, alone, hyper),
    ],
    profiles: [await profiled(profile, () => checked(ourFile))],
  };
}

const plain = (content: Content): number | string => (typeof content === "object" ? `=${content.formula}` : content);

/** Time for each formula as workbooks grow. */
export async function growth(): Promise<BenchmarkGroup> {
  const sizes = [10_000, 50_000, 200_000];
  const took: Timing[] = [];
  for (const size of sizes) {
    const file = bookFile(clearanceRows(size, OURS));
    took.push((await together([() => checked(file)]))[0]!);
  }
  const each = took.map(({ median }, i) => (median / sizes[i]!) * 1000);
  const shown = sizes.map((size, i) => `${size.toLocaleString("en").replaceAll(",", " ")}: ${show(took[i]!)}, ${each[i]!.toFixed(1)} µs each`).join("; ");
  return {
    lines: [
      {
        what: `formulas of ours in one workbook, ${OPENED}: time for each at the most, against the least`,
        measured: shown,
        yardstick: "itself",
        value: each[2]! / each[0]!,
        unit: "×",
        aim: 1.3,
      },
    ],
    profiles: [],
  };
}

/** Many small workbooks, one after the other in one thread. */
export async function archive(): Promise<BenchmarkGroup> {
  const sample = new Uint8Array(readFileSync("samples/build-sheet.xlsx"));
  const counts = [100, 1000];
  const work = counts.map((count) => async () => {
    for (let i = 0; i < count; i++) await checked(sample);
  });
  const profile = `1 000 small workbooks ${OPENED}`;
  const took = await together(work, RUNS);
  const each = took.map(({ median }, i) => median / counts[i]!);
  const shown = counts.map((count, i) => `${count}: ${show(took[i]!)}, ${each[i]!.toFixed(2)} ms each`).join("; ");
  const line: BenchmarkLine = {
    what: `workbooks as the sample build sheet, ${OPENED} in one thread: time for each of 1 000, against 100`,
    measured: shown,
    yardstick: "itself",
    value: each[1]! / each[0]!,
    unit: "×",
    aim: 1.3,
    profile,
  };
  return { lines: [line], profiles: [await profiled(profile, work[0]!)] };
}
