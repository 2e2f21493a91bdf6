import type { BenchPage } from "../bench/stand.ts";
import { bare } from "./answer.ts";
import { onBench } from "./bench.ts";
import { checkReader } from "./check-reader.ts";
import { difference, differenceInSheet } from "./compare.ts";
import { type BlankForm, customFunctions, reachesExcel } from "./entry.ts";
import { headless, headlessByModel } from "./headless.ts";
import type { Input } from "./inputs.ts";

/** What came of trying calls on one host. */
export interface TriedCalls {
  inputs: number;
  differences: string[];
  /** Answers that are other ones because a blank was handed over as 0, each as its inputs say. */
  blanksForZeros?: number;
}

/** A host as parity sees it: calls in, differences from the bare call out. */
export type Host = (calls: readonly Input[]) => Promise<TriedCalls>;

const compared = (calls: readonly Input[], found: (i: number) => string | undefined): TriedCalls => ({
  inputs: calls.length,
  differences: calls.flatMap((_, i) => found(i) ?? []),
});

export const HEADLESS: Host = async (calls) => {
  const answers = await headless(calls);
  return compared(calls, (i) => differenceInSheet(calls[i]!, answers[i]!));
};

export const HEADLESS_BY_MODEL: Host = async (calls) => {
  const answers = headlessByModel(calls);
  return compared(calls, (i) => differenceInSheet(calls[i]!, answers[i]!));
};

export const CHECK_READER: Host = async (calls) => {
  const answers = checkReader(calls);
  return compared(calls, (i) => difference(calls[i]!, answers[i]!));
};

export const benchHost =
  (page: BenchPage): Host =>
  async (calls) => {
    const answers = await onBench(page, calls);
    return compared(calls, (i) => differenceInSheet(calls[i]!, answers[i]!));
  };

/**
 * The built script of the add-in, with blank cells in one of the forms in which Excel hands them over. The
 * other side has true blanks. Where they come as 0, an answer may differ only as the inputs say of themselves
 * (`zeroPasses`, of which help warns); how many do is counted.
 */
export function customFunctionsHost(folder: string, blank: BlankForm): Host {
  const run = customFunctions(folder);
  return async (calls) => {
    const reaching = calls.filter(reachesExcel);
    let told = 0;
    const tried = compared(reaching, (i) => {
      const answer = run(reaching[i]!, blank);
      const apart = difference(reaching[i]!, answer);
      if (apart === undefined || blank !== 0) return apart;
      const unexplained = difference(reaching[i]!, answer, bare(reaching[i]!, true));
      if (unexplained === undefined) told++;
      return unexplained;
    });
    return { ...tried, blanksForZeros: told };
  };
}

/** Calls in batches that one workbook holds well. */
export async function tryOut(host: Host, calls: Iterable<Input>, size: number): Promise<TriedCalls> {
  const whole: TriedCalls = { inputs: 0, differences: [] };
  const put = async (batch: Input[]): Promise<void> => {
    const { inputs, differences, blanksForZeros } = await host(batch);
    whole.inputs += inputs;
    whole.differences.push(...differences);
    if (blanksForZeros !== undefined) whole.blanksForZeros = (whole.blanksForZeros ?? 0) + blanksForZeros;
  };
  const batch: Input[] = [];
  for (const call of calls) {
    batch.push(call);
    if (batch.length === size) await put(batch.splice(0));
  }
  if (batch.length) await put(batch);
  return whole;
}
