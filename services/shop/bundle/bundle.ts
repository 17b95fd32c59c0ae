import { mkdir, readFile } from "node:fs/promises";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { build, type Plugin } from "esbuild";
import { keepCompiled } from "./keep-compiled.ts";
import { replaceFile } from "./replace-file.ts";

const SHOP = fileURLToPath(new URL("../", import.meta.url));
const SOURCES = join(SHOP, "src", sep);
const STARTER = fileURLToPath(new URL("start.js", import.meta.url));

/** Brings code for the machine it was installed on, which only its own loader finds, or is not installed at all. */
const NOT_BUNDLED = ["better-sqlite3", "pg-native", "@resvg/resvg-js", "pdfkit", "dejavu-fonts-ttf"];

/** The bundle is a function that `start.js` calls, as Node calls a CommonJS module. */
const HEAD = `(function (exports, require, module, __filename, __dirname) { const OWN_URL = require("node:url").pathToFileURL(__filename).href;`;
const TAIL = "})";

/** Sources name the files beside them from where they stand: each keeps its place below `dist`. */
const OWN_PLACES: Plugin = {
  name: "own-places",
  setup: ({ onLoad }) =>
    onLoad({ filter: /\.ts$/ }, async ({ path }) => {
      if (!path.startsWith(SOURCES)) return undefined;
      const place = JSON.stringify(`./${relative(SOURCES, path).replaceAll(sep, "/")}`);
      const source = await readFile(path, "utf8");
      return {
        loader: "ts",
        contents: source.replaceAll("import.meta.url", `new URL(${place}, OWN_URL).href`),
      };
    }),
};

/** Characters at which a line of the bundle is broken, so that a place in a stack trace can be found. */
const LINE_LIMIT = 160;

export type BundleOptions = {
  /** What its files are called, without an ending. */
  readonly name: string;
  /** Default: the service. Another program has no top-level `await`. */
  readonly program?: string;
  /** Default: `dist`. It must stand where the sources' own folder stands. */
  readonly folder?: string;
};

/**
 * Writes the service, or another program that uses it, and its packages as one file, and beside it what starts it: loading the
 * thousand and more files one by one took longer than everything else at the start. Names are kept; comments, which would be read
 * at every start and held in memory, are not, but for licenses, in a file of their own. Gives the path of what starts it.
 */
export async function bundleProgram({
  name,
  program = join(SOURCES, "main.ts"),
  folder = join(SHOP, "dist"),
}: BundleOptions): Promise<string> {
  const outfile = join(folder, `${name}.cjs`);
  const { outputFiles } = await build({
    entryPoints: [program],
    outfile,
    bundle: true,
    platform: "node",
    target: "node20",
    format: "cjs",
    conditions: ["source"],
    external: NOT_BUNDLED,
    banner: { js: HEAD },
    footer: { js: TAIL },
    // A script is given no way to import; all that is loaded later are CommonJS packages.
    supported: { "dynamic-import": false },
    define: { "import.meta.url": "OWN_URL" },
    plugins: [OWN_PLACES],
    minifyWhitespace: true,
    minifySyntax: true,
    lineLimit: LINE_LIMIT,
    legalComments: "external",
    write: false,
    logLevel: "warning",
  });
  await mkdir(folder, { recursive: true });
  for (const { path, text } of outputFiles) await replaceFile(path, path === outfile ? inAscii(text) : text);
  const starter = join(folder, `${name}.js`);
  await replaceFile(starter, await readFile(STARTER, "utf8"));
  return starter;
}

/** Bundles the service, and keeps its compiled code beside it. */
export async function bundleService(options: Omit<BundleOptions, "program">): Promise<string> {
  const starter = await bundleProgram(options);
  await keepCompiled(starter);
  return starter;
}

/**
 * The bundle with nothing but ASCII in it: with one other character the engine keeps all of its text in two bytes each. What the
 * bundler leaves as it is stands in regular expressions, where an escape means the same.
 */
function inAscii(text: string): string {
  return text.replaceAll(
    /[\u0080-\uffff]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const starter = await bundleProgram({ name: "main" });
  // Where nothing may listen, as in some places that build, the service is built all the same.
  await keepCompiled(starter).catch((error: unknown) =>
    process.stderr.write(
      `The service is built, and will start more slowly: its compiled code could not be kept. ${error}\n`,
    ),
  );
}
