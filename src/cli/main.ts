import { Command, CommanderError } from "commander";
import { PLAN_FIELDS } from "../compare/trial-plan-fields.ts";
import { VERSION } from "../core/version.ts";
import { SHEET_WORDS } from "../setup/sheets.ts";
import type { BenchOptions } from "./bench-command.ts";
import type { CheckOptions } from "./check-command.ts";
import { MOST_SORTED } from "./checked.ts";
import type { CompareFlags } from "./compare-command.ts";
import { ALL_WELL, Refusal, UNREADABLE } from "./exit-codes.ts";
import type { LimitsOptions } from "./limits-command.ts";
import type { NewOptions } from "./new-command.ts";
import { complain, print } from "./output.ts";
import { type Streams, streams, withStreams } from "./streams.ts";
import type { TrialPlanFlags } from "./trial-plan-command.ts";
import { withWorkbookLimits } from "./workbook-limits.ts";

/** What was wrong with the arguments is said by us. */
const OUTPUT = { writeOut: (text: string) => void streams().stdout.write(text), writeErr: () => {} };

/** The command line. Each command loads what it needs when it runs, so that the others start at once. */
function program(done: (code: number) => void): Command {
  const root = new Command("crosshatch")
    .description("Worksheet functions and checks for engine build sheets")
    .version(VERSION, "--version", "print the version")
    .helpOption("--help", "print this")
    .helpCommand(false)
    .enablePositionalOptions()
    .exitOverride()
    .configureOutput(OUTPUT)
    .showSuggestionAfterError();

  const checking = root
    .command("check")
    .description(
      "check build sheets (.xlsx, .ods) and readings (.csv, - for standard input): what is outside its limits, doubtful, missing or mistyped, worst first",
    )
    .argument("[file...]", "workbooks and readings, or patterns such as 'archive/**/*.xlsx'")
    .option(
      "--json",
      `one line of JSON for each finding, and one with the counts at the end; of a .csv with more than ${MOST_SORTED.toLocaleString("en")} findings the worst come last, in order, and the others before them as they are found`,
    )
    .option("--as-found", "with --json: print findings of readings at once, in the order of their lines, for a stream that does not end")
    .option("--locale <tag>", "how numbers in .csv are written: de reads a decimal comma", "en")
    .option("--encoding <name>", "how letters in .csv are encoded, such as windows-1250; otherwise this is recognised, and named where it is not UTF-8")
    .option("--refused <list.csv>", "write down each row that could not be judged, with its line and the reason")
    .option("--since <date>", "only files changed on that date or later, as the file system says")
    .option(
      "--from <select>",
      "check the rows that DuckDB selects, such as \"SELECT * FROM 'readings.parquet'\"; DuckDB's package must be installed separately",
    )
    .option("--ledger <list.ndjson>", "keep a ledger: note what each file came to, and check it again only when its content has changed; for one run at a time")
    .option("--report <file>", "write one printable page, .html or .pdf: results and verdicts, limits, drawings, findings, cautions")
    .option("--paper <size>", "paper of a PDF: A4 or letter", "A4")
    .option("--details", "with --report of one workbook: the findings, how verdicts are reached, gauges and limits in full")
    .option(
      "--marked <folder>",
      "write a copy of each workbook with calculated values and marks in its cells, and its findings on a sheet; a .csv has no cells to mark",
    )
    .option("--threads <count>", "how many workbooks are checked at a time; by default as many as the machine has processors")
    .option("--force", "overwrite what is there")
    .addHelpText(
      "after",
      "\nThe exit code is 0 when everything is within its limits, 1 when there are findings (also earlier ones of unchanged files), and 2 when an input could not be read.",
    )
    .action(async (files: string[], options: CheckOptions) => done(await (await import("./check-command.ts")).check(files, options)));
  withWorkbookLimits(checking);

  const compared = root
    .command("compare")
    .description(
      "compare two build sheets (.xlsx, .ods or .csv each), or the two sides of one: what differs, what is the same within what matters, what cannot be told",
    )
    .argument("<before>", "the build, or one engine; or one file with both sides")
    .argument("[after]", "the strip-down of the same engine, or the other engine")
    .option("--engines <names>", "compare two engines: their changes where both are on both sides, else the sizes of the first with those of the second: A,B")
    .action(async (before: string, after: string | undefined, options: CompareFlags) =>
      done(await (await import("./compare-command.ts")).compare(before, after, options)),
    );

  const tried = root
    .command("trial")
    .description("compare engines that were treated in different ways, from any number of files whose rows name engine, group, and before or after")
    .argument("<file...>", "workbooks and readings, or patterns such as 'trial/*.csv'")
    .action(async (files: string[], options: CompareFlags) => done(await (await import("./compare-command.ts")).trial(files, options)));
  for (const command of [compared, tried]) withComparing(command);

  // Options of the same name belong to the comparing before the word plan, and to the plan behind it.
  const planned = tried
    .enablePositionalOptions()
    .command("plan")
    .description("before anybody measures: how small a difference a trial will see, and how many engines it takes")
    .option("--json", "one line of JSON for each line, and one with the plan")
    .action(async (options: TrialPlanFlags) => done(await (await import("./trial-plan-command.ts")).trialPlan(options)));
  for (const [name, { words, kind, ...field }] of Object.entries(PLAN_FIELDS)) {
    const told = "hint" in field ? `${words}: ${field.hint}` : words;
    const usual = "usual" in field ? String(field.usual) : undefined;
    planned.option(`--${name} <${kind === "count" ? "count" : "size"}>`, name === "uncertainty" ? `needed: ${told}` : told, usual);
  }

  root
    .command("shard")
    .description("list the files of one share of the work; every machine gets the same answer")
    .argument("<k/n>", "which share of how many, from 1/4 to 4/4")
    .argument("<file...>", "files or patterns, named alike for every share")
    .option("--null", "end each name with a null, as xargs -0 takes it")
    .action(async (share: string, files: string[], options: { null?: boolean }) =>
      done(await (await import("./shard-command.ts")).shard(share, files, options)),
    );

  root
    .command("calc")
    .description("work out a formula; with - one formula a line from standard input, one line of JSON for each")
    .argument("<formula>", "such as HATCH.TAPER({73.01,73.02;73.00,73.01})")
    .action(async (formula: string) => {
      const { calc, calcLines } = await import("./calc-command.ts");
      done(await (formula === "-" ? calcLines(streams().stdin) : calc(formula)));
    });

  root
    .command("new")
    .description("write an empty build sheet for one engine: tables to type into, our functions beside them; its limits are yours to type")
    .argument("<out.xlsx>", "the workbook to be written; with the ending .ods one for LibreOffice")
    .option("--cylinders <count>", "cylinders of the engine, 1 to 16; needed")
    .option("--heights <count>", "heights at which each bore is measured, 2 to 5", "3")
    .option("--axes <count>", "axes along which each bore is measured, 2 to 4", "2")
    .option("--valves <count>", "valves of each cylinder, 2 to 5", "2")
    .option("--unit <unit>", "of lengths, mm or in", "mm")
    .option("--second-readings", "a sheet for readings by a second person")
    .option("--without <sheets>", `sheets to leave out, separated by commas: any of ${SHEET_WORDS.join(", ")}`)
    .option(
      "--limits <book>",
      "copy the limits of an engine model from a limits book of your own, an .xlsx or .ods with a table of limits on a sheet for each model",
    )
    .option("--model <name>", "which sheet of the limits book; not needed where there is only one")
    .option("--trial", "a workbook for a trial of two groups of engines instead: campaigns, masters, readings by cylinder, blind sheets, verdicts")
    .option("--engines <count>", "with --trial: engines in each of the two groups, 1 to 12")
    .option("--seed <number>", "with --trial: the order of measuring is drawn with it, 1 to 999999")
    .option("--use <unit>", "with --trial: in what use is counted: hours (the default), miles or km")
    .option("--force", "overwrite what is there")
    .action(async (out: string, options: NewOptions) => done(await (await import("./new-command.ts")).newBuildSheet(out, options)));

  root
    .command("limits")
    .description("copy limits from a limits book of your own into a workbook that is set up already; limits that differ there are listed and left as they are")
    .argument("<in.xlsx>", "the workbook; it stays as it is")
    .argument("<out.xlsx>", "the copy with the limits in it")
    .option("--limits <book>", "the limits book, an .xlsx or .ods with a table of limits on a sheet for each engine model; needed")
    .option("--model <name>", "which sheet of the limits book; not needed where there is only one")
    .option("--replace", "take the limits of the book even where others are typed")
    .option("--force", "overwrite what is there")
    .action(async (file: string, out: string, options: LimitsOptions) => done(await (await import("./limits-command.ts")).copyLimits(file, out, options)));

  root
    .command("bench")
    .description("open the bench: a spreadsheet in the browser, served to this machine alone, with the functions and the pane in it")
    .argument("[file]", "a workbook (.xlsx) to be opened in it; without one the sample")
    .option("--port <number>", "the port on this machine, 7304 by default; 0 takes any free one")
    .option("--no-open", "do not open a browser")
    .action(async (file: string | undefined, options: BenchOptions) => done(await (await import("./bench-command.ts")).bench(file, options)));

  root
    .command("for-excel")
    .description("turn a workbook that LibreOffice has saved as .xlsx into the form in which Excel stores our functions")
    .argument("<in.xlsx>", "the workbook as LibreOffice saved it; it stays as it is")
    .argument("<out.xlsx>", "the copy for Excel")
    .option("--force", "overwrite what is there")
    .action(async (file: string, out: string, options: { force?: boolean }) => done(await (await import("./excel-command.ts")).forExcel(file, out, options)));

  root
    .command("help")
    .description("list the functions, or tell all about one")
    .argument("[function]", "such as TAPER")
    .action(async (name?: string) => {
      const { functionHelp, functionList } = await import("./help-command.ts");
      const command = root.commands.find((one) => one.name() === name);
      if (command) command.outputHelp();
      else await print(name === undefined ? `${root.helpInformation()}\n${functionList()}` : functionHelp(name));
      done(ALL_WELL);
    });

  // Commands take over the way of ending from their parent only when they are told.
  for (const command of [...root.commands, ...tried.commands]) command.exitOverride().configureOutput(OUTPUT).helpOption("--help", "print this");
  return root;
}

