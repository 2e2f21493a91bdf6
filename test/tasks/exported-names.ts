import ts from "typescript";

/** What a file hands out under a name of its own: values, types, or classes, which are both. What it only hands on counts where it is made. */
function exportedNames(path: string, text: string): string[] {
  return ts.createSourceFile(path, text, ts.ScriptTarget.Latest, false).statements.flatMap((statement) => {
    const isExported = ts.canHaveModifiers(statement) && ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);
    if (!isExported) return [];
    if (ts.isVariableStatement(statement))
      return statement.declarationList.declarations.flatMap(({ name }) => (ts.isIdentifier(name) ? name.text : namesIn(name)));
    const { name } = statement as ts.DeclarationStatement;
    return name && ts.isIdentifier(name) ? [name.text] : [];
  });
}

const namesIn = (pattern: ts.BindingPattern): string[] =>
  pattern.elements.flatMap((element) => {
    if (ts.isOmittedExpression(element)) return [];
    return ts.isIdentifier(element.name) ? [element.name.text] : namesIn(element.name);
  });

/** Names that stand for things of several files, with those files. A type and a value that share a name in one file belong together. */
export function namesOfTwoThings(files: ReadonlyMap<string, string>): string[] {
  const places = new Map<string, string[]>();
  for (const [path, text] of files) for (const name of new Set(exportedNames(path, text))) places.set(name, [...(places.get(name) ?? []), path]);
  return [...places].filter(([, paths]) => paths.length > 1).map(([name, paths]) => `${name}: ${paths.join(", ")}`);
}
