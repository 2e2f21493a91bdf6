/**
 * Writes libreoffice.csv: what LibreOffice gives for the formulas of cases.ts, a function a line. Needs `soffice` on the path:
 * `npx tsx test/reference/rounding/make.ts`.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { roundingCases } from "./cases.ts";

/** A formula as OpenDocument writes it, where it means what it means in a workbook file. */
const inOpenDocument = (formula: string): string => formula.replace(/^(?=\w*\.?(?:CEILING|FLOOR))/, "COM.MICROSOFT.").replaceAll(",", ";");

const NAMES = ["office", "table"].map((name) => `xmlns:${name}="urn:oasis:names:tc:opendocument:xmlns:${name}:1.0"`).join(" ");
const cases = roundingCases();
const tables = cases.map(({ name, formulas }) => {
  const rows = formulas.map((formula) => `<table:table-row><table:table-cell table:formula="of:=${inOpenDocument(formula)}"/></table:table-row>`);
  return `<table:table table:name="${name}">${rows.join("")}</table:table>`;
});
const folder = mkdtempSync(join(tmpdir(), "crosshatch-rounding-"));
const xml = `<?xml version="1.0" encoding="UTF-8"?><office:document ${NAMES} xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet>${tables.join("")}</office:spreadsheet></office:body></office:document>`;
writeFileSync(join(folder, "cases.fods"), xml);
const office = ["--headless", `-env:UserInstallation=file://${join(folder, "profile")}`, "--convert-to", "fods:OpenDocument Spreadsheet Flat XML"];
execFileSync("soffice", [...office, "--outdir", join(folder, "out"), join(folder, "cases.fods")], { stdio: "inherit" });
const answered = readFileSync(join(folder, "out", "cases.fods"), "utf8")
  .split("<table:table ")
  .slice(1);
const lines = cases.map(({ name, formulas }, i) => {
  const values = [...answered[i]!.matchAll(/table:formula="[^"]*" office:value-type="float" office:value="([^"]*)"/g)].map(([, value]) => value);
  if (values.length !== formulas.length) throw new Error(`${name}: ${values.length} of ${formulas.length} were calculated`);
  return [name, ...values].join(",");
});
writeFileSync(fileURLToPath(new URL("libreoffice.csv", import.meta.url)), `${lines.join("\n")}\n`);
rmSync(folder, { recursive: true });
console.log(execFileSync("soffice", ["--version"], { encoding: "utf8" }).trim());
