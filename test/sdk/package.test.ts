import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const CLIENT = fileURLToPath(new URL("../../packages/client/", import.meta.url));
const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** What the design allows the client to weigh on a page. */
const MOST_BYTES_GZIPPED = 8 * 1024;

describe("the bundled client", () => {
  const bundle = run(CLIENT, "esbuild", [
    "src/index.ts",
    "--bundle",
    "--minify",
    "--format=esm",
    "--platform=neutral",
    "--target=es2022",
  ]);

  it("weighs at most 8 kB gzipped", () => {
    const bytes = gzipSync(bundle, { level: 9 }).length;
    expect(bytes).toBeLessThanOrEqual(MOST_BYTES_GZIPPED);
    expect(bytes).toBeGreaterThan(1000);
  });

  it("needs nothing at run time: no library, no Node", () => {
    expect(bundle).not.toMatch(/(?<!\/)\bimport\s*["'{*(]|\brequire\(|node:|\bprocess\./);
    const manifest: object = JSON.parse(readFileSync(join(CLIENT, "package.json"), "utf8"));
    expect(manifest).not.toHaveProperty("dependencies");
    expect(manifest).not.toHaveProperty("peerDependencies");
  });
});

describe("the published package", () => {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-client-"));
  afterAll(() => rmSync(folder, { recursive: true }));

  // A copy is built and packed, so that no other test ever sees a half-written build.
  beforeAll(() => {
    for (const part of ["package.json", "src"])
      cpSync(join(CLIENT, part), join(folder, part), { recursive: true });
    run(ROOT, "tsc", [
      "-p",
      ".",
      "--outDir",
      join(folder, "dist"),
      "--composite",
      "false",
      "--incremental",
      "false",
    ]);
    execFileSync("npm", ["pack", "--offline", "--ignore-scripts", "--silent"], { cwd: folder });
  });

  it("is laid out as its package.json says", () => {
    expect(run(CLIENT, "publint", [folder, "--strict"])).toContain("All good!");
  });

  it("resolves with its types from Node's modules and from bundlers", () => {
    const [tarball = ""] = readdirSync(folder).filter((name) => name.endsWith(".tgz"));
    const report = run(CLIENT, "attw", ["--profile", "esm-only", "--format", "json", join(folder, tarball)]);
    expect(JSON.parse(report)).toMatchObject({ analysis: { types: { kind: "included" } } });
  });

  it("works in plain Node from its built files", () => {
    const script = `
      import { createClient, NotFound } from ${JSON.stringify(join(folder, "dist/index.js"))};
      const problem = { code: "not-found", requestId: "r1", detail: "No." };
      const fetch = async () => Response.json(problem, { status: 404, headers: { "content-type": "application/problem+json" } });
      const client = createClient({ baseUrl: "http://shop.test", fetch });
      const error = await client.bits.get("bit_1").catch((error) => error);
      process.stdout.write(String(error instanceof NotFound && error.code));
    `;
    expect(
      execFileSync(process.execPath, ["--input-type=module", "--eval", script], { encoding: "utf8" }),
    ).toBe("not-found");
  });
});

/** What a tool of that package prints, run on the client; it throws if the tool finds fault. */
function run(owner: string, tool: string, given: readonly string[]): string {
  return execFileSync(join(owner, "node_modules/.bin", tool), given, { cwd: CLIENT, encoding: "utf8" });
}
