import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { Script } from "node:vm";

/*
 * Runs the program that is bundled beside this file under the same name. A quarter of a start would be to compile it: code that was
 * compiled before and stands there too is taken, if it was made of this very text. An engine of another version takes it for none.
 */
const file = fileURLToPath(import.meta.url).replace(/\.js$/, ".cjs");
export const cacheFile = file.replace(/\.cjs$/, ".cache");
export const { digest, script } = read();

const bundled = { exports: {} };
script.runInThisContext()(bundled.exports, createRequire(file), bundled, file, dirname(file));

function read() {
  const text = readFileSync(file);
  const digest = createHash("sha256").update(text).digest();
  return {
    digest,
    script: new Script(text.toString("latin1"), { filename: file, cachedData: compiledOf(digest) }),
  };
}

/** The cache begins with the digest of the text that it was made of: the engine itself compares no more than its length. */
function compiledOf(digest) {
  try {
    const cache = readFileSync(cacheFile);
    return cache.subarray(0, digest.length).equals(digest) ? cache.subarray(digest.length) : undefined;
  } catch {
    return undefined;
  }
}
