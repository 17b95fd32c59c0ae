import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createClient } from "@hey-api/openapi-ts";
import type { Document } from "./document.ts";

const FILE = "types.gen.ts";

/** The text of the generated types, by its file name. */
export async function typeFiles(document: Document): Promise<Map<string, string>> {
  const folder = await mkdtemp(join(tmpdir(), "rimwise-types-"));
  try {
    await createClient({
      input: JSON.parse(JSON.stringify(document, withoutDiscriminators)),
      output: { path: folder, entryFile: false, postProcess: [] },
      plugins: ["@hey-api/typescript"],
      logs: { level: "silent" },
    });
    return new Map([[FILE, await readFile(join(folder, FILE), "utf8")]]);
  } finally {
    await rm(folder, { recursive: true });
  }
}

/**
 * A discriminator without a mapping makes the library expect the schema's own name in the field, so that no value would fit.
 * The constant in each branch already lets TypeScript distinguish the branches.
 */
function withoutDiscriminators(key: string, value: unknown): unknown {
  return key === "discriminator" ? undefined : value;
}
