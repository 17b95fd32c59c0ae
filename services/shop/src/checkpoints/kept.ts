import { appendFileSync, existsSync, readFileSync } from "node:fs";
import { events } from "../events/reads.ts";
import type { App } from "../http/app-type.ts";
import type { Signer } from "../signing/signer.ts";
import { lookAtRings } from "../store/look-at-rings.ts";
import { writePrivateFile } from "../store/private-file.ts";
import type { Store } from "../store/store.ts";
import { checkpoints } from "./reads.ts";
import { STATEMENT_TYPE } from "./schema.ts";

/** Where the newest checkpoint is kept beside the signing keys, and where every one is sent, if anywhere. */
export type KeptPlaces = { readonly signingKeys: string; readonly sentTo: string | undefined };

/** What a kept checkpoint states, or that it is not one of this service's. */
export type KeptCheckpoint =
  | { readonly kind: "stated"; readonly sequence: number; readonly hash: string }
  | { readonly kind: "not-signed" }
  | { readonly kind: "key-unknown" };

type Parts = Pick<Store, "answer" | "bell"> & KeptPlaces & { readonly verify: Signer["verify"] };

const IN_MEMORY = ":memory:";

/** The file that the newest checkpoint is kept in; undefined when the signing keys are kept nowhere. */
export function keptCheckpointFile(signingKeys: string): string | undefined {
  return signingKeys === IN_MEMORY ? undefined : `${signingKeys}.checkpoint`;
}

/** The checkpoint that is kept beside the signing keys; undefined when there is none. */
export async function keptCheckpoint(
  signingKeys: string,
  verify: Signer["verify"],
): Promise<KeptCheckpoint | undefined> {
  const file = keptCheckpointFile(signingKeys);
  if (file === undefined || !existsSync(file)) return undefined;
  const found = await verify(readFileSync(file, "utf8").trim());
  if (found.kind === "key-unknown") return { kind: "key-unknown" };
  // Whoever has the key could have made it: it shows nothing.
  if (found.kind === "key-compromised") return undefined;
  if (found.kind !== "signed" || found.typ !== STATEMENT_TYPE) return { kind: "not-signed" };
  const sequence: unknown = Reflect.get(Object(found.payload), "sequence");
  const hash: unknown = Reflect.get(Object(found.payload), "hash");
  if (typeof sequence !== "number" || typeof hash !== "string") return { kind: "not-signed" };
  return { kind: "stated", sequence, hash };
}

/**
 * Keeps the newest checkpoint beside the signing keys soon after it was made, and sends every one on that was made since. One that the
 * history no longer holds is never written over: it is what shows that the end was cut off.
 */
export function keepNewestCheckpoint(app: App, { answer, bell, signingKeys, sentTo, verify }: Parts): void {
  const file = keptCheckpointFile(signingKeys);
  let known: number | undefined;

  async function keep(): Promise<void> {
    const made = await answer(
      known === undefined ? checkpoints.newestStatement() : checkpoints.statementsAfter(known),
    );
    const newest = made.at(-1);
    if (newest === undefined) {
      known ??= 0;
      return;
    }
    if (file !== undefined && !(await mayReplace())) return;
    if (file !== undefined) writePrivateFile(file, `${newest.statement}\n`);
    if (sentTo !== undefined) appendFileSync(sentTo, made.map(({ statement }) => `${statement}\n`).join(""));
    known = newest.sequence;
  }

  async function mayReplace(): Promise<boolean> {
    const kept = await keptCheckpoint(signingKeys, verify);
    if (kept?.kind !== "stated") return kept === undefined;
    const [event] = await answer(events.kept(kept.sequence, 1));
    if (event?.sequence === kept.sequence && event.hash === kept.hash) return true;
    app.log.error(kept, "the history does not hold the checkpoint that is kept beside the signing keys");
    return false;
  }

  const look = () =>
    keep().catch((error: unknown) => {
      app.log.error({ err: error }, "the newest checkpoint could not be kept");
    });
  const end = lookAtRings(bell, look);
  app.addHook("preClose", async () => {
    if (await end()) await look();
  });
}
