import { backTheEndGrain } from "./back-the-end-grain.ts";
import { bearingTurns } from "./bearing-turns.ts";
import { bothHands } from "./both-hands.ts";
import { checkColletAgain } from "./check-collet-again.ts";
import type { PrecautionContext } from "./define.ts";
import { dust } from "./dust.ts";
import { edgesWhole } from "./edges-whole.ts";
import { eyesEarsLungs } from "./eyes-ears-lungs.ts";
import { featherBoards } from "./feather-boards.ts";
import { feedAgainstRotation } from "./feed-against-rotation.ts";
import { guardAndPushBlocks } from "./guard-and-push-blocks.ts";
import {
  bearingOnTemplate,
  closeTheFence,
  fenceAndPilot,
  fenceBehindBit,
  guidedEdgeOnRight,
  neverTrapTheWork,
  startingPin,
  straightedgeOnLeft,
  supportBothEnds,
  templateFixed,
  wholeEdgeSupported,
  workCannotRock,
  workClampedOnSled,
} from "./guide-says.ts";
import { keepMoving } from "./keep-moving.ts";
import { lockTheHeight } from "./lock-the-height.ts";
import { narrowStock } from "./narrow-stock.ts";
import { readMarkings } from "./read-markings.ts";
import { sameFaceDown } from "./same-face-down.ts";
import { scrapFirst } from "./scrap-first.ts";
import { seatInCollet } from "./seat-in-collet.ts";
import { smallWork } from "./small-work.ts";
import { startSlow } from "./start-slow.ts";
import { stopIfItShakes } from "./stop-if-it-shakes.ts";
import { stoppedGroove } from "./stopped-groove.ts";
import { supportTheBase } from "./support-the-base.ts";
import { tallFence } from "./tall-fence.ts";
import { turnByHand } from "./turn-by-hand.ts";
import { unplugFirst } from "./unplug-first.ts";

/** Every precaution, one line each, in the order a teacher would say them. */
export const PRECAUTIONS = [
  readMarkings,
  unplugFirst,
  edgesWhole,
  bearingTurns,
  seatInCollet,
  checkColletAgain,
  lockTheHeight,
  turnByHand,
  startSlow,
  stopIfItShakes,
  feedAgainstRotation,
  neverTrapTheWork,
  guardAndPushBlocks,
  closeTheFence,
  fenceAndPilot,
  wholeEdgeSupported,
  tallFence,
  featherBoards,
  workClampedOnSled,
  startingPin,
  fenceBehindBit,
  straightedgeOnLeft,
  guidedEdgeOnRight,
  supportBothEnds,
  templateFixed,
  bearingOnTemplate,
  workCannotRock,
  stoppedGroove,
  bothHands,
  supportTheBase,
  smallWork,
  narrowStock,
  sameFaceDown,
  backTheEndGrain,
  keepMoving,
  scrapFirst,
  eyesEarsLungs,
  dust,
] as const;

/** A precaution that applies, with its values: a union discriminated by `code`. */
export type Precaution = NonNullable<ReturnType<(typeof PRECAUTIONS)[number]["find"]>>;

export type PrecautionCode = Precaution["code"];

/** What a careful teacher would say at the machine about this cut. */
export function precautionsFor(context: PrecautionContext): Precaution[] {
  const precautions: Precaution[] = [];
  for (const { find } of PRECAUTIONS) {
    const found = find(context);
    if (found !== undefined) precautions.push(found);
  }
  return precautions;
}
