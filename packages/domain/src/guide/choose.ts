import type { GuideName } from "../cut/guide-name.ts";
import { cutSummary } from "../cut/kind/registry.ts";
import type { Mounting } from "../router/mounting.ts";
import { LEAST_WOOD_FOR_BEARING_MM, woodForBearingMm } from "./bearing-contact.ts";
import type { GuideContext } from "./define.ts";
import type { FeedDirection } from "./direction.ts";
import type { GuideFinding, GuideOffer } from "./finding.ts";
import { GUIDES, type Guide } from "./registry.ts";

/** What guides a cut; without a guide nothing may be cut. */
export type Guidance = {
  readonly guide: Guide | undefined;
  /** Whether the request named none. */
  readonly isAssumed: boolean;
  readonly findings: readonly GuideFinding[];
};

/**
 * The guide of a cut: the one that the request names if it serves, else the first that does. What it needs and does not get, and where
 * none serves which would, are findings.
 */
export function guidanceFor(context: GuideContext): Guidance {
  const asked = askedFor(context);
  const isAssumed = asked === undefined;
  const guide = isAssumed ? firstThatServes(context) : namedThatServes(context, asked);
  if (guide !== undefined) {
    return {
      guide,
      isAssumed,
      findings: [...woodFindings(guide, context), ...(guide.findings?.(context) ?? [])],
    };
  }
  const offers = offersFor(context);
  const finding: GuideFinding = isAssumed
    ? { code: "nothing-guides", severity: "refuse", offers }
    : { code: "guide-does-not-serve", severity: "refuse", guide: asked, offers };
  return { guide, isAssumed, findings: [finding] };
}

/** Which way to feed with this guide. Against the rotation, unless the cut says otherwise. */
export function feedDirection(guide: Guide, context: GuideContext): FeedDirection {
  return context.cut.feedDirection === "with-rotation" ? "with-rotation" : guide.direction(context);
}

/** A bushing that is given names its guide. */
function askedFor({ cut, setup }: GuideContext): GuideName | undefined {
  return cut.guide ?? (setup.bushing === undefined ? undefined : "template-and-bushing");
}

function firstThatServes(context: GuideContext): Guide | undefined {
  return GUIDES.find((guide) => guide.serves(context) && guide.waitsToBeNamed?.(context) !== true);
}

function namedThatServes(context: GuideContext, asked: GuideName): Guide | undefined {
  const guide = GUIDES.find(({ name }) => name === asked);
  return guide?.serves(context) === true ? guide : undefined;
}

/** What would guide this cut: with the router held as it is, or else the other way. */
function offersFor(context: GuideContext): GuideOffer[] {
  const other: Mounting = context.mounting === "table" ? "handheld" : "table";
  const offers = offersWith(context, context.mounting);
  return offers.length > 0 ? offers : offersWith(context, other);
}

function offersWith(context: GuideContext, mounting: Mounting): GuideOffer[] {
  const held = { ...context, mounting };
  return GUIDES.filter(({ serves }) => serves(held)).map(({ name }) => ({ mounting, guide: name }));
}

function woodFindings(guide: Guide, { cut, setup, outline }: GuideContext): GuideFinding[] {
  // A cut that is known by its depth alone does not say how much of the edge is left beside it.
  const isStockKnown = "thicknessMm" in cutSummary(cut.kind).fields;
  if (!isStockKnown || !guide.runsOnWork) return [];
  const woodMm = woodForBearingMm(outline, setup);
  const leastMm = LEAST_WOOD_FOR_BEARING_MM;
  if (woodMm === undefined || woodMm >= leastMm) return [];
  return [{ code: "bearing-without-wood", severity: "refuse", woodMm, leastMm }];
}
