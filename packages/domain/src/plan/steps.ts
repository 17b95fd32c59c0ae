import type { Edge } from "../cut/edge.ts";
import type { Cut } from "../cut/kind/registry.ts";
import type { Pass } from "../cut/passes.ts";
import type { CutSetup } from "../cut/setup.ts";
import { isInside } from "../guide/define.ts";
import type { Guide } from "../guide/registry.ts";
import type { Mounting } from "../router/mounting.ts";
import type { Mark } from "../router/router.ts";
import type { DialSetting } from "./dial-setting.ts";
import type { PlannedPass } from "./planned-pass.ts";
import { fixedSettings, movedSetting, runSettings, type SettingStep } from "./setting-steps.ts";
import type { TestPiece } from "./test-piece.ts";

/** The way the work or the router moves, so that the edge meets the wood against the rotation. */
export type FeedDirection =
  | "work-right-to-left"
  | "router-left-to-right"
  | "router-clockwise-inside"
  | "work-around-opening"
  | "with-rotation";

/** How a cut is made, beside its passes. */
export type WorkToOrder = {
  readonly setup: CutSetup;
  readonly cut: Cut;
  readonly guide: Guide;
  readonly mounting: Mounting;
  readonly isHeavy: boolean;
  readonly testPiece: TestPiece | undefined;
};

/** One thing to do, in the order of work. */
export type Step =
  | { readonly code: "waste-groove"; readonly widthMm: number; readonly depthMm: number }
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
      readonly grain: "end" | "long";
      /** How often each is run, side by side. */
      readonly rows: number;
      readonly direction: FeedDirection;
      readonly feedMPerMin: number;
    }
  | ({ readonly code: "test-piece" } & TestPiece)
  | { readonly code: "check-collet" };

export type StepCode = Step["code"];

/**
 * The order of work: the bit, the dial, then pass by pass one setting and every edge at it before the
 * next; end grain before long grain, so that the long-grain cut takes away what breaks out at the corners;
 * always against the rotation. Source: common practice.
 */
export function orderOfWork(
  { setup, cut, guide, mounting, isHeavy, testPiece }: WorkToOrder,
  passes: readonly PlannedPass[],
  setting: DialSetting,
): Step[] {
  const direction = feedDirection(cut, mounting);
  const steps: Step[] = setup.waste === undefined ? [] : [{ code: "waste-groove", ...setup.waste }];
  steps.push({ code: "mount-bit" });
  steps.push(speedStep(setting));
  // The setting that is not walked up to is made once, before the first cut.
  const places = { end: placesOf(cut.edges, "end"), long: placesOf(cut.edges, "long") };
  steps.push(...fixedSettings(setup, guide, mounting));
  for (const { pass, feed } of passes) {
    steps.push(...movedSetting(setup, pass, guide, mounting));
    if (pass.number === 1) steps.push({ code: "run-idle" });
    // Only the last setting is the cut's own. A run of its own is measured when it is set.
    const isLast = pass.number === passes.length;
    if (isLast && testPiece !== undefined) steps.push({ code: "test-piece", ...testPiece });
    for (const settings of runSettings(setup, pass, guide, mounting)) {
      steps.push(...settings);
      for (const grain of ["end", "long"] as const) {
        if (places[grain].length === 0) continue;
        steps.push({
          code: "cut-edges",
          pass: pass.number,
          passKind: pass.kind,
          edges: places[grain],
          grain,
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

/** Against the rotation in every set-up: which way that is depends on who moves, and on which side of the wood. */
function feedDirection(cut: Cut, mounting: Mounting): FeedDirection {
  if (cut.feedDirection === "with-rotation") return "with-rotation";
  if (mounting === "table") return isInside(cut) ? "work-around-opening" : "work-right-to-left";
  return isInside(cut) ? "router-clockwise-inside" : "router-left-to-right";
}

function placesOf(edges: readonly Edge[], grain: Edge["grain"]): number[] {
  const places: number[] = [];
  for (const [index, edge] of edges.entries()) if (edge.grain === grain) places.push(index + 1);
  return places;
}
