import { hash } from "node:crypto";
import { ENGINE_VERSION, type PlanInput } from "@rimwise/domain";
import { canonicalText } from "../store/canonical.ts";

/** What a plan rests on, as a fingerprint: the same inputs and engine give the same one. */
export type Seal = { readonly digest: string; readonly engineVersion: string };

/** The texts of woods and policies, which many plans share: writing one takes as long as all the rest of an input. */
const shared = new WeakMap<object, string>();

/** SHA-256 of the canonical inputs (RFC 8785) and the engine's version. Names and notes are no part of them. */
export function sealOf(input: PlanInput): Seal {
  const members = Object.entries<PlanInput[keyof PlanInput]>(input)
    .filter(([, part]) => part !== undefined)
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([name, part]) => `${canonicalText(name)}:${textOf(part)}`);
  const text = `{"engineVersion":${canonicalText(ENGINE_VERSION)},"input":{${members.join(",")}}}`;
  return { digest: `sha256:${hash("sha256", text)}`, engineVersion: ENGINE_VERSION };

  function textOf(part: PlanInput[keyof PlanInput]): string {
    return part === input.policy || part === input.wood ? sharedText(part) : canonicalText(part);
  }
}

function sharedText(part: object): string {
  const text = shared.get(part) ?? canonicalText(part);
  shared.set(part, text);
  return text;
}
