/**
 * Writes libreoffice.json: what LibreOffice gives for the formulas of cases.ts. Needs `soffice` on the path:
 * `npx tsx test/reference/formulas/make.ts`.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { readXlsx } from "../../../src/xlsx/read/read.ts";
import { workbookBytes } from "../../xlsx/workbook-bytes.ts";
import { caseBook, FIRST_ROW, FORMULA_COLUMN } from "./book.ts";
import { allCases } from "./cases.ts";

const folder = mkdtempSync(join(tmpdir(), "crosshatch-formulas-"));
writeFileSync(join(folder, "cases.xlsx"), workbookBytes(caseBook(allCases())));
const office = ["--headless", `-env:UserInstallation=file://${join(folder, "profile")}`, "--convert-to", "xlsx:Calc MS Excel 2007 XML"];
execFileSync("soffice", [...office, "--outdir", join(folder, "out"), join(folder, "cases.xlsx")], { stdio: "inherit" });
const { cells } = readXlsx(readFileSync(join(folder, "out", "cases.xlsx"))).sheets[0]!;
const values = allCases().map((formula, i) => {
  const value = cells.find(({ row, column }) => row === FIRST_ROW + i && column === FORMULA_COLUMN)?.value ?? "";
  return [formula, typeof value === "object" ? value.error : value] as const;
});
const source = execFileSync("soffice", ["--version"], { encoding: "utf8" }).trim();
const lines = values.map((pair) => `  ${JSON.stringify(pair)}`).join(",\n");
writeFileSync(fileURLToPath(new URL("libreoffice.json", import.meta.url)), `{"source":${JSON.stringify(source)},"values":[\n${lines}\n]}\n`);
rmSync(folder, { recursive: true });
console.log(source, values.length);
