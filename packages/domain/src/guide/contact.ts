import { shortestContactMm } from "../cut/work-fit.ts";
import type { GuideContext } from "./define.ts";

/** Room that a fence closed up around a bit leaves it on each side, mm. Ours. */
const OPENING_ROOM_MM = 3;

/** Work that runs a shorter way along the fence pivots about the bit, mm: about 6 in. Ours. */
const PIVOTS_BELOW_MM = 150;

/** Whether the work reaches over the opening of a fence that is closed up around the bit. Source: common practice. */
export function spansOpening({ cut, setup }: GuideContext): boolean {
  return shortestContactMm(cut) > 2 * (setup.greatestRadiusMm + OPENING_ROOM_MM);
}

/** Whether the work belongs on a sled: it runs so short a way along the fence that it would pivot. */
export function needsSled({ cut }: GuideContext): boolean {
  return shortestContactMm(cut) < PIVOTS_BELOW_MM;
}
