import type { Steps } from "../quantity/steps.ts";
import { marksMm } from "./alignments.ts";
import { bitView, type SearchBit } from "./bit-view.ts";
import { type Refused, type Seen, whyNot } from "./not-taken.ts";
import { fitsWithin, type LookedAt, spanningRaises } from "./raises.ts";
import { bestFound, type SearchSetting, settingOf } from "./setting.ts";
import type { Target } from "./target.ts";

/** One bit in every presentation: the settings that make the profile, one each, or why there is none. */
export type OneBit = {
  readonly settings: readonly SearchSetting[];
  readonly refused: Refused | undefined;
  readonly isComplete: boolean;
};

/** A target with the marks that bits are aligned with: its own corners and centres, and those of what must go. */
export type MarkedTarget = { readonly target: Target; readonly marks: readonly number[] };

export function marked(target: Target): MarkedTarget {
  return { target, marks: marksMm(target.limit) };
}

/** Of a bit too short to stand wherever something must go. */
const NOTHING: LookedAt = { fits: [], isComplete: true };

/** Looks at one bit in every presentation of the targets. */
export function* searchOneBit(
  bit: SearchBit,
  targets: readonly MarkedTarget[],
  thicknessMm: number,
): Steps<OneBit> {
  const views: Seen[] = [];
  const settings: SearchSetting[] = [];
  let isComplete = true;
  for (const { target, marks } of targets) {
    for (const presentation of target.presentations) {
      const view = bitView(bit, presentation, target.topMm);
      const spanning = spanningRaises(view, target);
      const lookedAt = spanning === undefined ? NOTHING : yield* fitsWithin(view, target, marks, spanning);
      const found = bestFound(view, target, lookedAt.fits);
      views.push({ view, target, marks, fits: lookedAt.fits });
      if (found !== undefined) settings.push(settingOf(found, target, thicknessMm));
      isComplete &&= lookedAt.isComplete;
      yield;
    }
  }
  const refused = settings.length > 0 ? undefined : whyNot(views, thicknessMm);
  return { settings, refused, isComplete };
}
