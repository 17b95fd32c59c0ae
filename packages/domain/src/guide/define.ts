import type { FormKind } from "../bit/form/registry.ts";
import type { Outline } from "../bit/outline.ts";
import { isInside, isStraight } from "../cut/course.ts";
import type { GuideName } from "../cut/guide-name.ts";
import type { Cut } from "../cut/kind/registry.ts";
import type { CutSetup } from "../cut/setup.ts";
import type { Mounting } from "../router/mounting.ts";
import type { FeedDirection } from "./direction.ts";
import type { GuideFinding } from "./finding.ts";
import type { GuideStep } from "./step.ts";

/** What a guide may look at. */
export type GuideContext = {
  readonly cut: Cut;
  readonly setup: CutSetup;
  readonly mounting: Mounting;
  readonly form: FormKind;
  readonly outline: Outline;
  readonly pilotRadiusMm: number | undefined;
};

/** A precaution that belongs to a guide, by its code; `precaution` says it when the guide does. */
export type GuidePrecaution =
  | "fence-and-pilot"
  | "starting-pin"
  | "never-trap-the-work"
  | "close-the-fence"
  | "fence-behind-bit"
  | "straightedge-on-left"
  | "guided-edge-on-right"
  | "support-both-ends"
  | "template-fixed"
  | "bearing-on-template"
  | "work-clamped-on-sled"
  | "work-cannot-rock"
  | "whole-edge-supported";

/** One way to guide the work or the router. */
export type GuideDefinition<Name extends GuideName, IsSet extends boolean> = {
  readonly name: Name;
  /** Whether it is set to a distance from the bit; else a bearing, a template or a straightedge gives it. */
  readonly isSet: IsSet;
  /** Whether a bearing runs on the edge of the work, which must leave it wood. */
  readonly runsOnWork: boolean;
  readonly serves: (context: GuideContext) => boolean;
  /** Of what it serves, what it is not taken for unless the request names it. */
  readonly waitsToBeNamed?: (context: GuideContext) => boolean;
  /** Against the rotation. */
  readonly direction: (context: GuideContext) => FeedDirection;
  /** What it needs of the work and does not get. */
  readonly findings?: (context: GuideContext) => readonly GuideFinding[];
  /** What is put in place for it. */
  readonly steps?: (context: GuideContext) => readonly GuideStep[];
  /** What is said of it at the machine. */
  readonly says: (context: GuideContext) => readonly GuidePrecaution[];
};

/** Ties a guide to its name; adds nothing at run time. */
export function defineGuide<const Name extends GuideName, const IsSet extends boolean>(
  definition: GuideDefinition<Name, IsSet>,
): GuideDefinition<Name, IsSet> {
  return definition;
}

/** Whether the edge to be cut is one that no straight fence or edge guide can follow. */
export function isClosedToFences({ cut }: GuideContext): boolean {
  return !isStraight(cut);
}

/** Whether a bearing alone decides how deep the cut is, in every pass. */
export function isOnBearing({ pilotRadiusMm, setup }: GuideContext): boolean {
  return pilotRadiusMm !== undefined && setup.fenceMm <= pilotRadiusMm && setup.approach !== "fence";
}

/** What moves along an edge or around an opening with the router in hand. */
export function handheldDirection(context: GuideContext): FeedDirection {
  if (isInside(context.cut)) return "router-clockwise-inside";
  return isClosedToFences(context) ? "router-around-outside" : "router-left-to-right";
}
