import { readdirSync, readFileSync } from "node:fs";
import ts from "typescript";
import { manifestFile } from "../../../src/tools/manifest.ts";

const FILES = readdirSync("src/hosts/excel").map((name) => `src/hosts/excel/${name}`);

const newer = (a: string, b: string) => Number(a.split(".")[0]) - Number(b.split(".")[0]) || Number(a.split(".")[1]) - Number(b.split(".")[1]);

/** Every member of the Excel API that the adapter names, with the set that its documentation gives. */
function usedMembers(): Map<string, string> {
  const program = ts.createProgram(FILES, {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    strict: true,
    noEmit: true,
    allowImportingTsExtensions: true,
    skipLibCheck: true,
    types: ["office-js"],
  });
  const checker = program.getTypeChecker();
  const used = new Map<string, string>();
  const visit = (node: ts.Node): void => {
    const symbol = ts.isIdentifier(node) ? checker.getSymbolAtLocation(node) : undefined;
    for (const declaration of symbol?.declarations ?? []) {
      const owner = declaration.parent;
      if (!ts.isClassDeclaration(owner) || !declaration.getSourceFile().fileName.includes("@types/office-js")) continue;
      const set = /\[Api set: ExcelApi (\d+\.\d+)/.exec(declaration.getFullText())?.[1];
      if (set) used.set(`${owner.name?.getText() ?? ""}.${symbol!.name}`, set);
    }
    ts.forEachChild(node, visit);
  };
  for (const file of FILES) visit(program.getSourceFile(file)!);
  return used;
}

test("everything the adapter asks of Excel is in the set that the manifest asks for", () => {
  const wanted = /Name="ExcelApi" MinVersion="([\d.]+)"/.exec(readFileSync(manifestFile, "utf8"))![1]!;
  const used = usedMembers();
  expect(used.get("Worksheet.getUsedRangeOrNullObject")).toBe("1.4");
  expect(used.get("Range.getSpillingToRangeOrNullObject")).toBe("1.12");
  const beyond = [...used].filter(([, set]) => newer(set, wanted) > 0);
  expect(beyond).toEqual([]);
  // Nor is more asked for than is used.
  expect([...used.values()].sort(newer).at(-1)).toBe(wanted);
}, 60_000);
