import type { Answer } from "../store/store.ts";
import { readKeyFile } from "./key-file.ts";
import { openKeys, type PublicKey, publicKeysOf } from "./known-keys.ts";
import { signingKeys } from "./reads.ts";
import { sealingWith } from "./sealing.ts";
import type { KeySettings } from "./start.ts";

const IN_MEMORY = ":memory:";

/** The keys that signatures of a shop are checked with, when nothing is to be written: those of an earlier version's file too. */
export async function knownPublicKeys(
  answer: Answer,
  { signingKeys: file, sealingKey }: Omit<KeySettings, "acceptLostSigningKeys">,
): Promise<readonly PublicKey[]> {
  const found = file === IN_MEMORY ? undefined : readKeyFile(file);
  const key = sealingKey ?? found?.sealingKey;
  const records = await answer(signingKeys.inOrder());
  const kept = key === undefined ? [] : publicKeysOf(openKeys(records, sealingWith(key)).known);
  const earlier = (found?.keys ?? []).map(({ kid, createdAt, x, retiredAt, compromisedAt }) => ({
    ...{ id: kid, createdAt, x },
    ...(retiredAt !== undefined && { retiredAt }),
    ...(compromisedAt !== undefined && { compromisedAt }),
  }));
  return [...earlier.filter(({ id }) => kept.every((each) => each.id !== id)), ...kept];
}
