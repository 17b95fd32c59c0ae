import { entersOwnHole } from "../bit/plunge.ts";
import { isUndercut } from "../bit/shape.ts";
import type { BitSolid } from "../bit/solid.ts";
import type { ConstraintContext } from "../cut/constraints.ts";
import { mostLeftMm } from "../cut/most-left.ts";
import { canBeCut, findPasses, type Pass } from "../cut/passes.ts";
import type { CutSetup } from "../cut/setup.ts";
import type { Guidance } from "../guide/choose.ts";
import { type Ceiling, limitsBroken } from "../limit/ceiling.ts";
import { trialVerdict } from "../limit/tested.ts";
import { hasColletFor } from "../router/collet.ts";
import type { DialSpeed } from "../router/dial.ts";
import type { MountingFinding } from "../router/mounting.ts";
import { climbFindings } from "./climb.ts";
import type { Finding, Severity } from "./findings.ts";
import { historyFindings } from "./past-use.ts";
import type { PlanInput, Verdict } from "./plan.ts";
import { spiralFindings } from "./spiral-findings.ts";

/** A plan before it is judged: everything but the feeds, which follow from the verdict. */
export type UnjudgedPlan = {
  readonly input: PlanInput;
  readonly solid: BitSolid;
  readonly setup: CutSetup;
  /** What the passes were looked for with. */
  readonly load: ConstraintContext;
  readonly ceiling: Ceiling;
  readonly speeds: readonly DialSpeed[];
  /** The fastest setting that holds. */
  readonly fit: DialSpeed | undefined;
  readonly mounting: MountingFinding;
  readonly guidance: Guidance;
};

const WEIGHTIEST_FIRST: readonly Severity[] = ["refuse", "care", "note"];

/** What comes of a plan before a feed is chosen: its passes, if it may run, and everything that stops or qualifies it. */
export function judge(plan: UnjudgedPlan): {
  readonly findings: Finding[];
  readonly passes: readonly Pass[] | undefined;
} {
  const before = [
    ...mountingFindings(plan),
    ...colletFindings(plan),
    ...speedFindings(plan),
    ...plan.guidance.findings,
    ...climbFindings(plan.input),
  ];
  // Passes that nobody may make are not looked for, only whether there are any.
  const isRefused = verdictOf(before) === "do-not-run";
  const passes = isRefused ? undefined : findPasses(plan.load);
  const isCuttable = isRefused ? canBeCut(plan.load) : passes !== undefined;
  const findings = [
    ...before,
    ...(isCuttable ? [] : [tooHeavy(plan)]),
    ...trialFindings(plan),
    ...historyFindings(plan.input.history),
    ...cutNotes(plan),
    ...spiralFindings(plan.input, plan.setup, passes),
  ];
  return { findings: weightiestFirst(findings), passes };
}

function weightiestFirst(findings: Finding[]): Finding[] {
  return findings.sort((a, b) => WEIGHTIEST_FIRST.indexOf(a.severity) - WEIGHTIEST_FIRST.indexOf(b.severity));
}

/** The verdict that a list of findings comes to. */
export function verdictOf(findings: readonly Finding[]): Verdict {
  if (findings.some(({ severity }) => severity === "refuse")) return "do-not-run";
  return findings.some(({ severity }) => severity === "care") ? "run-with-care" : "run";
}

function mountingFindings({ input, mounting, guidance: { guide } }: UnjudgedPlan): Finding[] {
  const { allowed, bySize, reasons } = mounting;
  if (input.mounting === "table") {
    if (bySize === "handheld") return [];
    // In a table a bit of the middle size is ordinary: care is kept for what is dangerous there too.
    return [
      { code: "large-bit", severity: isDangerousInTable(reasons) ? "care" : "note", clearance: bySize },
    ];
  }
  switch (allowed) {
    case "handheld":
      return [];
    case "handheld-with-care":
      return [{ code: "handheld-with-care", severity: "care" }];
    case "table-only": {
      // Rails carry the router and keep it from tilting: what is left to hold is a bit no wider than a hand may run.
      const isNarrow = reasons.every(({ code, clearance }) =>
        code === "diameter" || code === "form" ? clearance !== "table-only" : true,
      );
      return guide?.name === "rails" && isNarrow
        ? [{ code: "carried-on-rails", severity: "care" }]
        : [{ code: "table-only", severity: "refuse" }];
    }
  }
}

/** A table holds what is heavy and what resists tilting; how wide a bit is and what it stores in its spin are as dangerous there. */
function isDangerousInTable(reasons: MountingFinding["reasons"]): boolean {
  return reasons.some(
    ({ code, clearance }) => (code === "diameter" || code === "stored-energy") && clearance === "table-only",
  );
}

function colletFindings({ input: { bit, router } }: UnjudgedPlan): Finding[] {
  const { shankDiameterMm } = bit;
  const { colletDiametersMm = [] } = router;
  if (hasColletFor(shankDiameterMm, router)) return [];
  return [{ code: "no-collet-fits", severity: "refuse", shankDiameterMm, colletDiametersMm }];
}

function speedFindings({ fit, speeds, ceiling: { limits } }: UnjudgedPlan): Finding[] {
  const [slowest] = speeds;
  if (fit !== undefined || slowest === undefined) return [];
  const broken = limitsBroken(limits, slowest);
  return [
    {
      code: "router-too-fast",
      severity: "refuse",
      slowestRpm: slowest.rpm,
      slowestRpmHighest: slowest.rpmHighest,
      breaks: broken.map(({ name }) => name),
      limitRpm: Math.min(...broken.map(({ rpm }) => rpm)),
    },
  ];
}

function tooHeavy({ setup, load }: UnjudgedPlan): Finding {
  const code = setup.approach === "once" ? "too-heavy-at-once" : "too-many-passes";
  return { code, severity: "refuse", leaveMm: mostLeftMm(load) };
}

function trialFindings({ input: { trials = [] }, fit }: UnjudgedPlan): Finding[] {
  const findings: Finding[] = [];
  const { isContradicted, shookRpm } = trialVerdict(trials);
  if (isContradicted && shookRpm !== undefined) {
    findings.push({ code: "trials-contradict", severity: "care", shookRpm });
  }
  const elsewhere = trials.filter(
    ({ isSameRouter: sameRouter, outcome }) => !sameRouter && outcome === "shook",
  );
  const slowestRpm = Math.min(...elsewhere.map(({ rpm }) => rpm));
  if (fit !== undefined && slowestRpm <= fit.rpmHighest) {
    findings.push({ code: "shook-in-other-router", severity: "care", shookRpm: slowestRpm });
  }
  return findings;
}

function cutNotes({ input: { bit, cut, wood }, solid, setup }: UnjudgedPlan): Finding[] {
  const findings: Finding[] = [];
  if (isUndercut(solid.outline)) {
    const slot = entersOwnHole(bit) ? "own-hole" : "slot";
    findings.push({ code: "feed-only", severity: "note", way: setup.sides === 2 ? slot : "edge" });
  }
  if (setup.waste !== undefined) findings.push({ code: "waste-first", severity: "note", ...setup.waste });
  const endGrainEdges = cut.edges.filter(({ grain }) => grain === "end").length;
  // A long-grain cut made afterwards takes the broken corners away; without one they stay.
  if (endGrainEdges === cut.edges.length && wood.hasGrain) {
    findings.push({ code: "tear-out-risk", severity: "note", endGrainEdges });
  }
  if (wood.isMeltable) findings.push({ code: "melts", severity: "note" });
  return findings;
}
