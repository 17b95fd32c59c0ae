import { createDecipheriv } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { sortedJson } from "./sorted-json.ts";

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

/** A signing key as the database has it. */
export type KeptSigningKey = {
  kid: string;
  x: string;
  seal: string;
  createdAt: string;
  retiredAt: string | null;
};

/** The signing keys that a shop's database has, oldest first. */
export async function keptKeys({ file }: { readonly file: string }): Promise<KeptSigningKey[]> {
  const columns = `kid, x, seal, created_at AS "createdAt", retired_at AS "retiredAt"`;
  const rows = await behindTheService({ file }, (database) =>
    database.rows(`SELECT ${columns} FROM signing_keys ORDER BY id`),
  );
  return rows.map(({ kid, x, seal, createdAt, retiredAt }) => ({
    ...{ kid: String(kid), x: String(x), seal: String(seal), createdAt: String(createdAt) },
    retiredAt: retiredAt === null ? null : String(retiredAt),
  }));
}

/** What is sealed with AES-256-GCM (NIST SP 800-38D): a nonce of 12 bytes, the text, a tag of 16. Throws unless it fits what is stated. */
export function unsealed(sealingKey: string, seal: string, stated: object): string {
  const bytes = Buffer.from(seal, "base64url");
  const decipher = createDecipheriv("aes-256-gcm", Buffer.from(sealingKey, "hex"), bytes.subarray(0, 12));
  decipher.setAAD(Buffer.from(sortedJson(stated)));
  decipher.setAuthTag(bytes.subarray(-16));
  return Buffer.concat([decipher.update(bytes.subarray(12, -16)), decipher.final()]).toString("utf8");
}
