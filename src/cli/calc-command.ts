import type { FormulaAnswer } from "../calc/one-formula.ts";
import { ALL_WELL, FINDINGS } from "./exit-codes.ts";
import { GridThread } from "./grid-thread.ts";
import { complain, jsonLine, print, printable } from "./output.ts";

/** A formula that takes longer is given up; ordinary ones take a thousandth of a second. */
const PATIENCE = 20;
/** Far more than a formula needs; one that takes it all is soon found out. */
const MEGABYTES = 512;

/** `crosshatch calc FORMULA`: the value, or rows of a block with tabs between the cells. */
export async function calc(formula: string): Promise<number> {
  const engine = new GridThread(MEGABYTES);
  const answer = await engine.ask({ kind: "formula", formula }, PATIENCE);
  await engine.close();
  if ("fault" in answer) {
    complain(answer.fault);
    return FINDINGS;
  }
  const rows = Array.isArray(answer.value) ? answer.value : [[answer.value]];
  for (const row of rows) await print(row.map(shown).join("\t"));
  return ALL_WELL;
}

const shown = (value: number | string | boolean): string => printable(typeof value === "boolean" ? String(value).toUpperCase() : String(value));

/** `crosshatch calc -`: one formula a line from standard input, one line of JSON for each, in order. */
export async function calcLines(input: AsyncIterable<Uint8Array>): Promise<number> {
  const engine = new GridThread(MEGABYTES);
  for await (const line of linesOf(input)) {
    const answer: FormulaAnswer = await engine.ask({ kind: "formula", formula: line }, PATIENCE);
    await print(jsonLine({ formula: line, ...answer }));
  }
  await engine.close();
  return ALL_WELL;
}

/** Lines end with LF or CRLF and nothing else, so that each answer stands for one of them. */
async function* linesOf(input: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  let rest: string[] = [];
  for await (const chunk of input) {
    const [first, ...more] = decoder.decode(chunk, { stream: true }).split("\n");
    rest.push(first!);
    for (const next of more) {
      yield rest.join("").replace(/\r$/, "");
      rest = [next];
    }
  }
  const last = rest.join("") + decoder.decode();
  if (last !== "") yield last;
}
