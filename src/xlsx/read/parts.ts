import { roughCount } from "../../core/number-text.ts";
import { type FileLimits, UnreadableFile } from "../file-limits.ts";
import { fromStoredFormula } from "../formula-text.ts";
import { type DefinedName, rectangleIn, type Table } from "../model.ts";
import { type Handlers, readXml, unescapeText } from "../xml.ts";
import type { Zip } from "../zip.ts";

/** One arrow from a part to another (ECMA-376 part 2, 6.5). */
export interface Relation {
  id: string;
  /** The last step of its type: `worksheet`, `table`, `sharedStrings`; the same in both forms of the standard. */
  kind: string;
  /** The part it points to. */
  target: string;
}

/** The relations of a part; those that lead out of the file are left out. `""` is the archive itself. */
export function relationsOf(zip: Zip, part: string, limits: FileLimits): Relation[] {
  const slash = part.lastIndexOf("/") + 1;
  const path = `${part.slice(0, slash)}_rels/${part.slice(slash)}.rels`;
  const bytes = zip.read(path);
  const relations: Relation[] = [];
  if (!bytes) return relations;
  readXml(bytes, path, limits.depth, {
    open(name, { Id, Type, Target, TargetMode }) {
      if (name !== "Relationship" || TargetMode === "External" || !Id || !Type || !Target) return;
      relations.push({ id: Id, kind: Type.slice(Type.lastIndexOf("/") + 1), target: resolve(part.slice(0, slash), Target) });
    },
  });
  return relations;
}

/** The part of a file that is its workbook; why there is none is said. */
export function workbookPath(zip: Zip, limits: FileLimits): string {
  const path = relationsOf(zip, "", limits).find((relation) => relation.kind === "officeDocument")?.target;
  if (path && /^xl\/.*\.bin$/i.test(path)) throw new UnreadableFile("is a binary workbook (.xlsb): save it as .xlsx");
  if (path && /(?:^|\/)(?:word|ppt|visio)\//i.test(`/${path}`)) throw new UnreadableFile("is an Office document, but no workbook");
  if (path) return path;
  const names = zip.names();
  if (names.includes("mimetype") && names.includes("content.xml")) throw new UnreadableFile("is an OpenDocument file: save it as .xlsx");
  throw new UnreadableFile("is a zip archive without a workbook in it");
}

/**
 * A target as the name of a part: from the root when it starts with a slash, otherwise from the folder.
 * Steps up from the root lead to the root (RFC 3986, 5.2.4), as office programs write of what they keep for others.
 */
function resolve(folder: string, target: string): string {
  const steps: string[] = [];
  for (const step of (target.startsWith("/") ? target : folder + target).split(/[/\\]/)) {
    if (step === "..") steps.pop();
    else if (step !== "" && step !== ".") steps.push(decode(step));
  }
  return steps.join("/");
}

function decode(step: string): string {
  try {
    return decodeURIComponent(step);
  } catch {
    return step;
  }
}

/**
 * Collects the text of a string item: plain, or rich text run after run. Phonetic runs, which only
 * tell how to pronounce it, are left out (ECMA-376 part 1, 18.4.8).
 */
export class TextRuns {
  #text = "";
  #inText = false;
  #phonetic = 0;

  open(name: string): void {
    if (name === "rPh") this.#phonetic++;
    else if (name === "t") this.#inText = this.#phonetic === 0;
  }

  close(name: string): void {
    if (name === "rPh") this.#phonetic--;
    else if (name === "t") this.#inText = false;
  }

  add(text: string): void {
    if (this.#inText) this.#text += text;
  }

  /** The text so far; starts anew. */
  take(): string {
    const text = unescapeText(this.#text);
    this.#text = "";
    return text;
  }
}

/** The workbook's shared strings, in order. */
export function readStrings(bytes: Uint8Array, part: string, limits: FileLimits): string[] {
  const strings: string[] = [];
  const runs = new TextRuns();
  const handlers: Handlers = {
    open: (name) => runs.open(name),
    close(name) {
      runs.close(name);
      if (name === "si") strings.push(runs.take());
    },
    text: (text) => runs.add(text),
  };
  readXml(bytes, part, limits.depth, handlers);
  return strings;
}

interface WorkbookPart {
  /** In the order of the tabs; `relation` leads to the sheet's part. */
  sheets: { name: string; relation: string; hidden: boolean }[];
  names: DefinedName[];
  printNames: DefinedName[];
  from1904: boolean;
}

/** The list of sheets and the names of the workbook (ECMA-376 part 1, 18.2). */
export function readWorkbookPart(bytes: Uint8Array, part: string, limits: FileLimits): WorkbookPart {
  const found: WorkbookPart = { sheets: [], names: [], printNames: [], from1904: false };
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
      // Names of the program's own start so; no formula can use them.
      if (name.name.startsWith("_xlnm.Print_")) found.printNames.push({ ...name, formula: name.formula.trim() });
      else if (!name.name.startsWith("_xlnm.")) found.names.push({ ...name, formula: fromStoredFormula(name.formula.trim()) });
      name = null;
    },
  });
  if (found.sheets.length > limits.sheets)
    throw new UnreadableFile(`has ${roughCount(found.sheets.length)} sheets, and at most ${roughCount(limits.sheets)} are read`);
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
export function readTable(bytes: Uint8Array, part: string, sheet: number, limits: FileLimits): { table: Table; isFiltered: boolean } | undefined {
  let table: Table | undefined;
  let isFiltered = false;
  readXml(bytes, part, limits.depth, {
    open(element, { displayName, name, ref, headerRowCount, totalsRowCount }) {
      if (element === "table" && ref) {
        const label = displayName ?? name ?? "";
        table = {
          name: label,
          sheet,
          area: rectangleIn(ref, part),
          headerRows: Number(headerRowCount ?? 1),
          totalsRows: Number(totalsRowCount ?? 0),
          columns: [],
        };
      } else if (element === "filterColumn") isFiltered = true;
      else if (element === "tableColumn") table?.columns.push(unescapeText(name ?? ""));
    },
  });
  return table && { table, isFiltered };
}
