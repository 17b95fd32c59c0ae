import type { Edge } from "../cut/edge.ts";
import type { Pass } from "../cut/passes.ts";
import type { GuideContext } from "../guide/define.ts";
import type { FeedDirection } from "../guide/direction.ts";
import type { Guide } from "../guide/registry.ts";
import type { GuideStep } from "../guide/step.ts";
import type { Mark } from "../router/router.ts";
import type { DialSetting } from "./dial-setting.ts";
import type { PlannedPass } from "./planned-pass.ts";
import { fixedSettings, movedSetting, runSettings, type SettingStep } from "./setting-steps.ts";
import type { TestPiece } from "./test-piece.ts";
import type { WasteGroove } from "./waste-groove.ts";

/** How a cut is made, beside its passes. */
export type WorkToOrder = {
  readonly guide: Guide;
  readonly direction: FeedDirection;
  /** What the guide looks at: the cut, its setting, and how the router is held. */
  readonly guided: GuideContext;
  readonly isHeavy: boolean;
  readonly testPiece: TestPiece | undefined;
};

/** One thing to do, in the order of work. */
export type Step =
  | GuideStep
  | ({ readonly code: "waste-groove" } & WasteGroove)
  | { readonly code: "mount-bit" }
  | { readonly code: "set-dial"; readonly mark: Mark; readonly rpm: number }
  | { readonly code: "no-dial-to-set"; readonly rpm: number }
  | { readonly code: "set-slowest"; readonly rpm: number }
  | { readonly code: "set-fastest"; readonly rpm: number }
  | SettingStep
  | { readonly code: "run-idle" }
  | {
      readonly code: "cut-edges";
      readonly pass: number;
      readonly passKind: Pass["kind"];
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
  | ({ readonly code: "test-piece"; readonly runs: number } & TestPiece)
  | { readonly code: "check-collet" };

export type StepCode = Step["code"];

/**
 * The order of work: the bit, the dial, then pass by pass one setting and every edge at it before the
 * next; end grain before long grain, so that the long-grain cut takes away what breaks out at the corners;
 * always against the rotation. Source: common practice.
 */
export function orderOfWork(
  { guide, direction, guided, isHeavy, testPiece }: WorkToOrder,
  passes: readonly PlannedPass[],
  setting: DialSetting,
): Step[] {
  const { setup, cut, mounting } = guided;
  const steps: Step[] = setup.waste === undefined ? [] : [{ code: "waste-groove", ...setup.waste }];
  steps.push({ code: "mount-bit" });
  steps.push(speedStep(setting));
  steps.push(...(guide.steps?.(guided) ?? []));
  // The setting that is not walked up to is made once, before the first cut.
  const byGrain = edgesByGrain(cut.edges);
  const pieces = cut.work?.count ?? 1;
  steps.push(...fixedSettings(setup, guide, mounting));
  for (const { pass, feed } of passes) {
    steps.push(...movedSetting(setup, pass, guide, mounting));
    if (pass.number === 1) steps.push({ code: "run-idle" });
    // Only the last setting is the cut's own. A run of its own is measured when it is set.
    const isLast = pass.number === passes.length;
    if (isLast && testPiece !== undefined)
      steps.push({ code: "test-piece", runs: setup.runs === undefined ? 1 : setup.rows, ...testPiece });
    for (const settings of runSettings(setup, pass, guide, mounting)) {
      steps.push(...settings);
      for (const { grain, places } of byGrain) {
        steps.push({
          code: "cut-edges",
          pass: pass.number,
          passKind: pass.kind,
          edges: places,
          grain,
          pieces,
          // A run that is set by itself is one.
          rows: settings.length > 0 ? 1 : setup.rows,
          direction: pass.kind === "back-rout" ? "with-rotation" : direction,
          feedMPerMin: feed.feedMPerMin,
        });
      }
    }
    if (isHeavy && pass.number === 1 && passes.length > 1) steps.push({ code: "check-collet" });
  }
  return steps;
}

function speedStep({ mark, rpm, basis, nextFaster }: DialSetting): Step {
  if (mark !== undefined) return { code: "set-dial", mark, rpm };
  if (basis !== "no-dial") return { code: "no-dial-to-set", rpm };
  return { code: nextFaster === undefined ? "set-fastest" : "set-slowest", rpm };
}

/** What breaks out comes first, and a cut along the grain last. */
const GRAINS: readonly Edge["grain"][] = ["end", "across", "long"];

function edgesByGrain(edges: readonly Edge[]) {
  return GRAINS.flatMap((grain) => {
    const places: number[] = [];
    for (const [index, edge] of edges.entries()) if (edge.grain === grain) places.push(index + 1);
    return places.length === 0 ? [] : [{ grain, places }];
  });
}
