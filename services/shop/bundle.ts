import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { build, type Plugin } from "esbuild";

const SHOP = fileURLToPath(new URL("./", import.meta.url));
const SOURCES = join(SHOP, "src", sep);
const DIST = join(SHOP, "dist");

/** Brings code for the machine it was installed on, which only its own loader finds, or is not installed at all. */
const NOT_BUNDLED = ["better-sqlite3", "pg-native", "@resvg/resvg-js", "pdfkit", "dejavu-fonts-ttf"];

/** CommonJS packages call `require` for Node's own modules; a file of ES modules has none. */
const REQUIRE = `import { createRequire as requireFrom } from "node:module"; const require = requireFrom(import.meta.url);`;

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
        contents: source.replaceAll("import.meta.url", `new URL(${place}, import.meta.url).href`),
      };
    }),
};

/** Characters at which a line of the bundle is broken, so that a place in a stack trace can be found. */
const LINE_LIMIT = 160;

/**
 * Writes the service, or another program that uses it, and its packages as one file of `dist`: loading the thousand and
 * more files one by one took longer than everything else at the start. Names are kept; comments, which would be read at every start and
 * held in memory, are not, but for licenses, in a file of their own. Gives the file's path.
 */
export async function bundleService(name: string, program = join(SOURCES, "main.ts")): Promise<string> {
  const outfile = join(DIST, name);
  const { outputFiles } = await build({
    entryPoints: [program],
    outfile,
    bundle: true,
    platform: "node",
    target: "node20",
    format: "esm",
    conditions: ["source"],
    external: NOT_BUNDLED,
    banner: { js: REQUIRE },
    plugins: [OWN_PLACES],
    minifyWhitespace: true,
    minifySyntax: true,
    lineLimit: LINE_LIMIT,
    legalComments: "external",
    write: false,
    logLevel: "warning",
  });
  await mkdir(DIST, { recursive: true });
  for (const { path, text } of outputFiles) await writeFile(path, path === outfile ? inAscii(text) : text);
  return outfile;
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

if (process.argv[1] === fileURLToPath(import.meta.url)) await bundleService("main.js");
