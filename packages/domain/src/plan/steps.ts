import type { Edge } from "../cut/edge.ts";
import type { Pass } from "../cut/passes.ts";
import type { CutSetup } from "../cut/setup.ts";
import type { GuideContext } from "../guide/define.ts";
import type { FeedDirection } from "../guide/direction.ts";
import type { Guide, SetGuideName } from "../guide/registry.ts";
import type { GuideStep } from "../guide/step.ts";
import type { Mounting } from "../router/mounting.ts";
import type { Mark } from "../router/router.ts";
import type { DialSetting } from "./dial-setting.ts";
import type { PlannedPass } from "./planned-pass.ts";

/** How a cut is made, beside its passes. */
export type WorkToOrder = {
  readonly guide: Guide;
  readonly direction: FeedDirection;
  /** What the guide looks at: the cut, its setting, and how the router is held. */
  readonly guided: GuideContext;
  readonly isHeavy: boolean;
};

/** One thing to do, in the order of work. */
export type Step =
  | GuideStep
  | { readonly code: "waste-groove"; readonly widthMm: number; readonly depthMm: number }
  | { readonly code: "mount-bit" }
  | { readonly code: "set-dial"; readonly mark: Mark; readonly rpm: number }
  | { readonly code: "no-dial-to-set"; readonly rpm: number }
  | {
      readonly code: "set-height";
      readonly pass?: number;
      readonly heightMm: number;
      readonly mounting: Mounting;
    }
  | {
      readonly code: "set-fence";
      readonly pass?: number;
      readonly fenceMm: number;
      readonly guide: SetGuideName;
    }
  | {
      /** A fence in two halves: the outfeed one level with the bit's edge, the infeed one behind it by the cut. */
      readonly code: "set-fence-halves";
      readonly pass: number;
      readonly infeedMm: number;
      readonly outfeedMm: number;
    }
  | { readonly code: "run-idle" }
  | {
      readonly code: "cut-edges";
      readonly pass: number;
      readonly passKind: "rough" | "finish";
      /** Places in the request's list, from 1. */
      readonly edges: readonly number[];
      readonly grain: Edge["grain"];
      /** Alike pieces, all cut at this setting before the next. */
      readonly pieces: number;
      /** How often each is run, side by side. */
      readonly rows: number;
      readonly direction: FeedDirection;
      readonly feedMPerMin: number;
    }
  | { readonly code: "check-collet" };

export type StepCode = Step["code"];

/**
 * The order of work: the bit, the dial, then pass by pass one setting and every edge at it before the
 * next; end grain before long grain, so that the long-grain cut takes away what breaks out at the corners;
 * always against the rotation. Source: common practice.
 */
export function orderOfWork(
  { guide, direction, guided, isHeavy }: WorkToOrder,
  passes: readonly PlannedPass[],
  setting: DialSetting,
): Step[] {
  const { setup, cut, mounting } = guided;
  const steps: Step[] = setup.waste === undefined ? [] : [{ code: "waste-groove", ...setup.waste }];
  steps.push({ code: "mount-bit" });
  const { mark, rpm } = setting;
  steps.push(mark === undefined ? { code: "no-dial-to-set", rpm } : { code: "set-dial", mark, rpm });
  steps.push(...(guide.steps?.(guided) ?? []));
  // The setting that is not walked up to is made once, before the first cut.
  const runs = runsByGrain(cut.edges);
  const pieces = cut.work?.count ?? 1;
  steps.push(...fixedSettings(setup, guide, mounting));
  for (const { pass, feed } of passes) {
    steps.push(...movedSetting(setup, pass, guide, mounting));
    if (pass.number === 1) steps.push({ code: "run-idle" });
    for (const { grain, places } of runs) {
      steps.push({
        code: "cut-edges",
        pass: pass.number,
        passKind: pass.kind,
        edges: places,
        grain,
        pieces,
        rows: setup.rows,
        direction,
        feedMPerMin: feed.feedMPerMin,
      });
    }
    if (isHeavy && pass.number === 1 && passes.length > 1) steps.push({ code: "check-collet" });
  }
  return steps;
}

/** What breaks out comes first, and a cut along the grain last. */
const GRAINS: readonly Edge["grain"][] = ["end", "across", "long"];

function runsByGrain(edges: readonly Edge[]) {
  return GRAINS.flatMap((grain) => {
    const places: number[] = [];
    for (const [index, edge] of edges.entries()) if (edge.grain === grain) places.push(index + 1);
    return places.length === 0 ? [] : [{ grain, places }];
  });
}

/** What is set once, before the first cut. A groove's middle is where the bit is: its fence is set by where the groove lies. */
function fixedSettings(
  { approach, fenceMm, heightMm, sides, underlayMm = 0 }: CutSetup,
  guide: Guide,
  mounting: Mounting,
): Step[] {
  if (approach !== "height") return [{ code: "set-height", heightMm: heightMm + underlayMm, mounting }];
  return sides === 1 ? fenceSetting(guide, { fenceMm }) : [];
}

/** What is set before each pass. A cut made at once has had both. */
function movedSetting(setup: CutSetup, pass: Pass, guide: Guide, mounting: Mounting): Step[] {
  const { number, heightMm, fenceMm } = pass;
  switch (setup.approach) {
    case "height":
      return [{ code: "set-height", pass: number, heightMm, mounting }];
    case "fence":
      if (guide.name === "fence-with-offset-outfeed") return fenceHalves(setup, pass);
      return fenceSetting(guide, { pass: number, fenceMm });
    case "once":
      return setup.sides === 1 ? fenceSetting(guide, { fenceMm }) : [];
  }
}

function fenceHalves({ greatestRadiusMm }: CutSetup, { number, fenceMm: infeedMm }: Pass): Step[] {
  return [{ code: "set-fence-halves", pass: number, infeedMm, outfeedMm: greatestRadiusMm }];
}

function fenceSetting(guide: Guide, values: { readonly pass?: number; readonly fenceMm: number }): Step[] {
  return guide.isSet ? [{ code: "set-fence", ...values, guide: guide.name }] : [];
}
