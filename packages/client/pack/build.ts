import { execFileSync } from "node:child_process";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { buildSync } from "esbuild";

export const CLIENT = fileURLToPath(new URL("../", import.meta.url));

/** The one file that uses a library: the library goes into it, so that the package depends on nothing. */
const WITH_LIBRARY = "ed25519";
const LIBRARIES = ["@noble/ed25519", "@noble/hashes"];
const LICENCES = `${WITH_LIBRARY}.LICENCES.txt`;

/** Compiles the sources as they are published: modules with their types beside them, no maps to sources that stay here. */
export function buildClient(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
  const compiler = createRequire(import.meta.url).resolve("typescript/lib/tsc.js");
  const options = ["--outDir", folder, "--composite", "false", "--incremental", "false"];
  execFileSync(process.execPath, [compiler, "-p", CLIENT, ...options], { stdio: ["ignore", 2, 2] });
  buildSync({
    entryPoints: [join(CLIENT, "src", `${WITH_LIBRARY}.ts`)],
    outfile: join(folder, `${WITH_LIBRARY}.js`),
    bundle: true,
    minify: true,
    format: "esm",
    platform: "neutral",
    target: "es2022",
    legalComments: "none",
    banner: { js: `// Contains libraries under the licences in ${LICENCES}.` },
    logLevel: "warning",
  });
  const texts = LIBRARIES.map((name) => readFileSync(join(CLIENT, "node_modules", name, "LICENSE"), "utf8"));
  writeFileSync(
    join(folder, LICENCES),
    texts.map((text, index) => `${LIBRARIES[index]}\n\n${text}`).join("\n"),
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) buildClient(join(CLIENT, "dist"));
