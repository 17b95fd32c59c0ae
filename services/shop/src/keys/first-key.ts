import { setTimeout as wait } from "node:timers/promises";
import { newId } from "../store/id.ts";
import { whileLeased } from "../store/leases.ts";
import type { Store } from "../store/store.ts";
import { createKey } from "./decide.ts";
import { isPassphrase, type KeyText, newKeyText, readKeyText } from "./key-text.ts";
import { keyKind } from "./kind.ts";
import { keys } from "./reads.ts";

/** Takes the text of a new key to whoever is to have it. */
export type DeliverKey = (key: string) => void;

const LEASE = "first-key";
const LOOK_AGAIN_MS = 100;
/** Longer than a lease holds that a process took and was killed with. */
const MOST_LOOKS = 400;

type Options = { readonly deliver?: DeliverKey; readonly now?: Date };

/**
 * Gives a database without keys its first manager's key: the one from the settings, or a new one, whose text is
 * delivered, and returned. A database that has keys is left as it is.
 */
export async function grantFirstKey(
  store: Store,
  given: string | undefined,
  { deliver, now = new Date() }: Options = {},
): Promise<string | undefined> {
  for (let looks = 1; await store.answer(keys.isEmpty()); looks += 1) {
    const granted = await whileLeased(store.leases, LEASE, () => grant(store, given, deliver, now));
    if (granted !== undefined) return granted.value;
    if (looks === MOST_LOOKS) throw new Error("another process has not made the first key in time");
    await wait(LOOK_AGAIN_MS);
  }
  return undefined;
}

async function grant(
  store: Store,
  given: string | undefined,
  deliver: DeliverKey | undefined,
  now: Date,
): Promise<string | undefined> {
  // Asked again: another process that started at the same moment may have been first.
  if (!(await store.answer(keys.isEmpty()))) return undefined;
  const key = given === undefined ? newKeyText() : chosenKey(given);
  // Before it opens anything: a key that nobody got would be the only one.
  if (given === undefined) deliver?.(key.text);
  const at = now.toISOString();
  const { changes } = createKey({ name: "First manager", role: "manager" }, key, at);
  await store.commit({ stamp: { by: "system", at, requestId: "start" }, changes });
  return given === undefined ? key.text : undefined;
}

function chosenKey(text: string): KeyText {
  const key = isPassphrase(text) ? { text } : readKeyText(text);
  if (key === undefined) throw new Error("the first key is neither a whole key nor a passphrase");
  return { keyId: newId(keyKind.idPrefix), ...key };
}
