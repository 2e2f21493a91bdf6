import { createHash } from "node:crypto";
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { crosshatch, folderOf, jsonLines } from "./run.ts";

const HEAD = "group,engine,campaign,cylinder,characteristic,value,unit,U,common,matters,gauge,day";
const SAMPLE = join(root, "samples", "trial", "trial.csv");

/** Two engines of each group, two bores each; `coated` wears by so much more. */
const rows = (engines: string, more: number) =>
  [...engines].flatMap((engine, i) =>
    [1, 2].flatMap((cylinder) =>
      (["before", "after"] as const).map((campaign) => {
        const value = 73 + cylinder / 100 + (campaign === "after" ? 0.01 + more + i / 10_000 : 0);
        return `${engines === "AB" ? "plain" : "coated"},${engine},${campaign},${cylinder},bore,${value.toFixed(4)},mm,0.002,0,0.005,BG-1,${campaign}`;
      }),
    ),
  );
/** Two engines of each group that have not changed at all. */
const still = (matters: number | "") =>
  [..."ABCD"].flatMap((engine) =>
    [1, 2].flatMap((cylinder) =>
      ["before", "after"].map(
        (campaign) =>
          `${engine < "C" ? "plain" : "coated"},${engine},${campaign},${cylinder},bore,${73 + cylinder / 100},mm,0.002,0,${matters},BG-1,${campaign}`,
      ),
    ),
  );
const folder = folderOf({
  "plain.csv": [HEAD, ...rows("AB", 0)].join("\n"),
  "coated.csv": [HEAD, ...rows("CD", 0.02)].join("\n"),
  "alike.csv": [HEAD, ...rows("CD", 0)].join("\n"),
  "still.csv": [HEAD, ...still(0.005)].join("\n"),
  "still open.csv": [HEAD, ...still("")].join("\n"),
  "broken.csv": "what,ever\n1,2\n",
});
afterAll(() => rmSync(folder, { recursive: true }));

const run = (...args: string[]) => crosshatch(args, { cwd: folder });

test("groups from two files: what differs stands first, and leaves 1", async () => {
  const { code, out, err } = await run("trial", "plain.csv", "coated.csv");
  expect({ code, err }).toEqual({ code: 1, err: "" });
  expect(out.split("\n").slice(0, 4)).toEqual([
    "plain.csv and coated.csv, before against after",
    "  8 of 8 lie beyond their own gauge; hardly one would by chance; 8 remain.",
    "  differs",
    expect.stringMatching(/^ {4}coated against plain: bore +plain 0.01005, coated 0.03005 +coated grew by 0.02000 more, 2 engines against 2: differs, /),
  ]);
});

test("each line of JSON carries what every judged line carries", async () => {
  const { out } = await run("trial", "plain.csv", "coated.csv", "--json");
  const lines = jsonLines(out);
  const groups = lines.find(({ kind }) => kind === "groups")!;
  expect(groups).toMatchObject({
    ...{ groups: ["plain", "coated"], engines: [2, 2], characteristic: "bore", level: "group", family: "groups", unit: "mm", n: 4 },
    ...{ verdict: "differs", matters: 0.005, withinMatters: false, places: 2 },
  });
  for (const key of ["by", "degreesOfFreedom", "uncertainty", "commonUncertainty", "lower", "upper", "p", "pAdjusted", "mayHide", "toSee"])
    expect(groups).toHaveProperty(key);
  expect(lines.at(-1)).toMatchObject({ kind: "summary", rows: 8, compared: 8, counts: { groups: { lines: 1, differs: 1 } } });
});

test("a sample with a master says what it moved by in every change", async () => {
  const { code, out } = await run("trial", SAMPLE, "--json");
  expect(code).toBe(1);
  const change = jsonLines(out).find(({ kind, characteristic }) => kind === "change" && characteristic === "bore")! as Record<string, number>;
  expect(change.masterMoved).toBe(0.006);
  expect(change.change).toBeCloseTo(change.after! - change.before! - 0.006, 9);
});

test("groups that changed alike are the same within what matters, while their engines differ and leave 1", async () => {
  const { code, out } = await run("trial", "plain.csv", "alike.csv");
  expect(code).toBe(1);
  expect(out).toMatch(/coated against plain: bore .*changed alike, 2 engines against 2: the same within 0.005/);
});

test("where every line is the same within what matters it leaves 0, and 3 where nothing says what matters", async () => {
  expect((await run("trial", "still.csv")).code).toBe(0);
  const { code, out } = await run("trial", "still open.csv");
  expect(code).toBe(3);
  expect(out).toContain("0 differ, ");
});

test("a file that cannot be read is named, and leaves 2", async () => {
  expect(await run("trial", "plain.csv", "broken.csv")).toMatchObject({ code: 2, out: "" });
});

