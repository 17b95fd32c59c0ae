import type { Outline } from "../bit/outline.ts";
import type { Cut } from "../cut/kind/registry.ts";
import type { CutSetup } from "../cut/setup.ts";
import type { Mounting } from "../router/mounting.ts";

/** What a guide may look at. */
export type GuideContext = {
  readonly cut: Cut;
  readonly setup: CutSetup;
  readonly mounting: Mounting;
  readonly outline: Outline;
  readonly pilotRadiusMm: number | undefined;
};

/** How the distance from the bit's axis is set with a guide. */
export type FenceSetting =
  /** A fence or an edge guide is set to the distance. */
  | "set"
  /** The bearing gives the distance, and a fence stands flush with it. */
  | "flush"
  /** The bearing or the template alone gives it: nothing is set. */
  | "none";

/** One way to guide the work or the router. */
export type GuideDefinition<Name extends string> = {
  readonly name: Name;
  readonly fence: FenceSetting;
  readonly serves: (context: GuideContext) => boolean;
};

/** Ties a guide to its name; adds nothing at run time. */
export function defineGuide<const Name extends string>(
  definition: GuideDefinition<Name>,
): GuideDefinition<Name> {
  return definition;
}

/** Whether the edge to be cut is one that no straight fence or edge guide can follow: curved, or around an opening. */
export function isClosedToFences({ cut }: GuideContext): boolean {
  const isCurved = "curved" in cut && cut.curved === true;
  return isCurved || isInside(cut);
}

/** Whether the cut goes around the inside of an opening. */
export function isInside(cut: Cut): boolean {
  return "side" in cut && cut.side === "inside";
}

/** Whether a bearing alone decides how deep the cut is, in every pass. */
export function isOnBearing({ pilotRadiusMm, setup }: GuideContext): boolean {
  return pilotRadiusMm !== undefined && setup.fenceMm <= pilotRadiusMm && setup.approach !== "fence";
}
