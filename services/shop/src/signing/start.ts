import { rmSync } from "node:fs";
import { type Config, ConfigError } from "../config.ts";
import type { Change } from "../store/port.ts";
import { modeForOthers } from "../store/private-file.ts";
import type { Store } from "../store/store.ts";
import { createSigningKey, loseSigningKey, takeOverSigningKey } from "./decide.ts";
import { damaged, type KeptKey, type KeyFile, makeKeyFile, readKeyFile, writeKeyFile } from "./key-file.ts";
import { isNamedRight, isWhole, newKeyPair } from "./key-pair.ts";
import { openKeys } from "./known-keys.ts";
import { signingKeys } from "./reads.ts";
import type { SigningKeyRecord } from "./record-schema.ts";
import { newSealingKey, sealingWith } from "./sealing.ts";
import { type Signer, signerOf } from "./signer.ts";

/** What a shop has signed so far. */
export type SignedSoFar = {
  /** Ids of the keys that its checkpoints name. */
  readonly signingKeyIds: readonly string[];
  /** Whether sheets may be out there, whose keys are noted nowhere. */
  readonly mayHaveSheets: boolean;
};

export type KeySettings = Pick<Config, "signingKeys" | "sealingKey" | "acceptLostSigningKeys">;

type Parts = Pick<Store, "answer" | "commit"> & {
  readonly settings: KeySettings;
  readonly signed: SignedSoFar;
  readonly now: () => Date;
};

const IN_MEMORY = ":memory:";
/** How often it is looked again when another process that starts at the same time was first. */
const MOST_LOOKS = 5;

/**
 * The signer of a shop, its first key made or the keys of an earlier version's file taken over into the database. `warning` says what the
 * shop does without from now on. Throws a ConfigError when the keys cannot be opened, when others may read what opens them, or when keys
 * that the shop has signed with are missing.
 */
export async function openSigner(parts: Parts): Promise<{ signer: Signer; warning: string | undefined }> {
  for (let looks = 1; looks <= MOST_LOOKS; looks += 1) {
    const ready = await readyKeys(parts);
    if (ready !== undefined) return { signer: signerOf(parts.answer, ready.sealing), warning: ready.warning };
  }
  throw new ConfigError("RIMWISE_SIGNING_KEYS: other processes keep changing the keys. Start again.");
}

/** Makes the keys ready; undefined when another process wrote meanwhile. */
async function readyKeys({ answer, commit, settings, signed, now }: Parts) {
  const { signingKeys: file, acceptLostSigningKeys } = settings;
  const found = file === IN_MEMORY ? undefined : privateFile(file);
  const earlier = found?.keys ?? [];
  if (!(await areUsable(earlier))) throw damaged(file, "its keys do not fit together");
  const records = await answer(signingKeys.inOrder());
  const lost = whatIsMissing(settings, found, records, signed);
  if (lost !== undefined && !acceptLostSigningKeys) {
    throw new ConfigError(
      `RIMWISE_SIGNING_KEYS: ${lost}. Put a good copy back, from a backup; or set RIMWISE_ACCEPT_LOST_SIGNING_KEYS=yes, and what they signed cannot be checked any more.`,
    );
  }
  const sealingKey = sealingKeyOf(settings, found);
  if (sealingKey === undefined) return undefined;
  const sealing = sealingWith(sealingKey);
  const { known, foreign } = openKeys(records, sealing);
  if (foreign.length > 0 && !acceptLostSigningKeys && file !== IN_MEMORY) throw sealedOtherwise(settings);
  const at = now().toISOString();
  const changes: Change[] = foreign.flatMap((record) => loseSigningKey(record, sealing, at).changes);
  if (records.length === 0)
    changes.push(...earlier.flatMap((key) => takeOverSigningKey(key, sealing).changes));
  const isSigning = known.some(({ record }) => record.retiredAt === undefined);
  if (!isSigning && (records.length > 0 || earlier.length === 0))
    changes.push(...createSigningKey(await newKeyPair(), sealing, at).changes);
  if (changes.length > 0) {
    const result = await commit({ stamp: { by: "system", at, requestId: "start" }, changes });
    if (result.kind !== "committed") return undefined;
  }
  if (earlier.length > 0) forgetEarlier(settings, sealingKey);
  const warning = lost && `RIMWISE_SIGNING_KEYS: ${lost}. What they signed cannot be checked any more.`;
  return { sealing, warning: warning ?? warningOf(foreign) };
}

