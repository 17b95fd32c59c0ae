import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { CLIENT, NODE, packedClient, runInProject } from "./packed.ts";

const packed = packedClient();
const manifest = JSON.parse(readFileSync(join(packed.installed, "package.json"), "utf8"));
const files = readdirSync(packed.installed, { recursive: true, encoding: "utf8" });

describe("the published package", () => {
  it("is laid out as its package.json says", () => {
    expect(run("publint", [packed.tarball, "--strict"])).toContain("All good!");
  });

  it("resolves with its types from Node's modules and from bundlers", () => {
    const report = run("attw", ["--profile", "esm-only", "--format", "json", packed.tarball]);
    const { analysis } = JSON.parse(report);
    expect(analysis.types).toMatchObject({ kind: "included" });
    // A package of ES modules alone: what resolves CommonJS only finds none, as it says.
    const others = analysis.problems.filter(({ kind }: { kind: string }) => kind !== "CJSResolvesToESM");
    expect(others.map(({ resolutionKind }: { resolutionKind?: string }) => resolutionKind)).toEqual(
      others.map(() => "node10"),
    );
  });

  it("says which Node it runs in, and names no place that does not exist", () => {
    expect(manifest.engines).toEqual({ node: ">=20.19" });
    for (const field of ["repository", "homepage", "bugs"]) expect(manifest).not.toHaveProperty(field);
  });

  it("brings its licence, changes and documentation, and nothing that only its repository uses", () => {
    for (const name of ["LICENSE", "CHANGELOG.md", "METHODS.md", "README.md"]) expect(files).toContain(name);
    for (const field of ["scripts", "devDependencies", "dependencies", "peerDependencies", "publishConfig"])
      expect(manifest).not.toHaveProperty(field);
    expect(JSON.stringify(manifest.exports)).not.toContain("source");
    expect(files.filter((name) => /\.map$|\.test\.|tsbuildinfo|(?<!\.d)\.ts$/.test(name))).toEqual([]);
    for (const name of files.filter((each) => /\.(js|d\.ts)$/.test(each)))
      expect(readFileSync(join(packed.installed, name), "utf8"), name).not.toContain("sourceMappingURL");
    expect(readFileSync(join(packed.installed, "CHANGELOG.md"), "utf8")).toContain(
      `## ${manifest.version}\n`,
    );
  });

  it("needs nothing at run time: no library, no Node", () => {
    for (const name of files.filter((each) => each.endsWith(".js"))) {
      const text = readFileSync(join(packed.installed, name), "utf8");
      const imported = [...text.matchAll(/(?:^|;)\s*(?:import|export)\b[^'"`;]*from\s*["']([^"']+)/gm)];
      for (const [, specifier] of imported) expect(specifier, name).toMatch(/^\.\.?\//);
      expect(text, name).not.toMatch(/\brequire\(|["']node:|\bprocess\./);
    }
  });

  it("works in plain Node", async () => {
    const script = `
      import { createClient, NotFound } from "@rimwise/client";
      const problem = { code: "not-found", requestId: "r1", detail: "No." };
      const fetch = async () => Response.json(problem, { status: 404, headers: { "content-type": "application/problem+json" } });
      const client = createClient({ baseUrl: "http://shop.test", fetch });
      const error = await client.bits.get("bit_1").catch((error) => error);
      process.stdout.write(String(error instanceof NotFound && error.code));
    `;
    expect(await runInProject(packed, script)).toBe("not-found");
  });

  it("runs in the Node that is asked for", async () => {
    const version = execFileSync(NODE, ["--version"], { encoding: "utf8" }).trim();
    expect(await runInProject(packed, "process.stdout.write(process.version)")).toBe(version);
  });
});

describe("the published package on a platform without cryptography", () => {
  // A key of RFC 8037, appendix A.2, and its signature of appendix A.4: what it signs is no sheet.
  const signed =
    "eyJhbGciOiJFZERTQSJ9.RXhhbXBsZSBvZiBFZDI1NTE5IHNpZ25pbmc.hgyY0il_MGCjP0JzlnLWG1PPOt7-09PGcvMg3AIbQR6dWbhijcNR4ki4iylGjg5BhVsPt9g7sVvpAr_MuM0KAg";
  const script = `
    const text = (part) => Buffer.from(part, "base64url");
    const [head, payload, signature] = ${JSON.stringify(signed)}.split(".");
    Object.defineProperty(globalThis, "crypto", { value: {} });
    const { isSigned } = await import(new URL("node_modules/@rimwise/client/dist/signature.js", "file://" + process.cwd() + "/"));
    const key = { kty: "OKP", crv: "Ed25519", x: "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo" };
    const bytes = new TextEncoder().encode(head + "." + payload);
    const wrong = new TextEncoder().encode(head + ".");
    const verdicts = [await isSigned(key, text(signature), bytes), await isSigned(key, text(signature), wrong)];
    process.stdout.write(verdicts.map(String).join());
  `;

  it("checks signatures by the library that it brings, loaded only then", async () => {
    expect(await runInProject(packed, script)).toBe("true,false");
  });

  it("says that it cannot when the library is not at hand", async () => {
    const project = mkdtempSync(join(tmpdir(), "rimwise-client-"));
    onTestFinished(() => rmSync(project, { recursive: true }));
    cpSync(join(packed.project, "node_modules"), join(project, "node_modules"), { recursive: true });
    rmSync(join(project, "node_modules/@rimwise/client/dist/ed25519.js"));
    expect(await runInProject({ project }, script)).toBe("undefined,undefined");
  });
});

/** What a tool of the client's prints; it throws if the tool finds fault. */
function run(tool: string, given: readonly string[]): string {
  return execFileSync(join(CLIENT, "node_modules/.bin", tool), given, { cwd: CLIENT, encoding: "utf8" });
}
