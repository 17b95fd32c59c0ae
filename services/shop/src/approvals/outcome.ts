import { hash } from "node:crypto";
import {
  DomainError,
  describeFault,
  describeFinding,
  ENGINE_VERSION,
  makePlan,
  type Plan,
  type PlanInput,
  type PolicyLayer,
  showIn,
  type Wood,
} from "@rimwise/domain";
import { canonicalText } from "../http/canonical.ts";
import { inputOf, type KeptBit, type KeptRouter } from "../plans/gather.ts";
import { dialMark, passSetting, presentPlan, rpm } from "../plans/present.ts";
import type { PlanRequest } from "../plans/schema.ts";
import { sealOf } from "../plans/seal.ts";
import type { GroundsRecord, Setting } from "./approval.ts";

/** What a setting is made from: a request, and what its ids stand for at some moment. */
export type Ground = {
  readonly request: PlanRequest;
  readonly bit: KeptBit | undefined;
  readonly router: KeptRouter | undefined;
  /** What the shop and the course tighten. */
  readonly layers: readonly PolicyLayer[];
  readonly woods: readonly Wood[];
};

type Planned = { readonly input: PlanInput; readonly plan: Plan };

/** What a setting comes to: one plan a wood, or why nothing may be run. */
export type Outcome =
  | { readonly kind: "may-run"; readonly resultDigest: string; readonly planned: readonly Planned[] }
  | { readonly kind: "may-not-run"; readonly because: string };

/** The setting as it comes out on a ground. Pure: the same ground gives the same digest. */
export function outcomeOn(ground: Ground): Outcome {
  const outOfUse = ground.bit?.record.retirement ?? ground.bit?.record.hold;
  if (outOfUse !== undefined)
    return { kind: "may-not-run", because: `The bit is out of use: ${outOfUse.because}` };
  const { mountings } = ground.router?.record ?? {};
  if (mountings !== undefined && !mountings.includes(ground.request.mounting)) {
    return { kind: "may-not-run", because: "The router cannot be used that way any more." };
  }
  const planned: Planned[] = [];
  for (const wood of ground.woods) {
    const input = inputOf({ ...ground.request, woodId: wood.id }, { ...ground, wood });
    if (input === undefined)
      return { kind: "may-not-run", because: "The bit or the router is no longer kept." };
    const plan = planOrReason(input);
    if (typeof plan === "string") return { kind: "may-not-run", because: plan };
    planned.push({ input, plan });
  }
  return { kind: "may-run", resultDigest: digestOf(planned), planned };
}

/** What a setting comes to, as short as a person compares it. */
export function settingOf(planned: readonly Planned[]): Setting {
  const [first] = planned;
  if (first === undefined) throw new Error("a setting is for at least one wood");
  const { plan } = first;
  const { speed, mounting } = plan;
  return {
    verdict: plan.verdict,
    dialMark: speed.setting?.mark === undefined ? null : dialMark(speed.setting.mark),
    rpm: speed.setting === undefined ? null : rpm(speed.setting.rpm),
    ceilingRpm: rpm(speed.ceilingRpm),
    bindingLimit: speed.bindingLimit,
    clearance: mounting.allowed,
    passes: planned.flatMap((each) =>
      each.plan.passes.map((pass) => ({ woodId: each.input.wood.id, ...passSetting(pass) })),
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

function answerOf({ input, plan }: Planned) {
  return presentPlan(plan, input.wood, sealOf(input), undefined);
}

function digestOf(planned: readonly Planned[]): string {
  return sha256({
    engineVersion: ENGINE_VERSION,
    results: planned.map(({ input, plan }) => [input.wood.id, plan]),
  });
}

function sha256(value: unknown): string {
  return `sha256:${hash("sha256", canonicalText(value))}`;
}
