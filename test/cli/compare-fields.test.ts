import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { COUNTS, FIELDS } from "./compare-fields.ts";
import { crosshatch, folderOf, jsonLines } from "./run.ts";

const HEAD = "group,engine,campaign,cylinder,characteristic,position,value,unit,U,common,upper,matters,gauge,day,hours,temperature,material";

/** Two engines, each before and after, with a master, temperatures, repeats, hours, one place of one campaign only and one without U. */
const trial = [
  HEAD,
  ...["before", "after"].flatMap((campaign, late) => [
    `,,${campaign},,master,,${73 + late / 500},mm,0.002,0,,,BG-1,${campaign},,,`,
    ...["A", "B"].flatMap((engine, e) =>
      [1, 2].flatMap((cylinder) =>
        (cylinder === 1 ? [0, 0.0005] : [0]).map(
          (repeat) =>
            `${e === 0 ? "short" : "long"},${engine},${campaign},${cylinder},bore,top,${(73 + repeat + late * (0.02 + e / 100)).toFixed(4)},mm,0.002,0,73.2,0.01,BG-1,${campaign},${late * 500},${20 + late * 4},grey iron`,
        ),
      ),
    ),
    `short,A,${campaign},1,crankpin,,39.98,mm,,,,,MG-1,${campaign},,,`,
  ]),
  "short,A,before,3,bore,top,73,mm,0.002,0,73.2,0.01,BG-1,before,0,,",
];
const folder = folderOf({ "trial.csv": trial.join("\n") });
afterAll(() => rmSync(folder, { recursive: true }));

const lines = crosshatch(["trial", "trial.csv", "--json"], { cwd: folder }).then(({ out }) => jsonLines(out));

test.each(Object.keys(FIELDS))("a line of the kind %s has the fields that are documented, and no other", async (kind) => {
  const own = (await lines).filter((line) => line.kind === kind);
  expect(own.length).toBeGreaterThan(0);
  const [always, some] = [FIELDS[kind]!.filter((field) => !field.endsWith("?")), FIELDS[kind]!.filter((field) => field.endsWith("?"))];
  for (const line of own) {
    const keys = Object.keys(line).filter((key) => key !== "kind");
    expect(keys).toEqual(expect.arrayContaining(always));
    expect(keys.filter((key) => !always.includes(key) && !some.includes(`${key}?`))).toEqual([]);
  }
  for (const field of some) expect(own.some((line) => field.slice(0, -1) in line)).toBe(true);
});

test("the summary counts every kind of line, and rows are compared and refused ones", async () => {
  const summary = (await lines).at(-1)! as Record<string, unknown>;
  expect(summary.kind).toBe("summary");
  expect(summary.rows).toBe((summary.compared as number) + (summary.refused as number));
  const counts = Object.entries(summary.counts as Record<string, object>);
  expect(counts.map(([family]) => family)).toEqual(["places", "means", "differences by place", "mean differences", "groups"]);
  for (const [, count] of counts) expect(Object.keys(count)).toEqual(COUNTS);
});

test("verdicts and levels have the words that are documented", async () => {
  const judged = (await lines).filter((line) => "verdict" in line) as { level: string; verdict: string; kind: string }[];
  for (const { level, verdict } of judged) {
    expect(["place", "mean", "group"]).toContain(level);
    expect(["differs", "same within", "cannot tell"]).toContain(verdict);
  }
});

test("README lists the same fields", () => {
  const readme = readFileSync(join(root, "README.md"), "utf8");
  for (const [kind, fields] of Object.entries(FIELDS)) expect(readme).toContain(`| ${kind} | ${fields.map((field) => `\`${field}\``).join(", ")} |`);
  expect(readme).toContain(COUNTS.map((count) => `\`${count}\``).join(", "));
});
