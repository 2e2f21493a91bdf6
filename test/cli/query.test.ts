import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import { builtProgram, crosshatch, folderOf, jsonLines } from "./run.ts";

// Runs start threads, and the machine may be busy.
import.meta.jest.setTimeout(120_000);

const HEAD = "engine,cylinder,characteristic,position,value,lower,upper,unit,uncertainty";
const LINES = [
  HEAD,
  'A,1,"bore, ""new""",top,73.02,73,73.05,mm,0.001',
  "A,2,bore,top,73.06,73,73.05,mm,0.001",
  "A,3,bore,top,,73,73.05,mm,",
  "B,1,bore,top,7.302,73,73.05,mm,0.001",
  "B,2,µ,top,73.0495,73,73.05,mm,0.001",
  "B,3,bore,top,0.0000001,,0,mm,",
];
const folder = folderOf({ "readings.csv": `${LINES.join("\n")}\n`, "text.csv": `${HEAD}\nA,1,bore,top,x,73,73.05,mm,\nA,2,bore,top,73.06,73,73.05,mm,\n` });
const path = (name: string): string => join(folder, name).replaceAll("\\", "/");

beforeAll(async () => {
  const instance = await DuckDBInstance.create(":memory:");
  const connection = await instance.connect();
  const numbers = (type: string) =>
    `SELECT * REPLACE (value::${type} AS value, lower::${type} AS lower, upper::${type} AS upper) FROM '${path("readings.csv")}'`;
  await connection.run(`COPY (SELECT * FROM '${path("readings.csv")}') TO '${path("readings.parquet")}'`);
  await connection.run(`COPY (${numbers("FLOAT")}) TO '${path("single.parquet")}'`);
  await connection.run(`COPY (${numbers("DECIMAL(18, 7)")}) TO '${path("decimal.parquet")}'`);
  connection.closeSync();
  instance.closeSync();
});
afterAll(() => rmSync(folder, { recursive: true }));

const run = (...args: string[]) => crosshatch(["check", ...args], { cwd: folder });
/** Everything that is told, apart from where it comes from. */
const told = async (...args: string[]) => {
  const { code, out, err } = await run("--json", ...args);
  return { code, err, lines: jsonLines(out).map(({ file: _, ...line }) => line) };
};

test.each([
  ["Parquet", "readings.parquet"],
  ["Parquet of single precision, whose numbers are those that were typed", "single.parquet"],
  ["Parquet of decimals", "decimal.parquet"],
  ["the CSV itself", "readings.csv"],
  ["CSV with text among its numbers", "text.csv"],
])("from %s the findings are those of the file of readings, by the same lines", async (_, name) => {
  const expected = await told(name === "text.csv" ? name : "readings.csv");
  expect(expected.lines.length).toBeGreaterThan(2);
  expect(await told("--from", `SELECT * FROM '${name}';`)).toEqual(expected);
});

test("what is selected is checked, before the files that are named too", async () => {
  const { code, out } = await run("--json", "--from", "SELECT * FROM 'readings.parquet' WHERE engine = 'A' ORDER BY cylinder DESC", "text.csv");
  expect(code).toBe(1);
  expect(jsonLines(out)).toMatchObject([
    { file: "query", line: 3, label: "engine A, cylinder 2, bore, top" },
    { file: "query", line: 2, kind: "missing reading" },
    { file: "text.csv", line: 3 },
    { file: "text.csv", line: 2, kind: "refused" },
    { files: 2, rowsIn: 5, checked: 4, refused: 1, findings: 4 },
  ]);
});

test("a locale with a decimal comma reads numbers of a database as numbers", async () => {
  const { lines } = await told("--locale", "de", "--from", "SELECT * FROM 'readings.parquet'");
  expect(lines.at(-1)).toMatchObject({ rowsIn: 6, refused: 0 });
});

test("what cannot be answered, or is no table of readings, is said and leaves 2; a query can do nothing but select", async () => {
  expect(await run("--from", "SELECT nothing FROM 'readings.parquet'")).toMatchObject({
    code: 2,
    out: "",
    err: expect.stringMatching(/^crosshatch: query cannot be answered by DuckDB: Binder Error: .*nothing.*\n$/),
  });
  expect((await run("--from", "SELECT 1 AS engine")).err).toMatch(/^crosshatch: query has in line 1 no heading for the value; /);
  expect((await run("--from", "COPY (SELECT 1) TO 'made.csv'")).code).toBe(2);
  expect((await run("--from", "SELECT 1) ; COPY (SELECT 1) TO 'made.csv' ; SELECT * FROM (SELECT 1")).code).toBe(2);
  expect(existsSync(join(folder, "made.csv"))).toBe(false);
});

test("without DuckDB's package it is said how to come by it", async () => {
  const bare = join(folder, "bare");
  mkdirSync(bare);
  writeFileSync(join(bare, "package.json"), '{ "type": "module" }');
  cpSync(await builtProgram(), bare, { recursive: true });
  const { status, stdout, stderr } = spawnSync(process.execPath, ["crosshatch.js", "check", "--from", "SELECT 1"], {
    cwd: bare,
    env: { ...process.env, NODE_OPTIONS: "" },
    encoding: "utf8",
  });
  expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
  expect(stderr).toBe(
    "crosshatch: --from asks DuckDB, whose package is not installed: npm install --no-save @duckdb/node-api puts it beside Crosshatch; or save the rows as .csv. See crosshatch help\n",
  );
});
