import { execFileSync } from "node:child_process";
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildClient, CLIENT } from "./build.ts";

type Manifest = Readonly<Record<string, unknown>> & { readonly publishConfig: object };

/** What of the manifest is for this repository alone. */
const OWN = ["scripts", "devDependencies", "publishConfig"];

const DOCUMENTS = ["README.md", "METHODS.md", "CHANGELOG.md"];

/** Packs the client as it is published into a folder that exists; gives the tarball's path. */
export function packClient(folder: string): string {
  const staged = mkdtempSync(join(tmpdir(), "rimwise-client-"));
  try {
    buildClient(join(staged, "dist"));
    const manifest: Manifest = JSON.parse(readFileSync(join(CLIENT, "package.json"), "utf8"));
    writeFileSync(join(staged, "package.json"), `${JSON.stringify(published(manifest), undefined, 2)}\n`);
    for (const name of DOCUMENTS) copyFileSync(join(CLIENT, name), join(staged, name));
    copyFileSync(join(CLIENT, "../../LICENSE"), join(staged, "LICENSE"));
    const options = ["--ignore-scripts", "--silent", "--pack-destination", folder];
    const [name = ""] = execFileSync("npm", ["pack", ...options], { cwd: staged, encoding: "utf8" })
      .trim()
      .split("\n")
      .slice(-1);
    return join(folder, name);
  } finally {
    rmSync(staged, { recursive: true });
  }
}

function published(manifest: Manifest): object {
  const kept = Object.entries(manifest).filter(([name]) => !OWN.includes(name));
  return { ...Object.fromEntries(kept), ...manifest.publishConfig };
}
