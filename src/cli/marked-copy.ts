import { type CheckResult, specOf } from "../check/finding.ts";
import { marksOf, wordOf } from "../check/finding-words.ts";
import { VERSION } from "../core/version.ts";
import type { FileHost } from "../hosts/file.ts";
import { UnreadableFile } from "../xlsx/file-limits.ts";
import type { FindingsPage } from "../xlsx/patch/findings-sheet.ts";
import { markedCopy } from "../xlsx/patch/marked-copy.ts";
import { found, sums } from "./check-page.ts";
import type { Copied, CopyTask } from "./checked.ts";
import { Refusal } from "./exit-codes.ts";
import { put } from "./safe-file.ts";

/** What a check of a workbook came to. */
interface CheckedBook {
  result: CheckResult;
  notes: readonly string[];
}

/** Writes the copy of a workbook that has been checked; what keeps it from being written does not spoil the check. */
export function writeCopy(bytes: Uint8Array, contents: ReturnType<FileHost["contents"]>, checked: CheckedBook, { to, force }: CopyTask): Copied {
  try {
    const { bytes: copy, ...counts } = markedCopy(bytes, { ...contents, marks: marksOf(checked.result.findings), page: pageOf(checked) });
    put(to, copy, force);
    return { to, ...counts };
  } catch (error) {
    if (error instanceof Refusal) return { fault: error.message };
    if (error instanceof UnreadableFile) return { fault: `${to} is not written: the workbook ${error.reason}` };
    throw error;
  }
}

function pageOf({ result, notes }: CheckedBook): FindingsPage {
  const { findings } = result;
  return {
    lines: findings.map((finding) => ({
      cell: finding.cell,
      tone: specOf(finding.kind).mark,
      word: wordOf(finding),
      label: finding.label,
      sentence: finding.sentence,
    })),
    remarks: [
      `${sums(result)}, ${found(findings.length)}. Checked by Crosshatch ${VERSION}, which wrote the values of formulas and the marks into this copy; the original is as it was.`,
      "Limits are those that stand in this workbook. The maker's service manual and a qualified technician decide.",
      ...notes.map((note) => `Note: ${note}`),
    ],
  };
}
