import { hash } from "node:crypto";
import { ENGINE_VERSION, type PlanInput } from "@rimwise/domain";
import { canonicalText } from "../store/canonical.ts";

/** What a plan rests on, as a fingerprint: the same inputs and engine give the same one. */
export type Seal = { readonly digest: string; readonly engineVersion: string };

/** The texts of woods and policies, which many plans share: writing one takes as long as all the rest of an input. */
const shared = new WeakMap<object, string>();

/** Everything before the parts of an input. */
const BEFORE_PARTS = `{"engineVersion":${canonicalText(ENGINE_VERSION)},"input":{`;

/** SHA-256 of the canonical inputs (RFC 8785) and the engine's version. Names and notes are no part of them. */
export function sealOf(input: PlanInput): Seal {
  const parts = Object.entries<PlanInput[keyof PlanInput]>(input)
    .filter(([, part]) => part !== undefined)
    .sort(([one], [other]) => (one < other ? -1 : 1));
  let text = BEFORE_PARTS;
  for (const [name, part] of parts) {
    const isShared = part === input.policy || part === input.wood;
    const written = isShared ? sharedText(part) : canonicalText(part);
    text += `${text === BEFORE_PARTS ? "" : ","}"${name}":${written}`;
  }
  return { digest: `sha256:${hash("sha256", `${text}}}`)}`, engineVersion: ENGINE_VERSION };
}

function sharedText(part: object): string {
  const known = shared.get(part);
  if (known !== undefined) return known;
  const text = canonicalText(part);
  shared.set(part, text);
  return text;
}
