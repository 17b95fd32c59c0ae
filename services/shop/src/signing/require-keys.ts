import { statSync } from "node:fs";
import { type Config, ConfigError } from "../config.ts";
import { readKeyFile } from "./key-file.ts";

/** What a shop has signed so far. */
export type Signed = {
  /** Ids of the keys that its checkpoints name. */
  readonly signingKeyIds: readonly string[];
  /** Whether sheets may be out there, whose keys are noted nowhere. */
  readonly mayHaveSheets: boolean;
};

const IN_MEMORY = ":memory:";
const OTHERS = 0o077;
const PERMISSIONS = 0o777;

/**
 * Throws a ConfigError when others may read the file of signing keys, or when keys that this shop has signed with are not in it; with
 * the setting that says so, they are taken as lost, and what that means is given back.
 */
export function requireSigningKeys(
  { signingKeys: file, acceptLostSigningKeys }: Config,
  { signingKeyIds, mayHaveSheets }: Signed,
): string | undefined {
  if (file === IN_MEMORY) return undefined;
  requirePrivate(file);
  const keys = readKeyFile(file);
  const missing = signingKeyIds.filter((id) => keys?.every(({ kid }) => kid !== id) ?? true);
  if (missing.length === 0 && (keys !== undefined || !mayHaveSheets)) return undefined;
  const what =
    keys === undefined
      ? `${file} is not there, and this shop has signed with keys that were in it`
      : `${file} lacks keys that this shop has signed with: ${missing.join(", ")}`;
  if (acceptLostSigningKeys)
    return `RIMWISE_SIGNING_KEYS: ${what}. What they signed cannot be checked any more.`;
  throw new ConfigError(
    `RIMWISE_SIGNING_KEYS: ${what}. Put a good copy back, from a backup; or set RIMWISE_ACCEPT_LOST_SIGNING_KEYS=yes, and what they signed cannot be checked any more.`,
  );
}

function requirePrivate(file: string): void {
  const status = statSync(file, { throwIfNoEntry: false });
  // Windows has no such permissions and shows all of them.
  if (status === undefined || process.platform === "win32" || (status.mode & OTHERS) === 0) return;
  const mode = (status.mode & PERMISSIONS).toString(8);
  throw new ConfigError(
    `RIMWISE_SIGNING_KEYS: others than its owner may read ${file} (mode ${mode}), and whoever did can sign for this shop. Take that right away (chmod 600), and when the service runs, change the keys: POST /v1/signing-keys/rotate.`,
  );
}
