import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { basename, extname } from "node:path";
import { Readable } from "node:stream";
import { readingsOfCsv } from "../buildsheet/compare/csv.ts";
import { checkCsv, type DecimalSign } from "../buildsheet/csv.ts";
import { JudgedRows } from "../buildsheet/judged.ts";
import { NO_SHEET_CONTENT, type ReportInput } from "../report/content.ts";
import { contentOfReadings } from "../report/gather/readings.ts";
import { renderReport } from "../report/report.ts";
import { STANDARD_INPUT } from "./batch/patterns.ts";
import { EngineThread } from "./engine-thread.ts";
import { Refusal } from "./exit-codes.ts";
import { complain } from "./output.ts";
import { PAPERS, type Paper, pdfOf } from "./pdf.ts";
import { put, refuseTarget } from "./put.ts";
import { plain } from "./text.ts";
import { reasonOf, unknownKind } from "./unread.ts";

export interface ReportFlags {
  force?: boolean;
  paper?: string;
}

/** Megabytes that one workbook may take. */
const MEGABYTES = 2048;

/** Says before anything is checked what would keep the report from being written; gives how to write it, which answers with the file in which it stands. */
export async function openReport(
  out: string,
  files: readonly string[],
  { force = false, paper = "A4" }: ReportFlags,
): Promise<(decimal: DecimalSign) => Promise<string>> {
  const kind = extname(out).toLowerCase();
  if (kind !== ".html" && kind !== ".pdf") throw new Refusal(`${out} ends with neither .html nor .pdf, which is what is written`);
  const size = PAPERS.find((one) => one.toLowerCase() === paper.toLowerCase());
  if (!size) throw new Refusal(`--paper ${paper} is not known: wanted is A4 or letter`);
  if (files.includes(STANDARD_INPUT)) throw new Refusal("--report wants files: what comes from standard input is gone once it has been checked");
  await refuseTarget(out, force);
  return async (decimal) => {
    const page = renderReport(await readInputs(files, decimal), { date: today() });
    return kind === ".pdf" ? putPdf(out, page, size, force) : putPage(out, page, force);
  };
}

async function putPage(out: string, page: string, force: boolean): Promise<string> {
  await put(out, page, force);
  return out;
}

/** Without a browser the page itself is written beside, and it is said what to do with it. */
async function putPdf(out: string, page: string, paper: Paper, force: boolean): Promise<string> {
  const pdf = await pdfOf(page, paper);
  if (!("why" in pdf)) {
    await put(out, pdf.bytes, force);
    return out;
  }
  const instead = `${out.slice(0, -extname(out).length)}.html`;
  await put(instead, page, force);
  complain(`no PDF could be made: ${plain(pdf.why)}. The report stands in ${plain(instead)}: open it in a browser and print it from there`);
  return instead;
}

/** The day where this machine stands. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

async function readInputs(files: readonly string[], decimal: DecimalSign): Promise<ReportInput[]> {
  const engine = new EngineThread(MEGABYTES);
  const inputs: ReportInput[] = [];
  try {
    for (const file of files) inputs.push(await readInput(file, decimal, engine));
  } finally {
    await engine.close();
  }
  return inputs;
}

async function readInput(file: string, decimal: DecimalSign, engine: EngineThread): Promise<ReportInput> {
  const name = basename(file);
  const kind = extname(file).toLowerCase();
  if (kind !== ".xlsx" && kind !== ".csv") return unread(name, unknownKind(kind));
  try {
    const bytes = await readFile(file);
    const fingerprint = { sha256: createHash("sha256").update(bytes).digest("hex"), of: "file" as const };
    if (kind === ".csv") return { ...(await inputOfCsv(name, bytes, decimal)), fingerprint };
    const answer = await engine.ask({ kind: "report", name, bytes });
    return "fault" in answer ? { ...unread(name, answer.fault), fingerprint } : { ...answer.input, fingerprint };
  } catch (error) {
    return unread(name, reasonOf(error));
  }
}

const unread = (name: string, why: string): ReportInput => ({
  name,
  result: { findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0 },
  judged: new JudgedRows(),
  content: NO_SHEET_CONTENT,
  notes: [],
  unread: why,
});

async function inputOfCsv(name: string, bytes: Uint8Array, decimal: DecimalSign): Promise<ReportInput> {
  const judged = new JudgedRows();
  const { unread: why, ...result } = await checkCsv(Readable.from([bytes]), { name, decimal, judged: judged.take });
  // What is too long to be printed is too long to be drawn.
  const { readings } = result.rowsIn > judged.most ? { readings: [] } : await readingsOfCsv(Readable.from([bytes]), { name, decimal });
  return { name, result, judged, content: contentOfReadings(readings), notes: [], ...(why ? { unread: why } : {}) };
}
