import { spawn } from "node:child_process";
import { appendFileSync, readFileSync, renameSync, rmSync, symlinkSync, truncateSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";
import { crosshatch, folderOf, jsonLines } from "./run.ts";

// Runs start threads, and the machine may be busy.
import.meta.jest.setTimeout(120_000);

const book = (clearance: number): Uint8Array =>
  workbookBytes({
    sheets: [
      {
        name: "Bores",
        cells: [
          ["Cylinder", "Clearance", "Verdict", "Lower", "Upper"],
          [1, clearance, { f: "HATCH.VERDICT(B2,D2,E2)", v: clearance > 0.04 ? "over" : "within" }, 0.02, 0.04],
        ],
      },
    ],
  });

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true });
});

/** Workbooks of which every second one is over, readings and one file that cannot be read. */
function archive(books: number): string {
  const files: Record<string, string | Uint8Array> = { "readings.csv": "value,upper\n2,1\nx,1\n1,2\n", "cut.xlsx": "no workbook" };
  for (let i = 0; i < books; i++) files[`engine-${String(i).padStart(3, "0")}.xlsx`] = book(i % 2 ? 0.05 : 0.03);
  folders.push(folderOf(files));
  return folders.at(-1)!;
}

const PATTERNS = ["*.xlsx", "*.csv"];

async function checked(folder: string, ...more: string[]) {
  const { code, out, err } = await crosshatch(["check", "--json", "--ledger", "ledger.ndjson", ...more, ...PATTERNS], { cwd: folder });
  const lines = jsonLines(out);
  return { code, err, total: lines.at(-1)!, files: lines.slice(0, -1).map(({ file }) => file) };
}

/** What stands in the ledger, whole lines only. */
const ledgerOf = (folder: string) =>
  readFileSync(join(folder, "ledger.ndjson"), "utf8")
    .split("\n")
    .filter((line) => line.endsWith('"whole":true}'))
    .map((line) => JSON.parse(line) as { file: string; findings: number; list: { sentence: string }[] });

test("unchanged files are skipped by their content and their earlier findings counted, changed ones are checked", async () => {
  const folder = archive(4);
  const first = await checked(folder);
  expect(first.total).toMatchObject({ files: 6, rowsIn: 7, findings: 4, skipped: { files: 0, findings: 0 }, unread: [{ file: "cut.xlsx" }] });
  expect(ledgerOf(folder).map(({ file, findings, list }) => [file, findings, list.length])).toEqual([
    ["engine-000.xlsx", 0, 0],
    ["engine-001.xlsx", 1, 1],
    ["engine-002.xlsx", 0, 0],
    ["engine-003.xlsx", 1, 1],
    ["readings.csv", 2, 2],
  ]);
  const before = readFileSync(join(folder, "ledger.ndjson"));
  utimesSync(join(folder, "engine-000.xlsx"), new Date(0), new Date());
  const second = await checked(folder);
  // What cannot be read is tried every time, as it is not known what is in it.
  expect(second).toMatchObject({
    code: 2,
    files: [],
    total: { files: 6, rowsIn: 0, findings: 0, skipped: { files: 5, findings: 4 }, unread: [{ file: "cut.xlsx" }] },
  });
  expect(readFileSync(join(folder, "ledger.ndjson"))).toEqual(before);

  rmSync(join(folder, "cut.xlsx"));
  writeFileSync(join(folder, "engine-000.xlsx"), book(0.06));
  const third = await checked(folder);
  expect(third).toMatchObject({ code: 1, files: ["engine-000.xlsx"], total: { files: 5, findings: 1, skipped: { files: 4, findings: 4 } } });
  // The findings of unchanged files are still there, so not all is within.
  expect(await checked(folder)).toMatchObject({ code: 1, files: [], total: { skipped: { files: 5, findings: 5 } } });
  const { out } = await crosshatch(["check", "--ledger", "ledger.ndjson", ...PATTERNS], { cwd: folder });
  expect(out).toBe("5 files: 0 of 0 rows checked, 0 findings, 5 unchanged files skipped with 5 earlier findings\n");
});

test("numbers written another way are checked again, and an archive may be moved with its ledger", async () => {
  const folder = archive(1);
  await checked(folder);
  expect((await checked(folder, "--locale", "de")).total).toMatchObject({ skipped: { files: 0 } });
  const moved = `${folder}-moved`;
  renameSync(folder, moved);
  folders.push(moved);
  folders.splice(folders.indexOf(folder), 1);
  expect((await checked(moved, "--locale", "de")).total).toMatchObject({ skipped: { files: 2 } });
});

