import type { CDPSession } from "playwright-core";
import type { BenchPage } from "../bench/stand.ts";
import type { Moment } from "./figures.ts";

export interface LongUseOptions {
  edits: number;
  checks: number;
  /** How often memory is looked at. */
  moments: number;
  told?: (moment: Moment) => void;
}

/** Edits and checks in turn, as in a long day at one page; memory is looked at between them. */
export async function useLong(bench: BenchPage, { edits, checks, moments, told }: LongUseOptions): Promise<Moment[]> {
  const session = await bench.page.context().newCDPSession(bench.page);
  await session.send("HeapProfiler.enable");
  await session.send("Performance.enable");
  const series: Moment[] = [];
  let edited = 0;
  for (let check = 0; check < checks; check++) {
    const upTo = Math.round((edits * (check + 1)) / checks);
    await edit(bench, edited, upTo);
    edited = upTo;
    await press(bench);
    if (Math.floor(((check + 1) * moments) / checks) === Math.floor((check * moments) / checks)) continue;
    const moment = { edits: edited, checks: check + 1, ...(await memory(session)) };
    series.push(moment);
    told?.(moment);
  }
  return series;
}

/** Readings typed over one after the other, some of them outside their limits. */
async function edit({ page }: BenchPage, from: number, to: number): Promise<void> {
  await page.evaluate(
    ([first, end]) => {
      const { model } = window.crosshatchBench!;
      const sheetId = model.getters.getSheetIds()[0]!;
      for (let n = first!; n < end!; n++) model.dispatch("UPDATE_CELL", { sheetId, col: 2 + (n % 2), row: 3 + (n % 9), content: String(73 + (n % 97) / 1000) });
    },
    [from, to],
  );
}

/** A press on Check, and what it comes to: the button rests again, and the pane says so (a check that it makes by itself says something else). */
export async function press({ pane }: BenchPage, timeout = 120_000): Promise<void> {
  const button = pane.getByRole("button", { name: "Check", exact: true });
  await button.click({ timeout });
  await pane.locator('.primary[aria-disabled="false"]').waitFor({ timeout });
  await pane
    .getByRole("status")
    .filter({ hasText: /^Checked\. / })
    .waitFor({ state: "attached", timeout });
}

/** What is held once everything that nobody holds has been given back. */
export async function memory(session: CDPSession): Promise<Pick<Moment, "megabytes" | "nodes" | "listeners">> {
  for (let again = 0; again < 3; again++) await session.send("HeapProfiler.collectGarbage");
  const { metrics } = await session.send("Performance.getMetrics");
  const of = (name: string): number => metrics.find((one) => one.name === name)!.value;
  return { megabytes: Math.round(of("JSHeapUsedSize") / 1e5) / 10, nodes: of("Nodes"), listeners: of("JSEventListeners") };
}
