import { hash } from "node:crypto";
import { ENGINE_VERSION, type PlanInput } from "@rimwise/domain";
import { canonicalText } from "../http/canonical.ts";

/** What a plan rests on, as a fingerprint: the same inputs and engine give the same one. */
export type Seal = { readonly digest: string; readonly engineVersion: string };

/** SHA-256 of the canonical inputs (RFC 8785) and the engine's version. Names and notes are no part of them. */
export function sealOf(input: PlanInput): Seal {
  const text = canonicalText({ engineVersion: ENGINE_VERSION, input });
  return {
    digest: `sha256:${hash("sha256", text)}`,
    engineVersion: ENGINE_VERSION,
  };
}
