import { type Limits, many } from "../file-limits.ts";
import { peoplesFormula } from "../formula-text.ts";
import type { DefinedName, Table } from "../model.ts";
import { boxOf } from "../model.ts";
import { UnreadableFile } from "../unreadable.ts";
import { readXml, unescapeText } from "../xml.ts";

export interface WorkbookPart {
  /** In the order of the tabs; `relation` leads to the sheet's part. */
  sheets: { name: string; relation: string; hidden: boolean }[];
  names: DefinedName[];
  from1904: boolean;
}

/** The list of sheets and the names of the workbook (ECMA-376 part 1, 18.2). */
export function readWorkbookPart(bytes: Uint8Array, part: string, limits: Limits): WorkbookPart {
  const found: WorkbookPart = { sheets: [], names: [], from1904: false };
  let name: DefinedName | null = null;
  readXml(bytes, part, limits.depth, {
    open(element, attributes) {
      if (element === "workbookPr") found.from1904 = attributes.date1904 === "1" || attributes.date1904 === "true";
      else if (element === "sheet") {
        const { name: label, state, "r:id": relation } = attributes;
        if (!label || !relation) throw new UnreadableFile("is damaged: its list of sheets is not complete");
        found.sheets.push({ name: label, relation, hidden: state === "hidden" || state === "veryHidden" });
      } else if (element === "definedName") {
        const { name: label = "", localSheetId } = attributes;
        name = { name: label, formula: "", ...(localSheetId === undefined ? {} : { sheet: Number(localSheetId) }) };
      }
    },
    text(piece) {
      if (name) name.formula += piece;
    },
    close(element) {
      if (element !== "definedName" || !name) return;
      // Names of the program's own, such as print areas, start so; no formula can use them.
      if (!name.name.startsWith("_xlnm.")) found.names.push({ ...name, formula: peoplesFormula(name.formula.trim()) });
      name = null;
    },
  });
  if (found.sheets.length > limits.sheets) throw new UnreadableFile(`has ${many(found.sheets.length)} sheets, and at most ${many(limits.sheets)} are read`);
  refuseDoubles(found.sheets.map((sheet) => sheet.name));
  return found;
}

function refuseDoubles(names: readonly string[]): void {
  const seen = new Set<string>();
  for (const name of names) {
    if (seen.has(name.toLowerCase())) throw new UnreadableFile(`is damaged: two of its sheets have the name ${JSON.stringify(name)}`);
    seen.add(name.toLowerCase());
  }
}

/** A table's name, place and column names (ECMA-376 part 1, 18.5.1.2). */
export function readTable(bytes: Uint8Array, part: string, sheet: number, limits: Limits): Table | undefined {
  let table: Table | undefined;
  readXml(bytes, part, limits.depth, {
    open(element, { displayName, name, ref, headerRowCount, totalsRowCount }) {
      if (element === "table" && ref) {
        const label = displayName ?? name ?? "";
        table = { name: label, sheet, ...boxOf(ref, part), headerRows: Number(headerRowCount ?? 1), totalsRows: Number(totalsRowCount ?? 0), columns: [] };
      } else if (element === "tableColumn") table?.columns.push(unescapeText(name ?? ""));
    },
  });
  return table;
}