describe("a page to publish", () => {
  test("has the answer, every row, the gauges, the command and the hash of the file; the table has the same", async () => {
    expect(await run("trial", SAMPLE, "--report", "page.html", "--table", "table.csv")).toMatchObject({ code: 1, err: "" });
    const page = readFileSync(join(folder, "page.html"), "utf8");
    const text = page.replace(/<[^>]+>/g, " ").replace(/\s+/g, " ");
    expect(text).toContain("Between the engines, bore: differs; piston skirt, crankpin: the same within what matters; top ring end gap: nobody can tell.");
    expect(text).toContain("crosshatch trial trial.csv");
    expect(text).toContain(createHash("sha256").update(readFileSync(SAMPLE)).digest("hex"));
    expect(page.match(/<tr><td class="what">cylinder /g)).toHaveLength(30);
    const table = readFileSync(join(folder, "table.csv"), "utf8").trim().split("\r\n");
    expect(table[0]).toMatch(/^kind,between,.*,A before,A after,A correction,A change,A U,A verdict,B before,.*,difference,U,.*,verdict,reason$/);
    expect(table.filter((line) => line.startsWith("place,"))).toHaveLength(30);
    // The master read 0.006 larger after than before: after less before, and that taken out.
    expect(table[1]).toMatch(/^place,B against A,1,bore,top thrust,mm,73,73.08,0.005,73.008,73.027,-0.006,0.013,/);
    expect(table.filter((line) => line.startsWith("mean,"))).toHaveLength(4);
    expect(table.filter((line) => /^groups,.*,only one engine of /.test(line))).toHaveLength(4);
  });

  test("the command on it works it out again", async () => {
    await run("compare", "plain.csv", "--matters", "0.01", "--matters", "ring end gap=0.05", "--report", "again.html");
    expect(readFileSync(join(folder, "again.html"), "utf8")).toContain("crosshatch compare plain.csv --matters 0.01 --matters &quot;ring end gap=0.05&quot;");
  });

  test("what is there is not written over, and an input never", async () => {
    await run("compare", "plain.csv", "--report", "once.html");
    expect((await run("compare", "plain.csv", "--report", "once.html")).err).toContain("once.html");
    expect((await run("trial", "plain.csv", "--table", "plain.csv", "--force")).code).toBe(2);
    expect((await run("trial", "plain.csv", "--report", "page.txt")).err).toContain("ends with neither .html nor .pdf");
    expect(existsSync(join(folder, "page.txt"))).toBe(false);
  });
});

test("a workbook for a trial is written, and read again by trial", async () => {
  const { code, out, err } = await run("new", "trial.xlsx", "--trial", "--cylinders", "2", "--engines", "2", "--seed", "7");
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(out).toContain(
    "trial.xlsx: an empty workbook for a trial, Trial, Limits, Gauge study, Campaigns, Before, After, Before, second, After, second, Verdicts.",
  );
  const read = await run("trial", "trial.xlsx");
  expect(read.code).toBe(2);
  expect(read.err).toContain("nothing could be compared");
  expect((await run("new", "other.xlsx", "--cylinders", "2", "--seed", "7")).err).toContain("--engines, --seed and --use are for --trial");
  expect((await run("new", "other.xlsx", "--trial", "--cylinders", "2", "--use", "leagues")).err).toContain(
    "--use leagues is not known: it must be hours, miles, km",
  );
  expect((await run("new", "other.xlsx", "--trial", "--cylinders", "2", "--engines", "13")).err).toContain("--engines 13 is no whole number from 1 to 12");
});

describe("trial plan", () => {
  const PLAN = ["trial", "plan", "--uncertainty", "0.004", "--places", "6", "--cylinders", "3", "--engines", "2"];

  test("says what is seen, what the groups take, and the cautions", async () => {
    const { code, out } = await run(...PLAN, "--spread", "0.005", "--matters", "0.01");
    expect(code).toBe(0);
    expect(out).toMatch(/^smallest true difference seen +8 times in 10 +9 times in 10$/m);
    expect(out).toMatch(/^mean of 18 places of one engine, among 4 +0\.00\d+ +0\.00\d+$/m);
    expect(out).toContain("a difference of 0.01 between the groups takes 6 engines in each to be seen 8 times in 10, 7 to be seen 9 times in 10");
    expect(out).toContain("let the maker's service manual and a qualified technician decide, on running in above all");
  });

  test("as JSON", async () => {
    const lines = jsonLines((await run(...PLAN, "--json")).out);
    expect(lines.map(({ kind, level }) => [kind, level])).toEqual([
      ["seen", "place"],
      ["seen", "mean"],
      ["plan", undefined],
    ]);
    expect(lines.at(-1)).toMatchObject({ uncertainty: 0.004, places: 6, engines: 2, spread: null, needed90: null });
  });

  test.each([
    [["trial", "plan"], "--uncertainty is not given: type U of one reading, such as 0.004"],
    [[...PLAN, "--common", "0.005"], "--common 0.005 is a part of the uncertainty 0.004, which it cannot exceed"],
    [[...PLAN, "--repeats", "1.5"], "--repeats 1.5 is no whole number from 1 to 1000"],
    [[...PLAN, "--spread", "-1"], "--spread -1 is no number above 0"],
  ])("%j is refused", async (args, why) => {
    const { code, err } = await run(...args);
    expect(code).toBe(2);
    expect(err).toContain(why);
  });
});

test("a file that is given twice, by another name or as a copy, counts once, and that is said", async () => {
  writeFileSync(join(folder, "copy.csv"), readFileSync(join(folder, "plain.csv")));
  const once = await run("trial", "plain.csv", "coated.csv", "--json");
  const twice = await run("trial", "plain.csv", "./plain.csv", "coated.csv", "copy.csv", "--json");
  expect(twice.out).toBe(once.out);
  expect(twice.err.split("\n").filter(Boolean)).toEqual([
    "crosshatch: ./plain.csv holds the same as plain.csv: its readings count once",
    "crosshatch: copy.csv holds the same as plain.csv: its readings count once",
  ]);
  rmSync(join(folder, "copy.csv"));
});