/** What the shop has signed with, and is in neither the database nor the file. */
function whatIsMissing(
  { signingKeys: file, sealingKey }: KeySettings,
  found: KeyFile | undefined,
  records: readonly SigningKeyRecord[],
  { signingKeyIds, mayHaveSheets }: SignedSoFar,
): string | undefined {
  if (file === IN_MEMORY && sealingKey === undefined) return undefined;
  const kids = new Set([...records, ...(found?.keys ?? [])].map(({ kid }) => kid));
  if (found === undefined && sealingKey === undefined) {
    const hasSigned = records.length > 0 || signingKeyIds.length > 0 || mayHaveSheets;
    return hasSigned
      ? `${file} is not there, and it opens the keys that this shop has signed with`
      : undefined;
  }
  const missing = signingKeyIds.filter((kid) => !kids.has(kid));
  if (missing.length > 0)
    return `${records.length === 0 && kids.size > 0 ? file : "the database"} lacks keys that this shop has signed with: ${missing.join(", ")}`;
  return kids.size === 0 && mayHaveSheets ? "the keys that this shop has signed with are gone" : undefined;
}

/**
 * The sealing key of the settings or the file; a new one is in the file before anything is sealed with it. Undefined when another
 * process took it away meanwhile.
 */
function sealingKeyOf(
  { signingKeys: file, sealingKey }: KeySettings,
  found: KeyFile | undefined,
): string | undefined {
  const there = sealingKey ?? found?.sealingKey;
  if (there !== undefined) return there;
  const fresh = newSealingKey();
  if (file === IN_MEMORY) return fresh;
  if (found === undefined) {
    makeKeyFile(file, { sealingKey: fresh });
    return readKeyFile(file)?.sealingKey;
  }
  // Of processes that take over the same file at once, the first to make this one says the key. The file itself, looked at after it, outdoes it.
  const agreed = `${file}.sealing`;
  makeKeyFile(agreed, { sealingKey: fresh });
  const chosen = readKeyFile(agreed)?.sealingKey;
  const now = readKeyFile(file);
  if (chosen !== undefined && now?.keys !== undefined && now.sealingKey === undefined)
    writeKeyFile(file, { sealingKey: chosen, ...now });
  const settled = readKeyFile(file)?.sealingKey;
  if (settled !== undefined) rmSync(agreed, { force: true });
  return settled;
}

/** The signing keys themselves are in the database now: the file has only what opens them, or is of no more use. */
function forgetEarlier(settings: KeySettings, sealingKey: string): void {
  if (settings.sealingKey === undefined) writeKeyFile(settings.signingKeys, { sealingKey });
  else rmSync(settings.signingKeys, { force: true });
}

function sealedOtherwise({ signingKeys: file, sealingKey }: KeySettings): ConfigError {
  const [name, key] =
    sealingKey === undefined
      ? ["RIMWISE_SIGNING_KEYS", `the one in ${file}`]
      : ["RIMWISE_SEALING_KEY", "this one"];
  return new ConfigError(
    `${name}: the signing keys in the database were sealed with another key than ${key}. Every process of the shop needs the same; or set RIMWISE_ACCEPT_LOST_SIGNING_KEYS=yes to start with a new key, and nothing signed before can be checked.`,
  );
}

function warningOf(foreign: readonly SigningKeyRecord[]): string | undefined {
  if (foreign.length === 0) return undefined;
  const kids = foreign.map(({ kid }) => kid).join(", ");
  return `RIMWISE_SIGNING_KEYS: these keys could not be opened, and what they signed cannot be checked any more: ${kids}.`;
}

/** Whether only the last key can sign, each has its own thumbprint, and what the last one signs can be checked. */
async function areUsable(keys: readonly KeptKey[]): Promise<boolean> {
  for (const [index, { kid, x, d, retiredAt, compromisedAt }] of keys.entries()) {
    const isCurrent = index === keys.length - 1;
    if (isCurrent !== (d !== undefined) || isCurrent !== (retiredAt === undefined)) return false;
    if (isCurrent && compromisedAt !== undefined) return false;
    if (!(await (d === undefined ? isNamedRight({ kid, x }) : isWhole({ kid, x, d })))) return false;
  }
  return true;
}

function privateFile(file: string): KeyFile | undefined {
  const mode = modeForOthers(file);
  if (mode !== undefined) {
    throw new ConfigError(
      `RIMWISE_SIGNING_KEYS: others than its owner may read ${file} (mode ${mode}), and whoever did and has the database can sign for this shop. Take that right away (chmod 600), and when the service runs, change the keys: POST /v1/signing-keys/rotate.`,
    );
  }
  return readKeyFile(file);
}
