import { hash } from "node:crypto";
import {
  DomainError,
  describeFault,
  describeFinding,
  makePlan,
  type Plan,
  type PlanInput,
  showIn,
  type Wood,
} from "@rimwise/domain";
import type { KnownBit, KnownRouter } from "../learned/learned.ts";
import type { PlanAnswer } from "../plans/answer-schema.ts";
import { inputOf } from "../plans/gather.ts";
import { passFigures, presentPlan } from "../plans/present.ts";
import { dialMark, rpm } from "../plans/rounding.ts";
import type { PlanRequest } from "../plans/schema.ts";
import { sealOf } from "../plans/seal.ts";
import type { Layers } from "../policy/in-force.ts";
import { canonicalText } from "../store/canonical.ts";
import type { ApprovedSetting, GroundsRecord } from "./record-schema.ts";

/** What an approval is made from: a request, and what its ids stand for at some moment. */
export type Grounds = {
  readonly request: PlanRequest;
  readonly bit: KnownBit | undefined;
  readonly router: KnownRouter | undefined;
  /** What the shop and the course tighten. */
  readonly layers: Layers;
  readonly woods: readonly Wood[];
};

type Planned = { readonly input: PlanInput; readonly plan: Plan };

/** What a setting comes to: one plan a wood, or why nothing may be run. */
export type ApprovalResult =
  | { readonly kind: "may-run"; readonly resultDigest: string; readonly planned: readonly Planned[] }
  | { readonly kind: "may-not-run"; readonly reason: string };

/** The setting that follows from its grounds. Pure: the same grounds give the same digest. */
export function resultOn(grounds: Grounds): ApprovalResult {
  const outOfUse = grounds.bit?.record.retirement ?? grounds.bit?.record.hold;
  if (outOfUse !== undefined)
    return { kind: "may-not-run", reason: `The bit is out of use: ${outOfUse.reason}` };
  const { mountings } = grounds.router?.record ?? {};
  if (mountings !== undefined && !mountings.includes(grounds.request.mounting)) {
    return { kind: "may-not-run", reason: "The router cannot be used that way any more." };
  }
  const planned: Planned[] = [];
  for (const wood of grounds.woods) {
    const input = inputOf({ ...grounds.request, woodId: wood.id }, { ...grounds, wood });
    if (input === undefined)
      return { kind: "may-not-run", reason: "The bit or the router is no longer kept." };
    const plan = planOrReason(input);
    if (typeof plan === "string") return { kind: "may-not-run", reason: plan };
    planned.push({ input, plan });
  }
  return { kind: "may-run", resultDigest: digestOf(planned), planned };
}

/** What a setting comes to, as short as a person compares it. */
export function settingOf(planned: readonly Planned[]): ApprovedSetting {
  const [first] = planned;
  if (first === undefined) throw new Error("a setting is for at least one wood");
  const { plan } = first;
  const { speed, mounting } = plan;
  return {
    verdict: plan.verdict,
    mark: speed.setting?.mark === undefined ? null : dialMark(speed.setting.mark),
    rpm: speed.setting === undefined ? null : rpm(speed.setting.rpm),
    ceilingRpm: rpm(speed.ceilingRpm),
    bindingLimit: speed.bindingLimit,
    clearance: mounting.allowed,
    passes: planned.flatMap((each) =>
      each.plan.passes.map((pass) => ({ woodId: each.input.wood.id, ...passFigures(pass) })),
    ),
    findings: [...new Set(planned.flatMap((each) => each.plan.findings.map(({ code }) => code)))].sort(),
  };
}

/** The full copy that an approval keeps. */
export function resultsOf(planned: readonly Planned[]): GroundsRecord["results"] {
  return planned.map((each) => ({ input: each.input, plan: answerOf(each) }));
}

/** Fingerprint of everything that went in: what was asked for, and what it stood for. */
export function inputDigestOf(request: PlanRequest, planned: readonly Planned[]): string {
  return sha256({ request, inputs: planned.map(({ input }) => sealOf(input).digest) });
}

function planOrReason(input: PlanInput): Plan | string {
  try {
    const plan = makePlan(input);
    if (plan.verdict !== "do-not-run") return plan;
    const [first] = plan.findings;
    return first === undefined ? "It must not be run." : describeFinding(first, showIn("both"));
  } catch (error) {
    const [fault] = error instanceof DomainError ? error.faults : [];
    if (fault === undefined) throw error;
    return describeFault(fault).message;
  }
}

/** Whether plans say the same as kept ones, whichever version of the computation made them and whatever it read. */
export function sayTheSame(planned: readonly Planned[], kept: GroundsRecord["results"]): boolean {
  const said = (plans: readonly PlanAnswer[]) =>
    canonicalText(plans.map(({ digest: _read, engineVersion: _by, ...plan }) => plan));
  return said(planned.map(answerOf)) === said(kept.map(({ plan }) => plan));
}

function answerOf({ input, plan }: Planned) {
  return presentPlan(plan, input.wood, sealOf(input), undefined);
}

/** Fingerprint of what decides: another verdict, mark, speed, pass, precaution or clearance is another result; a remark is not. */
function digestOf(planned: readonly Planned[]): string {
  return sha256(
    planned.map(({ input, plan: { verdict, mounting, speed, passes, precautions } }) => ({
      woodId: input.wood.id,
      verdict,
      clearance: mounting.allowed,
      mark: speed.setting?.mark === undefined ? null : dialMark(speed.setting.mark),
      rpm: speed.setting === undefined ? null : rpm(speed.setting.rpm),
      ceilingRpm: rpm(speed.ceilingRpm),
      passes: passes.map(passFigures),
      // Which ones: that a bit lost some grams is no other precaution.
      precautions: precautions.map(({ code }) => code),
    })),
  );
}

function sha256(value: unknown): string {
  return `sha256:${hash("sha256", canonicalText(value))}`;
}
