import { z } from "zod";
import { checkWorkbook } from "../../../src/check/check-workbook.ts";
import { checkCsv } from "../../../src/check/csv/check-csv.ts";
import { type Finding, type FindingKind, specOf } from "../../../src/check/finding.ts";
import { marksOf, wordOf } from "../../../src/check/finding-words.ts";
import { COMMON_FIELDS, type Field, type Fields, type KindSpec } from "../../../src/check/kinds/define-kind.ts";
import { findingLine } from "../../../src/cli/check-output.ts";
import type { WorkbookSnapshot } from "../../../src/workbook/port.ts";
import { type Typed, workbook } from "../workbook.ts";

const TYPES = {
  number: () => z.number(),
  count: () => z.number().int().nonnegative(),
  text: () => z.string(),
  "number or text": () => z.union([z.number(), z.string()]),
  day: () => z.iso.date(),
  choice: ({ words }: Field) => z.enum(words as [string, ...string[]]),
  list: () => z.array(z.string()),
} satisfies Record<Field["type"], (field: Field) => z.ZodType>;

const schemaOfField = (field: Field): z.ZodType => {
  const schema = TYPES[field.type](field);
  return field.isNullable ? schema.nullable() : schema;
};
const schemasOf = (fields: Fields) => Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, schemaOfField(field)]));

/** What a line of JSON of a kind has to be by its declaration: these fields, and no others. */
export function lineSchema({ name, fields }: KindSpec) {
  const all = { file: z.string(), kind: z.literal(name), ...schemasOf(COMMON_FIELDS), ...schemasOf(fields) };
  return z.union([z.strictObject({ ...all, cell: z.string().regex(/^.+![A-Z]+[1-9]\d*$/) }), z.strictObject({ ...all, line: z.number().int().positive() })]);
}

/** The findings of one kind in a workbook, each with its line of JSON held against its declaration. */
export const foundIn = (kind: FindingKind, sheets: Record<string, Typed>): Finding[] => foundInSnapshot(kind, workbook(sheets));

export const foundInSnapshot = (kind: FindingKind, snapshot: WorkbookSnapshot): Finding[] =>
  declared(checkWorkbook(snapshot).findings.filter((finding) => finding.kind === kind));

/** The same in a file of readings. */
export async function foundInCsv(kind: FindingKind, text: string): Promise<Finding[]> {
  async function* bytes(): AsyncGenerator<Uint8Array> {
    yield new TextEncoder().encode(text);
  }
  return declared((await checkCsv(bytes(), { name: "readings.csv" })).findings.filter((finding) => finding.kind === kind));
}

function declared(findings: Finding[]): Finding[] {
  for (const finding of findings) lineSchema(specOf(finding.kind)).parse(JSON.parse(findingLine("file", finding)));
  return findings;
}

/** How a finding is told in lists and shown in its cell. */
export const shown = (finding: Finding): [word: string, mark: string] => [wordOf(finding), marksOf([finding])[0]!.tone];

/** A table in long form, whose rows are judged. */
export const readings = (...rows: (number | string | null)[][]): Record<string, Typed> => ({
  Bores: [["Characteristic", "Value", "Lower", "Upper", "U", "Near", "Unit"], ...rows],
});
