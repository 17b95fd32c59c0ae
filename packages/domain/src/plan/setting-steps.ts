import type { Pass } from "../cut/passes.ts";
import type { CutSetup } from "../cut/setup.ts";
import type { Guide } from "../guide/registry.ts";
import type { Mounting } from "../router/mounting.ts";
import type { Step } from "./steps.ts";

/** What is set once, before the first cut. A groove's middle is where the bit is: its fence is set by where the groove lies. */
export function fixedSettings(
  { approach, fenceMm, heightMm, sides, runs }: CutSetup,
  guide: Guide,
  mounting: Mounting,
): Step[] {
  if (approach !== "height") return [{ code: "set-height", heightMm, mounting }];
  // Of runs side by side each has a fence of its own.
  return sides === 1 && runs === undefined ? fenceSetting(guide, { fenceMm }) : [];
}

/** What is set before each pass. A cut made at once has had both. */
export function movedSetting(setup: CutSetup, pass: Pass, guide: Guide, mounting: Mounting): Step[] {
  const { number, heightMm, fenceMm } = pass;
  switch (setup.approach) {
    case "height":
      return [{ code: "set-height", pass: number, heightMm, mounting }];
    case "fence":
      return fenceSetting(guide, { pass: number, fenceMm });
    case "once":
      return setup.sides === 1 ? fenceSetting(guide, { fenceMm }) : [];
  }
}

/** What is set before each run of a pass: nothing, for the one run of a cut that is no wider than the bit. */
export function runSettings(
  { runs }: CutSetup,
  { number: pass }: Pass,
  guide: Guide,
  mounting: Mounting,
): Step[][] {
  if (runs === undefined) return [[]];
  if (runs.by === "fence") {
    return runs.fencesMm.map((fenceMm, index) => fenceSetting(guide, { pass, run: index + 1, fenceMm }));
  }
  return runs.overMm.map((overMm, index) => [{ code: "move-over", pass, run: index + 1, overMm, mounting }]);
}

function fenceSetting(
  guide: Guide,
  values: { readonly pass?: number; readonly run?: number; readonly fenceMm: number },
): Step[] {
  return guide.isSet ? [{ code: "set-fence", ...values, guide: guide.name }] : [];
}
