import { marksMm } from "./alignments.ts";
import { bitView, type SearchBit } from "./bit-view.ts";
import { type NotTaken, whyNot } from "./not-taken.ts";
import { fitsWithin, spanningRaises } from "./raises.ts";
import { bestFound, type SearchSetting, settingOf } from "./setting.ts";
import type { Target } from "./target.ts";

/** One bit in every presentation: the settings that make the profile, one each, or why there is none. */
export type OneBit = {
  readonly settings: readonly SearchSetting[];
  readonly notTaken: NotTaken | undefined;
  readonly isComplete: boolean;
};

/** A target with the marks that bits are aligned with: its own corners and centres, and those of what must go. */
export type MarkedTarget = { readonly target: Target; readonly marks: readonly number[] };

export function marked(target: Target): MarkedTarget {
  return { target, marks: marksMm(target.limit) };
}

/** Looks at one bit in every presentation of the targets. */
export function searchOneBit(bit: SearchBit, targets: readonly MarkedTarget[], thicknessMm: number): OneBit {
  const settings: SearchSetting[] = [];
  let isComplete = true;
  const views = targets.flatMap(({ target, marks }) =>
    target.presentations.map((presentation) => ({
      view: bitView(bit, presentation, target.topMm),
      target,
      marks,
    })),
  );
  for (const { view, target, marks } of views) {
    const spanning = spanningRaises(view, target);
    if (spanning === undefined) continue;
    const lookedAt = fitsWithin(view, target, marks, spanning);
    isComplete &&= lookedAt.isComplete;
    const found = bestFound(view, target, lookedAt.fits);
    if (found !== undefined) settings.push(settingOf(found, target, thicknessMm));
  }
  const notTaken = settings.length > 0 ? undefined : whyNot(views, thicknessMm);
  return { settings, notTaken, isComplete };
}