/** What both ways of comparing take. */
function withComparing(command: Command): void {
  withWorkbookLimits(command)
    .option("--hours <hours>", "hours in service between the two, where no column gives them")
    .option("--run-in <use>", "how long the run-in is, in hours, miles or km: it gets a wear rate of its own, which tells nothing of later wear")
    .option(
      "--uncertainty <U>",
      'expanded uncertainty of one length reading where a sheet gives none, or of one characteristic: "ring end gap=0.02"; may be repeated',
      gathered,
    )
    .option(
      "--matters <m>",
      'smallest difference that matters: of every length, or of one characteristic as in "bore=0.01"; may be repeated; or a .csv of them',
      gathered,
    )
    .option("--report <file>", "write one page to publish, .html or .pdf: the answer, every row, gauges and masters, hashes, and the details behind")
    .option("--paper <size>", "paper of a PDF: A4 or letter", "A4")
    .option("--table <out.csv>", "write a table with every line; refused ones with their reasons")
    .option("--force", "overwrite what is there")
    .option("--json", "one line of JSON for each line compared, and one with the summary at the end")
    .option("--locale <tag>", "how numbers in .csv are written: de reads a decimal comma", "en")
    .option("--encoding <name>", "how letters in .csv are encoded, such as windows-1250; needed only where it is not recognised")
    .addHelpText(
      "after",
      "\nThe exit code is 0 when every line is the same within what matters, 1 when something differs, 3 when nothing differs but something cannot be told, and 2 when an input could not be read or nothing could be compared.",
    );
}

/** Values of an option that may be repeated. */
const gathered = (value: string, earlier: string[] = []): string[] => [...earlier, value];

/** Runs the command that the arguments ask for; gives the exit code. */
export const run = (args: readonly string[], given: Streams): Promise<number> => withStreams(given, () => runCommand(args));

async function runCommand(args: readonly string[]): Promise<number> {
  let code = ALL_WELL;
  try {
    const root = program((result) => {
      code = result;
    });
    if (args.length === 0) throw new Refusal("a command is wanted: check, calc, new or help");
    await root.parseAsync(args, { from: "user" });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? ALL_WELL : refuse(error.message.replace(/^error: /, ""));
    if (error instanceof Refusal) return refuse(error.message);
    for (const line of `a fault in Crosshatch: ${error instanceof Error ? error.stack : error}`.split("\n")) complain(line);
    return UNREADABLE;
  }
}

function refuse(sentence: string): number {
  complain(`${sentence}. See crosshatch help`);
  return UNREADABLE;
}
