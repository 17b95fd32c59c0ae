import { climbsOf } from "../cut/climbs.ts";
import type { Finding } from "./findings.ts";
import type { PlanInput } from "./plan.ts";

/** With the rotation the bit pulls: only by hand, only light, and only if the shop allows it. Source: common practice. */
export function climbFindings({ cut, mounting, policy }: PlanInput): Finding[] {
  if (climbsOf(cut) === undefined) return [];
  const { climbBiteMaxMm: biteMaxMm } = policy;
  if (mounting === "table") return [{ code: "climb-not-allowed", severity: "refuse", reason: "table" }];
  if (biteMaxMm === 0) return [{ code: "climb-not-allowed", severity: "refuse", reason: "policy" }];
  return [{ code: "light-climb-cut", severity: "care", biteMaxMm }];
}
