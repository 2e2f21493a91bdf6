import { readingsOfWorkbook } from "../compare/from-workbook.ts";
import { openWorkbook } from "../hosts/file.ts";
import { recallLayout } from "../layout/recall.ts";
import type { ReadingsAnswer, Task } from "./grid-thread.ts";
import { unpack } from "./unpack.ts";

/** The readings of a workbook as it is calculated; a file of its own, as a formula alone needs nothing of it. */
export async function readingsIn({ bytes, name, work, uncertainty }: Task & { kind: "readings" }): Promise<ReadingsAnswer> {
  const host = await openWorkbook(bytes, name, unpack, work);
  const snapshot = await host.read();
  const kept = await recallLayout(host);
  const notes = [...host.notes(), ...kept.notes];
  const set = readingsOfWorkbook(snapshot, { uncertainty, mapping: kept.mapping });
  return { set: { ...set, notes: [...notes, ...set.notes] } };
}
