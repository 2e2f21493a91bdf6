import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import { storedLayout } from "../../src/layout/mapping.ts";
import { expectCounts, expectReadersAgree, expectSentence, orRefused } from "./oracles.ts";
import type { FuzzOutcome } from "./outcome.ts";

/** A file through the front door: opened, calculated, checked. */
export function openAndCheck(bytes: Uint8Array, input = ""): Promise<FuzzOutcome> {
  return orRefused(async (): Promise<FuzzOutcome> => {
    const host = await openWorkbook(bytes, "fuzz.xlsx");
    const snapshot = await host.read();
    const { mapping, notes } = await storedLayout(host);
    const result = checkWorkbook(snapshot, mapping);
    expectCounts(result);
    for (const said of [...host.notes(), ...notes, ...result.findings.map(({ sentence }) => sentence)]) expectSentence(said, input);
    expectReadersAgree(snapshot);
    return "result";
  }, input);
}
