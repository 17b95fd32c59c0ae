import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";

/** RFC 8037, appendix A.1 and A.2: an Ed25519 key, and A.3: its thumbprint. */
export const PUBLISHED = {
  d: "nWGxne_9WmC6hEr0kuwsxERJxWl7MmkZcDusAxyuf2A",
  x: "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo",
  kid: "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k",
};

/** A file of its own for the keys, with this in it. */
export function keyFile(
  content?: object | string,
  afterwards: (release: () => void) => void = onTestFinished,
): string {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-keys-"));
  afterwards(() => rmSync(folder, { recursive: true }));
  const file = join(folder, "keys.json");
  if (content !== undefined)
    writeFileSync(file, typeof content === "string" ? content : JSON.stringify(content), { mode: 0o600 });
  return file;
}
