import { extname } from "node:path";
import type { DecimalSign } from "../check/csv/check-csv.ts";
import { type CheckedFile, STANDARD_INPUT } from "./checked.ts";
import { Refusal } from "./exit-codes.ts";
import { complain } from "./output.ts";
import { PAPERS, type Paper, pdfOf } from "./pdf.ts";
import { Gathered } from "./report-pages.ts";
import { put, refusedTarget } from "./safe-file.ts";

export interface ReportFlags {
  force?: boolean;
  paper?: string;
}

/** A report that is gathered while the inputs are checked. */
export interface ReportRun {
  take(checked: CheckedFile): void;
  /** Writes it; answers with the file in which it stands. */
  write(decimal: DecimalSign): Promise<string>;
}

/** Says before anything is checked what would keep the report from being written. */
export async function openReport(out: string, files: readonly string[], { force = false, paper = "A4" }: ReportFlags): Promise<ReportRun> {
  const kind = extname(out).toLowerCase();
  if (kind !== ".html" && kind !== ".pdf") throw new Refusal(`${out} ends with neither .html nor .pdf, which is what is written`);
  const size = PAPERS.find((one) => one.toLowerCase() === paper.toLowerCase());
  if (!size) throw new Refusal(`--paper ${paper} is not known: wanted is A4 or letter`);
  if (files.includes(STANDARD_INPUT)) throw new Refusal("--report wants files: what comes from standard input is gone once it has been checked");
  refusedTarget(out, force);
  const gathered = new Gathered(files.length);
  return {
    take: (checked) => gathered.take(checked),
    async write(decimal) {
      const page = await gathered.page(today(), decimal);
      return kind === ".pdf" ? putPdf(out, page, size, force) : putPage(out, page, force);
    },
  };
}

async function putPage(out: string, page: string, force: boolean): Promise<string> {
  put(out, page, force);
  return out;
}

/** Without a browser the page itself is written beside, and it is said what to do with it. */
async function putPdf(out: string, page: string, paper: Paper, force: boolean): Promise<string> {
  const pdf = await pdfOf(page, paper);
  if (!("why" in pdf)) {
    put(out, pdf.bytes, force);
    return out;
  }
  const instead = `${out.slice(0, -extname(out).length)}.html`;
  put(instead, page, force);
  complain(`no PDF could be made: ${pdf.why}. The report stands in ${instead}: open it in a browser and print it from there`);
  return instead;
}

/** The day where this machine stands. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}
