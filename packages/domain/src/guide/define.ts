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

/** One way to guide the work or the router. */
export type GuideDefinition<Name extends string, IsSet extends boolean> = {
  readonly name: Name;
  /** Whether it is set to a distance from the bit; else a bearing, a template or a straightedge gives it. */
  readonly isSet: IsSet;
  /** Whether a bearing runs on the edge of the work, which must leave it wood. */
  readonly runsOnWork: boolean;
  readonly serves: (context: GuideContext) => boolean;
};

/** Ties a guide to its name; adds nothing at run time. */
export function defineGuide<const Name extends string, const IsSet extends boolean>(
  definition: GuideDefinition<Name, IsSet>,
): GuideDefinition<Name, IsSet> {
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
