import { posix } from "node:path";
import ts from "typescript";
import { type Import, importsOf, parse, type SourceFile } from "./source-files.ts";

const DOMAIN = "packages/domain/src/";
const DRAWING = "packages/drawing/src/";
const CLIENT = "packages/client/src/";
const SHOP = "services/shop/src/";
const DEMO = "services/demo/src/";

/** What each room of the domain may import from. `wording` may know the types of all of them. */
const ROOMS_BELOW: Readonly<Record<string, readonly string[]>> = {
  quantity: [],
  policy: ["quantity"],
  bit: ["quantity"],
  wood: ["quantity"],
  router: ["quantity", "policy", "bit"],
  lookup: ["quantity", "bit"],
  search: ["quantity", "bit"],
  wear: ["quantity", "policy", "wood"],
  limit: ["quantity", "policy", "bit", "wood", "router"],
  cut: ["quantity", "policy", "bit", "wood", "router"],
  day: ["quantity", "policy", "cut"],
  guide: ["quantity", "bit", "router", "cut"],
  precaution: ["quantity", "policy", "bit", "wood", "router", "limit", "cut", "guide"],
  plan: ["quantity", "policy", "bit", "wood", "router", "limit", "cut", "guide", "precaution"],
  panel: ["quantity", "policy", "bit", "wood", "router", "limit", "cut", "plan"],
  job: ["quantity", "policy", "bit", "wood", "router", "cut", "guide", "wear", "plan"],
  joint: ["quantity", "bit"],
  wording: ["quantity"],
};

/** Which packages of ours each package may import. */
const PACKAGES_BELOW: Readonly<Record<string, readonly string[]>> = {
  [DOMAIN]: [],
  [DRAWING]: ["@rimwise/domain"],
  [CLIENT]: [],
  [SHOP]: ["@rimwise/domain", "@rimwise/drawing"],
  [DEMO]: ["@rimwise/client"],
};

/** These import nothing from anywhere else, not even a library. */
const ALONE: readonly string[] = [DOMAIN, DRAWING, CLIENT];

/** The one file of the client that a library is packed into, loaded only where it is needed. */
const WITH_LIBRARY = `${CLIENT}ed25519.ts`;

const SQL_LIBRARIES = /^(drizzle-orm|better-sqlite3|pg)(\/|$)/;
const KNOWS_SQL = new RegExp(`^${SHOP}(store/.*|.*/reads\\.ts)$`);
const READS_ENVIRONMENT = `${SHOP}config.ts`;

/** Everything in these files that points the wrong way, one sentence each. Tests may import anything. */
export function layerFaults(files: readonly SourceFile[]): string[] {
  return files
    .filter(({ path }) => path.endsWith(".ts") && !path.endsWith(".test.ts"))
    .flatMap((file) => {
      const home = Object.keys(PACKAGES_BELOW).find((each) => file.path.startsWith(each));
      return home === undefined ? [] : faultsOf(file, home);
    });
}

function faultsOf(file: SourceFile, home: string): string[] {
  const { path } = file;
  const faults = importsOf(file).flatMap((each) => [
    ...packageFaults(path, home, each),
    ...(home === DOMAIN ? roomFaults(path, each) : []),
    ...(SQL_LIBRARIES.test(each.specifier) && !KNOWS_SQL.test(path)
      ? [`${path} imports ${each.specifier}: only reads.ts and store/ know SQL`]
      : []),
  ]);
  return [...faults, ...syntaxFaults(file)];
}

function packageFaults(path: string, home: string, { specifier }: Import): string[] {
  if (specifier.startsWith(".")) {
    return resolved(path, specifier).startsWith(home)
      ? []
      : [`${path} imports ${specifier}: it leaves ${home}`];
  }
  const isOurs = specifier.startsWith("@rimwise/");
  if (isOurs && !PACKAGES_BELOW[home]?.includes(specifier))
    return [`${path} imports ${specifier}: it points up`];
  return ALONE.includes(home) && !isOurs && path !== WITH_LIBRARY
    ? [`${path} imports ${specifier}: ${home} stands alone`]
    : [];
}

function roomFaults(path: string, { specifier, isTypeOnly }: Import): string[] {
  const from = roomOf(path);
  const to = roomOf(resolved(path, specifier));
  // The door of the package may name everything; within a room there are no fences.
  if (from === undefined || to === undefined || from === to) return [];
  const below = ROOMS_BELOW[from];
  if (below === undefined) return [`${path}: the room ${from} is not among the known ones`];
  if (below.includes(to) || (from === "wording" && isTypeOnly)) return [];
  return [`${path} imports ${specifier}: ${from} is not above ${to}`];
}

function syntaxFaults(file: SourceFile): string[] {
  const faults: string[] = [];
  const visit = (node: ts.Node): void => {
    if (
      ts.isPropertyAccessExpression(node) &&
      node.getText() === "process.env" &&
      !mayReadEnvironment(file)
    ) {
      faults.push(`${file.path} reads process.env: only config.ts does`);
    }
    if (ts.isCallExpression(node) && isAsyncTransaction(node)) {
      faults.push(`${file.path} has an async transaction body: what follows its first await is outside`);
    }
    ts.forEachChild(node, visit);
  };
  visit(parse(file));
  return faults;
}

function mayReadEnvironment({ path }: SourceFile): boolean {
  return !path.startsWith(SHOP) || path === READS_ENVIRONMENT;
}

function isAsyncTransaction({ expression, arguments: given }: ts.CallExpression): boolean {
  const name = ts.isPropertyAccessExpression(expression) ? expression.name.text : expression.getText();
  return name === "transaction" && given.some((body) => ts.isFunctionLike(body) && isAsync(body));
}

function isAsync(body: ts.SignatureDeclaration): boolean {
  return (
    ts.canHaveModifiers(body) &&
    (ts.getModifiers(body) ?? []).some(({ kind }) => kind === ts.SyntaxKind.AsyncKeyword)
  );
}

function resolved(path: string, specifier: string): string {
  return posix.join(posix.dirname(path), specifier);
}

function roomOf(path: string): string | undefined {
  if (!path.startsWith(DOMAIN)) return undefined;
  const [room, ...rest] = path.slice(DOMAIN.length).split("/");
  return rest.length === 0 ? undefined : room;
}