test("a damaged line is told and its file checked again, wherever a line was cut off", async () => {
  const folder = archive(2);
  await checked(folder);
  const path = join(folder, "ledger.ndjson");
  const whole = readFileSync(path);
  for (const cut of [1, 15, 250]) {
    writeFileSync(path, whole);
    truncateSync(path, whole.length - cut);
    const again = await checked(folder);
    // Without its line end alone the line is not known to be whole either.
    expect(again.err).toContain("ledger.ndjson has a damaged line 3: what it told of is checked again");
    expect(again.total).toMatchObject({ skipped: { files: 2 }, rowsIn: 3 });
    expect((await checked(folder)).total).toMatchObject({ skipped: { files: 3 }, rowsIn: 0 });
  }
  appendFileSync(path, "{}\n\n[]\n");
  expect((await checked(folder)).total).toMatchObject({ skipped: { files: 3 } });
});

test("a run killed at any moment loses nothing and repeats nothing, and leaves the report that was there", async () => {
  const folder = archive(60);
  rmSync(join(folder, "cut.xlsx"));
  const report = ["--report", "report.html", "--force", "--threads", "2"];
  const args = [join(root, "src", "cli", "crosshatch.mjs"), "check", "--json", "--ledger", "ledger.ndjson", ...report, ...PATTERNS];
  writeFileSync(join(folder, "report.html"), "an older one");
  for (const lines of [1, 7, 12]) {
    const child = spawn(process.execPath, args, { cwd: folder, env: { ...process.env, NODE_OPTIONS: "" } });
    let told = 0;
    child.stdout.on("data", (chunk: Buffer) => {
      told += chunk.toString().split("\n").length - 1;
      if (told >= lines) child.kill("SIGKILL");
    });
    await new Promise((resolve) => child.on("close", resolve));
    expect(readFileSync(join(folder, "report.html"), "utf8")).toBe("an older one");
  }
  const known = ledgerOf(folder).length;
  expect(known).toBeGreaterThanOrEqual(20);
  expect(known).toBeLessThan(61);
  const last = await checked(folder, ...report);
  expect(last.total).toMatchObject({ files: 61, skipped: { files: known } });
  expect(readFileSync(join(folder, "report.html"), "utf8")).toMatch(/<\/html>\s*$/);
  const entries = ledgerOf(folder);
  expect(entries.map(({ file }) => file).sort()).toEqual([
    ...Array.from({ length: 60 }, (_, i) => `engine-${String(i).padStart(3, "0")}.xlsx`),
    "readings.csv",
  ]);
  expect(entries.reduce((sum, { findings }) => sum + findings, 0)).toBe(32);
  expect(entries.reduce((sum, { list }) => sum + list.length, 0)).toBe(32);
});

test("a ledger that cannot be kept is refused, and findings that are not kept do not go into one", async () => {
  const folder = archive(0);
  const run = (...args: string[]) => crosshatch(["check", "--json", ...args, "readings.csv"], { cwd: folder });
  expect(await run("--ledger", "none/ledger.ndjson")).toMatchObject({
    code: 2,
    out: "",
    err: expect.stringContaining("none/ledger.ndjson cannot be written: there is no folder none"),
  });
  expect(await run("--ledger", "l.ndjson", "--as-found")).toMatchObject({
    code: 2,
    out: "",
    err: expect.stringContaining("--as-found and --ledger do not go together"),
  });
});

test("nothing is added to a file that is no ledger, and never to one that is checked, by whatever name", async () => {
  const folder = archive(2);
  const run = (...args: string[]) => crosshatch(["check", ...args], { cwd: folder });
  const before = readFileSync(join(folder, "engine-000.xlsx"));
  symlinkSync("engine-000.xlsx", join(folder, "link.ndjson"));
  writeFileSync(join(folder, "notes.txt"), "torque 45 Nm\n");
  const refused = [
    [["--ledger", "engine-001.xlsx", "engine-000.xlsx"], "engine-001.xlsx is no ledger of crosshatch, and nothing is added to it: give another name"],
    [["--ledger", "notes.txt", "engine-000.xlsx"], "notes.txt is no ledger of crosshatch"],
    [["--ledger", "link.ndjson", "engine-000.xlsx"], "link.ndjson is one of the files to be checked (engine-000.xlsx): give another name for the ledger"],
    [["--ledger", "/dev/null", "engine-000.xlsx"], "/dev/null is no ordinary file, which a ledger is: give another name"],
    [
      ["--refused", "link.ndjson", "--force", "engine-000.xlsx"],
      "link.ndjson is one of the files to be checked (engine-000.xlsx): give another name for what is refused",
    ],
  ] as const;
  for (const [args, err] of refused) expect(await run(...args)).toMatchObject({ code: 2, out: "", err: expect.stringContaining(err) });
  expect(readFileSync(join(folder, "engine-000.xlsx")).equals(before)).toBe(true);
  expect(readFileSync(join(folder, "notes.txt"), "utf8")).toBe("torque 45 Nm\n");
});

test("a ledger of which only a part of its first line was written is one", async () => {
  const folder = archive(1);
  writeFileSync(join(folder, "ledger.ndjson"), '{"fil');
  const { code, total } = await checked(folder);
  expect([code, total]).toEqual([2, expect.objectContaining({ files: 3, skipped: { files: 0, findings: 0 } })]);
  expect(ledgerOf(folder)).toHaveLength(2);
});
