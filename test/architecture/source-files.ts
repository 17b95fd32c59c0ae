import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";

/** A file of the tree: its path from the root, with slashes, and what is in it. */
export type SourceFile = { readonly path: string; readonly text: string };

export type Import = {
  readonly specifier: string;
  /** Gone after compilation: `import type`, or only types named. */
  readonly isTypeOnly: boolean;
};

export const ROOT = fileURLToPath(new URL("../..", import.meta.url));

const NOT_OURS = new Set(["node_modules", "dist", ".git", "coverage", ".vite-temp"]);

/** Every file of the tree whose name ends in one of these, in a steady order. */
export function sourceFiles(endings: readonly string[]): SourceFile[] {
  return pathsUnder(ROOT)
    .filter((path) => endings.some((ending) => path.endsWith(ending)))
    .map((path) => ({ path, text: readFileSync(join(ROOT, path), "utf8") }));
}

/** Several tests ask the same of every file. */
const known = new Map<string, readonly Import[]>();

/** What a TypeScript file imports, by any form of import or re-export. */
export function importsOf(file: SourceFile): readonly Import[] {
  const asked = `${file.path}\n${file.text}`;
  const imports = known.get(asked) ?? importsIn(parse(file));
  known.set(asked, imports);
  return imports;
}

function importsIn(file: ts.SourceFile): Import[] {
  const imports: Import[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, isTypeOnlyImport(node));
    else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, isTypeOnlyExport(node));
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      add(node.argument.literal, true);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      add(node.arguments[0], false);
    }
    ts.forEachChild(node, visit);
  };
  const add = (specifier: ts.Node | undefined, isTypeOnly: boolean) => {
    if (specifier !== undefined && ts.isStringLiteralLike(specifier)) {
      imports.push({ specifier: specifier.text, isTypeOnly });
    }
  };
  visit(file);
  return imports;
}

/** Several things are asked of one file after the other. */
let latest: ts.SourceFile | undefined;

/** The syntax tree of a TypeScript file, without its comments. */
export function parse({ path, text }: SourceFile): ts.SourceFile {
  if (latest?.fileName === path && latest.text === text) return latest;
  const asked = { languageVersion: ts.ScriptTarget.ES2023, jsDocParsingMode: ts.JSDocParsingMode.ParseNone };
  latest = ts.createSourceFile(path, text, asked, true);
  return latest;
}

function isTypeOnlyImport({ importClause }: ts.ImportDeclaration): boolean {
  if (importClause === undefined) return false;
  if (importClause.isTypeOnly) return true;
  const named = importClause.namedBindings;
  if (importClause.name !== undefined || named === undefined || !ts.isNamedImports(named)) return false;
  return named.elements.every(({ isTypeOnly }) => isTypeOnly);
}

function isTypeOnlyExport({ isTypeOnly, exportClause }: ts.ExportDeclaration): boolean {
  if (isTypeOnly) return true;
  if (exportClause === undefined || !ts.isNamedExports(exportClause)) return false;
  return exportClause.elements.every((element) => element.isTypeOnly);
}

function pathsUnder(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true })
    .toSorted((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      if (NOT_OURS.has(entry.name)) return [];
      const path = join(folder, entry.name);
      if (entry.isDirectory()) return pathsUnder(path);
      return entry.isFile() ? [relative(ROOT, path).split(sep).join("/")] : [];
    });
}
