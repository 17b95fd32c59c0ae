import {
  bitSizes,
  clearanceOf,
  hasColletFor,
  type Plan,
  type PlanInput,
  type WasteBit,
  type WasteGroove,
} from "@rimwise/domain";
import { bareBit } from "../bits/bare.ts";
import { bits } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { Question } from "../store/query.ts";

/** So many bits are looked at for one that is long enough and that the router takes. */
const MOST_LOOKED_AT = 50;

/**
 * The plan with the widest bit of the rack named that takes the wood out of a groove first, where one is wanted. The rack is no part of a
 * plan's input: another rack names another bit and changes nothing else.
 */
export function* namingWasteBit(plan: Plan, input: PlanInput): Question<Plan> {
  const groove = wantedFirst(plan);
  if (groove === undefined) return plan;
  const narrower = yield* bits.wastingGroove(groove.widthMm, MOST_LOOKED_AT);
  const record = narrower.find((each) => serves(each, groove, input));
  if (record === undefined) return plan;
  const { id, name } = record;
  const diameterMm = sizeMm(record, "diameter");
  return withWasteBit(plan, { id, name, diameterMm });
}

function serves(
  record: BitRecord,
  { depthMm }: WasteGroove,
  { router, mounting, policy }: PlanInput,
): boolean {
  const bit = bareBit(record);
  if (sizeMm(record, "length") < depthMm || !hasColletFor(bit.shankDiameterMm, router)) return false;
  return mounting === "table" || clearanceOf(bit, policy) !== "table-only";
}

function sizeMm(record: BitRecord, role: "diameter" | "length"): number {
  return bitSizes(bareBit(record)).find((size) => size.role === role)?.mm ?? 0;
}

/** The groove that a plan wants cut first with a straight bit; undefined if it wants none. */
function wantedFirst({ findings }: Plan): WasteGroove | undefined {
  for (const finding of findings) if (finding.code === "waste-first") return finding;
  return undefined;
}

function withWasteBit(plan: Plan, bit: WasteBit): Plan {
  return {
    ...plan,
    findings: plan.findings.map((finding) =>
      finding.code === "waste-first" ? { ...finding, bit } : finding,
    ),
    steps: plan.steps.map((step) => (step.code === "waste-groove" ? { ...step, bit } : step)),
  };
}
