import ts from "typescript";
import { parse, type SourceFile, sourceFiles } from "../architecture/source-files.ts";

/** One number written in the domain. */
export type Constant = {
  readonly id: string;
  readonly path: string;
  /** The constant and the keys that lead to the number, `RULES.rimSpeedMaxMPerS.default`. */
  readonly name: string;
  readonly start: number;
  readonly end: number;
  readonly value: number;
};

const DOMAIN = "packages/domain/src/";

/** Rows copied from the handbook, held by their own identity test. */
const SPECIES_ROWS = "packages/domain/src/wood/species/";

const DEFINES_THE_ROWS = `${SPECIES_ROWS}define.ts`;

/** Inside a function these are the shape of a formula, not a chosen number. */
const STRUCTURAL: ReadonlySet<number> = new Set([0, 1, 2]);

/** Every number of the domain that somebody chose, in the order of the files. */
export function domainConstants(): Constant[] {
  return sourceFiles([".ts"]).filter(isMutable).flatMap(constantsOf);
}

function isMutable({ path }: SourceFile): boolean {
  if (!path.startsWith(DOMAIN) || path.endsWith(".test.ts")) return false;
  return !path.startsWith(SPECIES_ROWS) || path === DEFINES_THE_ROWS;
}

function constantsOf(source: SourceFile): Constant[] {
  const file = parse(source);
  const constants: Constant[] = [];
  const visit = (node: ts.Node, names: readonly string[], isInFunction: boolean): void => {
    if (ts.isTypeNode(node)) return;
    if (ts.isNumericLiteral(node)) {
      const value = Number(node.text);
      if (value === 0 || isIndex(node) || (isInFunction && STRUCTURAL.has(value))) return;
      const start = node.getStart(file);
      const { path } = source;
      constants.push({ id: `${path}:${start}`, path, name: names.join("."), start, end: node.end, value });
      return;
    }
    const name = nameOf(node, file);
    const inside = name === undefined ? names : [...names, name];
    ts.forEachChild(node, (child) => visit(child, inside, isInFunction || ts.isFunctionLike(node)));
  };
  visit(file, [], false);
  return constants;
}

function nameOf(node: ts.Node, file: ts.SourceFile): string | undefined {
  const isNamed =
    ts.isVariableDeclaration(node) || ts.isPropertyAssignment(node) || ts.isFunctionDeclaration(node);
  return isNamed ? node.name?.getText(file) : undefined;
}

/** A place in an array, or an argument of one of its methods. */
function isIndex(node: ts.NumericLiteral): boolean {
  const { parent } = node;
  const inner = ts.isPrefixUnaryExpression(parent) ? parent.parent : parent;
  if (ts.isElementAccessExpression(inner)) return true;
  if (!ts.isCallExpression(inner) || !ts.isPropertyAccessExpression(inner.expression)) return false;
  return ["at", "slice", "with"].includes(inner.expression.name.text);
}
