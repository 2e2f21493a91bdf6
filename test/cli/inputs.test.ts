import { mkdirSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { shareOf } from "../../src/cli/shard-command.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";
import { crosshatch, folderOf, jsonLines } from "./run.ts";

// Runs start threads, and the machine may be busy.
import.meta.jest.setTimeout(120_000);

/** One clearance of a cylinder, judged by limits on the sheet. */
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

const folder = folderOf({ "all.csv": "value,lower,upper\n73.02,73,73.05\nx,73,73.05\n=1+1,73,73.05\n,,\n73.06,73,73.05\n", "a[1].csv": "value,upper\n1,2\n" });
mkdirSync(join(folder, "archive", "older"), { recursive: true });
for (const [i, path] of ["b.xlsx", "a.xlsx", "older/z.xlsx", "older/c.xlsx", "older/d.xlsx", "older/e.xlsx", "~$a.xlsx"].entries())
  writeFileSync(join(folder, "archive", path), i === 3 ? "no workbook" : book(i % 2 ? 0.05 : 0.03));
afterAll(() => rmSync(folder, { recursive: true }));

const run = (...args: string[]) => crosshatch(args, { cwd: folder });
const checked = async (...args: string[]) => {
  const { code, out, err } = await run("check", "--json", ...args);
  const lines = jsonLines(out);
  return { code, err, total: lines.pop()!, files: lines.map(({ file }) => file) };
};

describe("patterns", () => {
  test("stand for their files in the order of their paths, whatever shell there is; one bad file stops nothing", async () => {
    const { code, total, files, err } = await checked("archive/**/*.xlsx");
    expect(files).toEqual(["archive/a.xlsx", "archive/older/e.xlsx"]);
    expect(total).toMatchObject({ files: 6, rowsIn: 5, checked: 5, findings: 2, unread: [{ file: "archive/older/c.xlsx" }] });
    expect(code).toBe(2);
    expect(err).toMatch(/^crosshatch: archive\/older\/c\.xlsx is .+\n$/);
  });

  test("a file named twice is checked once, and a name with signs of a pattern is a name where there is such a file", async () => {
    expect((await checked("a[1].csv", "all.csv", "*.csv")).total).toMatchObject({ files: 2, rowsIn: 5 });
  });

  test("one that fits no file is refused", async () => {
    expect(await run("check", "none/**/*.xlsx")).toMatchObject({ code: 2, out: "", err: "crosshatch: none/**/*.xlsx fits no file. See crosshatch help\n" });
  });
});

describe("since a date", () => {
  test("files not changed since are left out, and counted", async () => {
    const old = new Date("2026-01-31T12:00");
    for (const path of ["archive/b.xlsx", "archive/older/z.xlsx"]) utimesSync(join(folder, path), old, old);
    const day = await checked("--since", "2026-01-31", "archive/b.xlsx", "archive/older/z.xlsx");
    expect(day.total).toMatchObject({ files: 2, leftOut: 0 });
    expect((await checked("--since", "2026-02-01", "archive/*.xlsx", "archive/older/z.xlsx")).total).toMatchObject({ files: 1, leftOut: 2 });
    const { out } = await run("check", "--since", "2026-02-01", "archive/b.xlsx");
    expect(out).toBe("0 files: 0 of 0 rows checked, 0 findings, 1 file left out, not changed since the date given\n");
  });

  test.each(["yesterday", "2026-13-01", "31.01.2026"])("%s is no date", async (date) => {
    expect((await run("check", "--since", date, "all.csv")).err).toContain(`${date} is no date: it must be one such as 2026-01-31`);
  });
});

describe("refused rows in a file of their own", () => {
  const list = () => readFileSync(join(folder, "refused.csv"), "utf8");

  test("each with its line, the reason and what stood there, nothing of it a formula", async () => {
    const { total } = await checked("--refused", "refused.csv", "all.csv", "archive/a.xlsx");
    expect(total).toMatchObject({ rowsIn: 5, checked: 3, refused: 2 });
    expect(list()).toBe(
      [
        "file,line or cell,reason,as written",
        'all.csv,3,"value holds the text ""x"": it must be a number","x,73,73.05"',
        'all.csv,4,"value holds the text ""=1+1"": it must be a number","\'=1+1,73,73.05"',
        "",
      ].join("\n"),
    );
  });

  test("nothing is overwritten but by --force, and then only when the list is complete; never a file that is checked", async () => {
    const before = list();
    expect((await run("check", "--refused", "refused.csv", "a[1].csv")).err).toContain("refused.csv is already there and is left as it is");
    expect((await run("check", "--refused", "./all.csv", "--force", "all.csv")).err).toContain("./all.csv is one of the files to be checked");
    expect((await run("check", "--refused", "none/list.csv", "all.csv")).err).toContain("there is no folder none");
    expect(list()).toBe(before);
    await run("check", "--refused", "refused.csv", "--force", "a[1].csv");
    expect(list()).toBe("file,line or cell,reason,as written\n");
    expect(readdirSync(folder).filter((name) => name.startsWith("."))).toEqual([]);
  });
});

describe("as found", () => {
  test("findings leave in the order of lines, before the input has ended", async () => {
    const { out } = await crosshatch(["check", "--json", "--as-found", "-"], { input: "value,upper\n2,1\n1,2\n9,1\n" });
    expect(jsonLines(out)).toMatchObject([{ line: 2 }, { line: 4 }, { rowsIn: 3, findings: 2 }]);
    expect((await run("check", "--as-found", "all.csv")).err).toContain("--as-found needs --json");
  });
});

describe("shares", () => {
  test("of all together are all files, each once, in their order, and the same again", async () => {
    const shares = await Promise.all([1, 2, 3].map(async (k) => (await run("shard", `${k}/3`, "archive/**/*.xlsx")).out.split("\n").filter(Boolean)));
    expect(shares.flat().sort()).toEqual(["a", "b", "older/c", "older/d", "older/e", "older/z"].map((name) => `archive/${name}.xlsx`));
    for (const share of shares) expect(share).toEqual([...share].sort());
    expect((await run("shard", "2/3", "--null", "archive/**/*.xlsx")).out).toBe(shares[1]!.map((name) => `${name}\0`).join(""));
  });

  test("are by the path alone, however it is written, and about alike", () => {
    // printf %s archive/a.xlsx | sha256sum, first 12 figures, modulo 4, counted from 1
    for (const path of ["archive/a.xlsx", "./archive/a.xlsx", ".\\archive\\a.xlsx"]) expect(shareOf(path, 4)).toBe(4);
    const counts = new Array(8).fill(0);
    for (let i = 0; i < 8000; i++) counts[shareOf(`archive/${i}.xlsx`, 8) - 1]++;
    // Eight sigma of a fair draw of 8000 by 1/8.
    for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(8 * Math.sqrt(8000 * (1 / 8) * (7 / 8)));
  });

  test.each(["0/3", "4/3", "1", "a/b", "1/0"])("%s is no share", async (share) => {
    expect(await run("shard", share, "all.csv")).toMatchObject({ code: 2, out: "", err: expect.stringContaining(`${share} is no share`) });
  });
});
