import { sharpened } from "@rimwise/domain";
import { bareBit } from "../bits/bare.ts";
import { bitAfter } from "../bits/decide.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { Hold } from "../bits/state-schema.ts";
import { tooSmallMm } from "../bits/too-small.ts";
import { happenedAt } from "../http/moment.ts";
import { Problem } from "../problems/problem.ts";
import { creation } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import type { UseRecord } from "../uses/schema.ts";
import { equivalentMetres, usesAfter } from "../uses/wear.ts";
import type { BitDimensions, NewSharpening, SharpeningRecord } from "./schema.ts";

type Decision = { readonly record: SharpeningRecord; readonly changes: readonly Change[] };

/**
 * A bit came back sharpened: its dimensions are the new ones from now on, the old ones stay in the sharpening and
 * the events. Below its smallest usable diameter it is held. `uses` are its latest ones: what was cut after a sharpening that
 * is entered late wears the new edge. Throws a DomainError where it would have grown.
 */
export function sharpenBit(
  id: string,
  bit: BitRecord,
  uses: readonly UseRecord[],
  { diameterMm, form, massG, sharpenedAt, notes }: NewSharpening,
  personId: string | undefined,
  at: string,
): Decision {
  if (bit.retirement !== undefined) {
    throw new Problem("bit-not-usable", `Bit ${bit.id} is retired for good: ${bit.retirement.because}`);
  }
  const measured = {
    ...(diameterMm !== undefined && { diameterMm }),
    ...(form !== undefined && { form }),
    ...(massG !== undefined && { massG }),
  };
  const next = sharpened(bareBit(bit), measured);
  const moment = happenedAt(sharpenedAt, at, "/sharpenedAt");
  const cut = bit.used.equivalentMetresSinceSharpening;
  const isLatest = moment >= (bit.sharpenedAt ?? "");
  const cutSince = isLatest ? equivalentMetresAfter(moment, uses, bit) : cut;
  const record: SharpeningRecord = {
    id,
    bitId: bit.id,
    ...(personId !== undefined && { personId }),
    sharpenedAt: moment,
    before: dimensionsOf(bit),
    after: dimensionsOf(next),
    lifeEquivalentM: Math.max(0, cut - cutSince),
    ...(notes !== undefined && { notes }),
    createdAt: at,
    updatedAt: at,
    version: 1,
  };
  const hold = holdIfTooSmall({ ...bit, ...next }, id, at);
  const back = bit.sentToSharpeningAt === undefined ? {} : { placeId: bit.homePlaceId };
  const changed = {
    ...dimensionsOf(next),
    ...back,
    sentToSharpeningAt: undefined,
    ...(isLatest && { sharpenedAt: moment }),
    used: { ...bit.used, equivalentMetresSinceSharpening: cutSince },
    ...(hold && { hold }),
  };
  return {
    record,
    changes: [creation("sharpening", record), bitAfter(bit, "sharpened", changed, at).change],
  };
}

function equivalentMetresAfter(
  moment: string,
  uses: readonly UseRecord[],
  { toothMaterial }: BitRecord,
): number {
  return usesAfter(uses, moment).reduce((sum, use) => sum + equivalentMetres(use, toothMaterial), 0);
}

function dimensionsOf({ form, massG }: BitDimensions): BitDimensions {
  return { form, ...(massG !== undefined && { massG }) };
}

function holdIfTooSmall(bit: BitRecord, causeId: string, at: string): Hold | undefined {
  const mm = tooSmallMm(bit);
  if (mm === undefined) return undefined;
  const because = `Sharpened to ${mm} mm, under its smallest usable diameter of ${bit.smallestUsableDiameterMm} mm.`;
  return { since: at, because, cause: "sharpening", causeId };
}
