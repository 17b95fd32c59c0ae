import { backTheEndGrain } from "./back-the-end-grain.ts";
import { bothHands } from "./both-hands.ts";
import { checkColletAgain } from "./check-collet-again.ts";
import type { PrecautionContext } from "./define.ts";
import { eyesEarsLungs } from "./eyes-ears-lungs.ts";
import { feedAgainstRotation } from "./feed-against-rotation.ts";
import { fenceAndPilot } from "./fence-and-pilot.ts";
import { fenceSide } from "./fence-side.ts";
import { guardAndPushBlocks } from "./guard-and-push-blocks.ts";
import { keepMoving } from "./keep-moving.ts";
import { neverTrapTheWork } from "./never-trap-the-work.ts";
import { readMarkings } from "./read-markings.ts";
import { scrapFirst } from "./scrap-first.ts";
import { seatInCollet } from "./seat-in-collet.ts";
import { smallWork } from "./small-work.ts";
import { startSlow } from "./start-slow.ts";
import { startingPin } from "./starting-pin.ts";
import { stopIfItShakes } from "./stop-if-it-shakes.ts";
import { stoppedGroove } from "./stopped-groove.ts";
import { turnByHand } from "./turn-by-hand.ts";
import { unplugFirst } from "./unplug-first.ts";

/** Every precaution, one line each, in the order a teacher would say them. */
export const PRECAUTIONS = [
  readMarkings,
  unplugFirst,
  seatInCollet,
  checkColletAgain,
  turnByHand,
  startSlow,
  stopIfItShakes,
  feedAgainstRotation,
  neverTrapTheWork,
  guardAndPushBlocks,
  fenceAndPilot,
  startingPin,
  fenceSide,
  stoppedGroove,
  bothHands,
  smallWork,
  backTheEndGrain,
  keepMoving,
  scrapFirst,
  eyesEarsLungs,
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
