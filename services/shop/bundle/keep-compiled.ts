import { execFile } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtemp, open, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const PROGRAM = fileURLToPath(new URL("code-cache.js", import.meta.url));
const DIGEST_BYTES = 32;
const TIME_LIMIT_MS = 60_000;

/** Keeps the compiled code of a bundled service beside it, as `start.js` looks for it, unless it is there. Throws when the service does not run. */
export async function keepCompiled(starter: string): Promise<void> {
  if (await isKept(starter)) return;
  const folder = await mkdtemp(join(tmpdir(), "rimwise-code-"));
  try {
    await promisify(execFile)(process.execPath, [PROGRAM, starter, join(folder, "shop.sqlite")], {
      // Not the settings of whoever builds it: only what a program needs to run at all.
      env: { PATH: process.env["PATH"], HOME: process.env["HOME"] },
      timeout: TIME_LIMIT_MS,
    });
  } finally {
    await rm(folder, { recursive: true });
  }
}

async function isKept(starter: string): Promise<boolean> {
  const text = await readFile(starter.replace(/\.js$/, ".cjs"));
  const digest = createHash("sha256").update(text).digest();
  try {
    const cache = await open(starter.replace(/\.js$/, ".cache"));
    try {
      const { buffer } = await cache.read(Buffer.alloc(DIGEST_BYTES), 0, DIGEST_BYTES, 0);
      return buffer.equals(digest);
    } finally {
      await cache.close();
    }
  } catch {
    return false;
  }
}
