import type { Command } from "commander";
import { Refusal } from "./exit-codes.ts";

/** What one workbook may take, as it is typed after a command. */
export interface WorkbookLimits {
  work?: string;
  memory?: string;
}

/** Megabytes that one workbook may take where nothing is said. */
export const MEGABYTES = 4096;

/** The options of every command that calculates workbooks. */
export function withWorkbookLimits(command: Command): Command {
  return command
    .option("--work <millions>", "how much work the formulas of one workbook may take, in millions of steps; 200 by default, which is about a minute")
    .option("--memory <megabytes>", `how much memory one workbook may take; ${MEGABYTES} by default`);
}

/** Steps, and megabytes. */
export const limitsFrom = ({ work, memory }: WorkbookLimits): { work: number | undefined; memory: number | undefined } => ({
  work: workFrom(work),
  memory: memoryFrom(memory),
});

function workFrom(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  if (!/^[1-9]\d{0,5}$/.test(text)) throw new Refusal(`--work ${text} is no number of millions of steps: it must be 1 to 999999`);
  return 1e6 * Number(text);
}

function memoryFrom(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const megabytes = /^\d{1,6}$/.test(text) ? Number(text) : 0;
  if (megabytes < 64) throw new Refusal(`--memory ${text} is no number of megabytes: it must be 64 to 999999`);
  return megabytes;
}

export const tooMuchMemory = (megabytes: number): string => `needs more memory than one workbook may take (${megabytes} MB): --memory allows more`;
export const tooMuchWork = (reason: string): string => `${reason}: --work allows more`;
