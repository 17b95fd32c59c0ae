import type { Pass } from "../cut/passes.ts";
import { type CutSetup, standingOut } from "../cut/setup.ts";
import type { Guide, SetGuideName } from "../guide/registry.ts";
import type { Mounting } from "../router/mounting.ts";

/** One setting of the machine, in the order of work. */
export type SettingStep =
  | {
      readonly code: "set-height";
      readonly pass?: number;
      readonly heightMm: number;
      readonly cutterMm: number;
      readonly mounting: Mounting;
    }
  | {
      /** A carriage on rails stands clear of the work: the depth counts from where the bit touches it. */
      readonly code: "set-height-over-work";
      readonly pass: number;
      readonly depthMm: number;
    }
  | {
      readonly code: "set-fence";
      readonly pass?: number;
      /** One of several side by side, from 1. */
      readonly run?: number;
      readonly fenceMm: number;
      /** How far the bit then stands out past the fence: what can be measured. Absent if it changes with the height, or a bearing says it. */
      readonly standsOutMm?: number;
      readonly guide: SetGuideName;
    }
  | {
      /** Where a groove lies is the work's own: the fence is measured to the groove's middle, or to the bit's near edge. */
      readonly code: "set-fence-to-groove";
      readonly nearEdgeMm: number;
      readonly guide: SetGuideName;
    }
  | {
      /** A fence in two halves: the outfeed one level with the bit's edge, the infeed one behind it by the cut. */
      readonly code: "set-fence-halves";
      readonly pass: number;
      readonly infeedMm: number;
      readonly outfeedMm: number;
    }
  | {
      readonly code: "move-over";
      readonly pass: number;
      readonly run: number;
      /** From where the first run lies. */
      readonly overMm: number;
      readonly mounting: Mounting;
    };

/** What is set once, before the first cut. Of runs side by side each has a fence of its own. */
export function fixedSettings(setup: CutSetup, guide: Guide, mounting: Mounting): SettingStep[] {
  const { approach, fenceMm, heightMm, sides, runs } = setup;
  const toGroove = sides === 2 && runs === undefined ? grooveSetting(guide, setup) : [];
  if (approach !== "height")
    return [{ code: "set-height", ...standingOut(setup, heightMm), mounting }, ...toGroove];
  return sides === 1 && runs === undefined ? fenceSetting(guide, setup, { fenceMm }) : toGroove;
}

/** What is set before each pass. A cut made at once has had both. */
export function movedSetting(setup: CutSetup, pass: Pass, guide: Guide, mounting: Mounting): SettingStep[] {
  const { number, heightMm, cutterMm, fenceMm } = pass;
  switch (setup.approach) {
    case "height":
      if (guide.name === "rails") return [{ code: "set-height-over-work", pass: number, depthMm: heightMm }];
      return [{ code: "set-height", pass: number, heightMm, cutterMm, mounting }];
    case "fence":
      if (guide.name === "fence-with-offset-outfeed") return fenceHalves(setup, pass);
      return fenceSetting(guide, setup, { pass: number, fenceMm });
    case "once":
      return setup.sides === 1 ? fenceSetting(guide, setup, { fenceMm }) : [];
  }
}

/** What is set before each run of a pass: nothing, for the one run of a cut that is no wider than the bit. */
export function runSettings(
  setup: CutSetup,
  { number: pass }: Pass,
  guide: Guide,
  mounting: Mounting,
): SettingStep[][] {
  const { runs } = setup;
  if (runs === undefined) return [[]];
  if (runs.by === "fence") {
    return runs.fencesMm.map((fenceMm, index) =>
      fenceSetting(guide, setup, { pass, run: index + 1, fenceMm }),
    );
  }
  return runs.overMm.map((overMm, index) => [{ code: "move-over", pass, run: index + 1, overMm, mounting }]);
}

function fenceSetting(
  guide: Guide,
  setup: CutSetup,
  values: { readonly pass?: number; readonly run?: number; readonly fenceMm: number },
): SettingStep[] {
  if (!guide.isSet) return [];
  const { approach, greatestRadiusMm, leastRadiusMm } = setup;
  const isSameAtEveryHeight = approach !== "height" || greatestRadiusMm === leastRadiusMm;
  const standsOutMm = greatestRadiusMm - values.fenceMm;
  const measured = guide.name === "fence" && isSameAtEveryHeight ? { standsOutMm } : {};
  return [{ code: "set-fence", ...values, ...measured, guide: guide.name }];
}

function fenceHalves({ greatestRadiusMm }: CutSetup, { number, fenceMm: infeedMm }: Pass): SettingStep[] {
  return [{ code: "set-fence-halves", pass: number, infeedMm, outfeedMm: greatestRadiusMm }];
}

function grooveSetting(guide: Guide, { greatestRadiusMm }: CutSetup): SettingStep[] {
  return guide.isSet
    ? [{ code: "set-fence-to-groove", nearEdgeMm: greatestRadiusMm, guide: guide.name }]
    : [];
}
