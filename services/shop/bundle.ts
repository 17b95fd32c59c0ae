import { readFile } from "node:fs/promises";
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

/**
 * Writes the service, or another program that uses it, and its packages as one file of `dist`: loading the thousand and
 * more files one by one took longer than everything else at the start. Gives the file's path.
 */
export async function bundleService(name: string, program = join(SOURCES, "main.ts")): Promise<string> {
  const outfile = join(DIST, name);
  await build({
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
    logLevel: "warning",
  });
  return outfile;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await bundleService("main.js");
