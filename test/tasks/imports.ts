/**
 * Which folder of `src` imports what, held against the list in `allowed-imports.ts`: a folder that is not listed may import nothing and
 * not be imported, and a listing that no import uses is out of date. The longest name that fits is a file's folder.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join, posix, relative, sep } from "node:path";
import ts from "typescript";
import { root } from "../../src/tools/paths.ts";
import type { Folder } from "./allowed-imports.ts";

/** One file that names another. Only types leave nothing of it in the program. */
export interface Import {
  from: string;
  to: string;
  onlyTypes: boolean;
}

const CODE = /\.(?:tsx?|mjs)$/;

/** Every file of code under `src`, by its path from the project's folder. */
export function sources(): Map<string, string> {
  const paths = readdirSync(join(root, "src"), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && CODE.test(entry.name) && !entry.name.endsWith(".d.mts"))
    .map((entry) => join(entry.parentPath, entry.name));
  return new Map(paths.map((path) => [relative(root, path).split(sep).join("/"), readFileSync(path, "utf8")]));
}

/** What a file imports of the project's own files: at its top, on the way (`import()`), as a type and by handing on. */
export function importsOf(path: string, text: string): Import[] {
  const found: Import[] = [];
  const note = (named: ts.Node | undefined, onlyTypes: boolean): void => {
    if (!named || !ts.isStringLiteralLike(named) || !named.text.startsWith(".")) return;
    found.push({ from: path, to: posix.join(posix.dirname(path), named.text), onlyTypes });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) note(node.moduleSpecifier, node.importClause?.isTypeOnly ?? false);
    else if (ts.isExportDeclaration(node)) note(node.moduleSpecifier, node.isTypeOnly);
    else if (ts.isImportTypeNode(node)) note(ts.isLiteralTypeNode(node.argument) ? node.argument.literal : undefined, true);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) note(node.arguments[0], false);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, text, ts.ScriptTarget.Latest, false));
  return found;
}

/** What is not as the list has it, as sentences. */
export function importFaults(files: ReadonlyMap<string, string>, folders: Readonly<Record<string, Folder>>): string[] {
  const faults = new Set<string>();
  const imports = [...files].flatMap(([path, text]) => importsOf(path, text));
  const used = new Map<string, Set<string>>();
  for (const { from, to } of imports) {
    const importing = folderOf(from, folders);
    const imported = folderOf(to, folders);
    if (importing === undefined || importing === imported) continue;
    if (imported === undefined || !folders[importing]!.imports.includes(imported)) faults.add(`${from} imports ${to}: src/${importing} may not`);
    else used.set(importing, (used.get(importing) ?? new Set()).add(imported));
  }
  const inhabited = new Set<string>();
  for (const path of files.keys()) {
    const folder = folderOf(path, folders);
    if (folder === undefined) faults.add(`${path} is in a folder that is not listed`);
    else inhabited.add(folder);
  }
  for (const [folder, { imports: allowed }] of Object.entries(folders)) {
    if (!inhabited.has(folder)) faults.add(`src/${folder} is listed and has no file`);
    for (const one of allowed) if (!used.get(folder)?.has(one)) faults.add(`src/${folder} may import src/${one}, and no file of it does`);
  }
  const arrows = Object.entries(folders).flatMap(([from, { imports: allowed }]) => allowed.map((to) => ({ from, to })));
  for (const cycle of cycles(arrows)) faults.add(`folders import one another: ${cycle.map((folder) => `src/${folder}`).join(", ")}`);
  for (const cycle of cycles(imports.filter(({ onlyTypes }) => !onlyTypes))) faults.add(`files import one another: ${cycle.join(", ")}`);
  return [...faults];
}

/** The longest listed name that the path begins with. */
function folderOf(path: string, folders: Readonly<Record<string, Folder>>): string | undefined {
  const fitting = Object.keys(folders).filter((folder) => path.startsWith(`src/${folder}/`));
  return fitting.sort((a, b) => b.length - a.length)[0];
}

/** Groups of which each member reaches every other (Tarjan 1972), those of one member apart. */
export function cycles(arrows: readonly { from: string; to: string }[]): string[][] {
  const next = new Map<string, string[]>();
  for (const { from, to } of arrows) next.set(from, [...(next.get(from) ?? []), to]);
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const found: string[][] = [];
  const visit = (at: string): number => {
    order.set(at, order.size);
    lowest.set(at, order.get(at)!);
    open.push(at);
    for (const to of next.get(at) ?? []) {
      if (!order.has(to)) lowest.set(at, Math.min(lowest.get(at)!, visit(to)));
      else if (open.includes(to)) lowest.set(at, Math.min(lowest.get(at)!, order.get(to)!));
      if (to === at) found.push([at]);
    }
    if (lowest.get(at) === order.get(at)) {
      const group = open.splice(open.indexOf(at));
      if (group.length > 1) found.push(group.sort());
    }
    return lowest.get(at)!;
  };
  for (const at of next.keys()) if (!order.has(at)) visit(at);
  return found;
}
