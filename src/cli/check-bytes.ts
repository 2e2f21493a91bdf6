import { basename } from "node:path";
import { TooMuchWork } from "../calc/grid-model.ts";
import { Analysis } from "../check/analysis.ts";
import { checkAnalysed } from "../check/check-workbook.ts";
import { JudgedRows } from "../check/finding.ts";
import { openWorkbook, UnreadableFile } from "../hosts/file.ts";
import { recallLayout } from "../layout/recall.ts";
import { gather, withPicture } from "../report/gather/workbook.ts";
import { factsOf } from "../report/gather/workbook-facts.ts";
import type { WorkbookAnswer, WorkbookTask } from "./checked.ts";
import { unpack } from "./unpack.ts";
import { tooMuchWork } from "./workbook-limits.ts";

/** A workbook from its bytes, of this hash, to its findings. */
export async function checkBytes(bytes: Uint8Array, hash: string, { path, copy, facts = false, page = false, work }: WorkbookTask): Promise<WorkbookAnswer> {
  try {
    const host = await openWorkbook(bytes, basename(path), unpack, work);
    const { mapping, notes } = await recallLayout(host);
    const snapshot = await host.read();
    const analysis = new Analysis(snapshot, page || mapping !== undefined);
    const judged = new JudgedRows();
    const { rows, counts } = judged;
    const checked = { result: checkAnalysed(analysis, mapping, facts || page ? judged.take : undefined), notes: [...host.notes(), ...notes] };
    // Where no layout is kept and nothing is judged, there may be one to keep.
    const unmapped = mapping === undefined && checked.result.rowsIn === 0 ? (await import("../layout/propose.ts")).unmappedText(snapshot) : undefined;
    const pictured = page ? await withPicture(gather(analysis, rows, mapping), host) : undefined;
    return {
      ...checked,
      notes: [...checked.notes, ...(pictured?.notes ?? [])],
      hash,
      ...(unmapped === undefined ? {} : { unmapped }),
      // What writes copies is only read where one is wanted.
      ...(copy ? { copy: (await import("./marked-copies.ts")).writeCopy(bytes, host.contents(), checked, copy) } : {}),
      ...(facts ? { facts: factsOf(snapshot.sheets, checked.result.findings, rows) } : {}),
      ...(pictured ? { page: { judged: { rows, counts }, content: pictured.content } } : {}),
    };
  } catch (error) {
    if (error instanceof TooMuchWork) return { fault: tooMuchWork(error.reason), hash };
    if (error instanceof UnreadableFile) return { fault: error.reason, hash };
    // Whatever the input made of the engine must not end the run.
    return { hash, fault: `led to a fault in Crosshatch: ${error instanceof Error ? error.message : error}` };
  }
}
