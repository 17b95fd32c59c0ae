import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { CLIENT, packedClient } from "./packed.ts";

/** What the design allows the client to weigh on a page. */
const MOST_BYTES_GZIPPED = 8 * 1024;

const dist = join(packedClient().installed, "dist");
const resources = readdirSync(join(dist, "generated")).filter((name) =>
  /^(?!resources|version).*\.js$/.test(name),
);

/** A bundle of a module as a page gets it at the start: what is loaded on demand is no part of it. */
function bundleOf(code: string, ...more: string[]): string {
  const options = ["--bundle", "--minify", "--format=esm", "--platform=neutral", "--target=es2022"];
  return execFileSync(
    join(CLIENT, "node_modules/.bin/esbuild"),
    [...options, "--external:./ed25519.js", ...more],
    {
      cwd: dist,
      input: code,
      encoding: "utf8",
    },
  );
}

const weight = (code: string, ...more: string[]) => gzipSync(bundleOf(code, ...more), { level: 9 }).length;

const whole = weight('export * from "./index.js";');
const client = weight('export { createClient } from "./index.js";');
const core = weight('export * from "./index.js";', ...["--external:./generated/resources.js"]);
const oneResource = weight(
  'export { createClient } from "./index.js";',
  ...resources.filter((name) => name !== "bits.js").map((name) => `--external:./${name}`),
);

describe("the bundled client", () => {
  it("weighs at most 8 kB gzipped: the core with all that it exports, and a client with all its methods", () => {
    for (const bytes of [core, client]) {
      expect(bytes).toBeLessThanOrEqual(MOST_BYTES_GZIPPED);
      expect(bytes).toBeGreaterThan(4000);
    }
  });

  it("weighs what its README says, to a fifth of a kilobyte", () => {
    const readme = readFileSync(join(CLIENT, "README.md"), "utf8");
    const said = [...readme.matchAll(/^\| ([^|]+) \| (\d\.\d) kB \|$/gm)];
    const measured: [string, number][] = [
      ["everything that the package exports", whole],
      ["a page that imports `createClient`", client],
      ["the same with the methods of one resource only (`bits`)", oneResource],
      ["a page that imports `verifySheet` alone", weight('export { verifySheet } from "./index.js";')],
    ];
    expect(said.map(([, what]) => what)).toEqual(measured.map(([what]) => what));
    for (const [index, [what, bytes]] of measured.entries())
      expect(Math.abs(Number(said[index]?.[2]) * 1000 - bytes), `${what}: ${bytes} bytes`).toBeLessThan(200);
  });

  it("loads the library for signatures only when it is needed", () => {
    expect(bundleOf('export * from "./index.js";')).toContain('import("./ed25519.js")');
  });
});
