import type { DecimalSign } from "../check/csv/check-csv.ts";
import { Refusal } from "./exit-codes.ts";

/** The parts of DuckDB's own interface that are used; the package is there or it is not. */
interface Database {
  DuckDBInstance: { create(path: string, options: Record<string, string>): Promise<{ connect(): Promise<Connection>; closeSync(): void }> };
}
interface Connection {
  runAndReadAll(sql: string): Promise<{ getRows(): unknown[][] }>;
  extractStatements(sql: string): Promise<{ count: number }>;
  stream(sql: string): Promise<{ fetchChunk(): Promise<Chunk | null> }>;
  closeSync(): void;
}
interface Chunk {
  rowCount: number;
  getColumnValues(column: number): unknown[];
}

const PACKAGE = "@duckdb/node-api";
const NUMERIC = /^(?:TINYINT|SMALLINT|INTEGER|BIGINT|HUGEINT|U\w*INT\w*|FLOAT|DOUBLE|DECIMAL\b.*)$/;

/** A query that the database would not answer; it completes "query …". */
export class Unanswered extends Error {}

/**
 * The rows that a query selects from CSV or Parquet files, as the CSV that somebody would have saved of
 * them: what is found in them is what would be found there, by the same lines. The query stands inside
 * another, so it can select and nothing else.
 */
export async function* queriedRows(sql: string, decimal: DecimalSign): AsyncGenerator<Uint8Array> {
  const { DuckDBInstance } = await database();
  const instance = await DuckDBInstance.create(":memory:", { autoinstall_known_extensions: "false" });
  const connection = await instance.connect();
  try {
    const query = sql.trim().replace(/;+$/, "");
    // By itself it must be one statement, and inside another it can only be one that selects.
    if ((await answered(connection.extractStatements(query))).count !== 1) throw new Unanswered("is not one statement");
    const described = await answered(connection.runAndReadAll(`DESCRIBE SELECT * FROM (${query}\n)`));
    const columns = described.getRows().map(([name, type]) => ({ name: String(name), type: String(type) }));
    yield Buffer.from(`${columns.map(({ name }) => quoted(name)).join(",")}\n`);
    // The database writes the lines itself: handing over each cell takes nearly twice as long.
    const line = columns.map((column) => asField(column, decimal)).join(" || ',' || ");
    const result = await answered(connection.stream(`SELECT ${line} FROM (${query}\n)`));
    for (let chunk = await answered(result.fetchChunk()); chunk && chunk.rowCount > 0; chunk = await answered(result.fetchChunk()))
      yield Buffer.from(`${chunk.getColumnValues(0).join("\n")}\n`);
  } finally {
    connection.closeSync();
    instance.closeSync();
  }
}

async function database(): Promise<Database> {
  try {
    return (await import(PACKAGE)) as Database;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ERR_MODULE_NOT_FOUND") throw error;
    throw new Refusal(
      `--from asks DuckDB, whose package is not installed: npm install --no-save ${PACKAGE} puts it beside Crosshatch; or save the rows as .csv`,
    );
  }
}

async function answered<T>(answer: Promise<T>): Promise<T> {
  try {
    return await answer;
  } catch (error) {
    throw new Unanswered(`cannot be answered by DuckDB: ${(error as Error).message.split("\n")[0]}`);
  }
}

/** A field in quotes; numbers as the shortest text that stands for them, with the decimal sign that is read here. */
function asField({ name, type }: { name: string; type: string }, decimal: DecimalSign): string {
  const text = `coalesce(${quoted(name)}::VARCHAR, '')`;
  const written = NUMERIC.test(type) ? (decimal === "," ? `replace(${text}, '.', ',')` : text) : `replace(${text}, '"', '""')`;
  return `'"' || ${written} || '"'`;
}

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
