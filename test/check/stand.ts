import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { Finding, FindingKind } from "../../src/check/finding.ts";
import { type CellAddress, placeName } from "../../src/workbook/address.ts";
import { type Typed, workbook } from "./workbook.ts";

export const at = (cell: CellAddress): string => placeName(cell);

/** The findings of one kind in a workbook; in every one of them each row is either checked or refused. */
export function findingsOf(kind: FindingKind, sheets: Record<string, Typed>): Finding[] {
  const { findings, rowsIn, checked, refused } = checkWorkbook(workbook(sheets));
  expect(rowsIn).toBe(checked + refused);
  return findings.filter((finding) => finding.kind === kind);
}
