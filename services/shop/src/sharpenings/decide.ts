import { formDiameterMm, sharpened } from "@rimwise/domain";
import { bareBit } from "../bits/bare.ts";
import { bitAfter } from "../bits/decide.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { Hold } from "../bits/state-schema.ts";
import { tooSmallMm } from "../bits/too-small.ts";
import { withoutUndefined } from "../http/given.ts";
import { happenedAt } from "../http/moment.ts";
import { Problem } from "../problems/problem.ts";
import { creation, type Decision, newRecord } from "../store/changes.ts";
import type { UseRecord } from "../uses/schema.ts";
import { equivalentMetres, usesAfter } from "../uses/wear.ts";
import { sharpeningKind } from "./kind.ts";
import type { BitDimensions, NewSharpening, SharpeningRecord } from "./schema.ts";

/**
 * A bit came back sharpened: its dimensions are the new ones from now on, the old ones stay in the sharpening and
 * the events. Below its smallest usable diameter it is held. `uses` are its latest ones: what was cut after a sharpening that
 * is entered late wears the new edge. Throws a DomainError if it would have grown.
 */
export function sharpenBit(
  id: string,
  bit: BitRecord,
  uses: readonly UseRecord[],
  { diameterMm, form, massG, sharpenedAt, repaired, notes }: NewSharpening,
  personId: string | undefined,
  at: string,
): Decision<SharpeningRecord> {
  if (bit.retirement !== undefined) {
    throw new Problem("bit-not-usable", `Bit ${bit.id} is retired for good: ${bit.retirement.reason}`);
  }
  const next = sharpened(bareBit(bit), withoutUndefined({ diameterMm, form, massG }));
  const moment = happenedAt(sharpenedAt, at, "/sharpenedAt");
  const cut = bit.used.equivalentMetresSinceSharpening;
  const isLatest = moment >= (bit.sharpenedAt ?? "");
  const cutSince = isLatest ? equivalentMetresAfter(moment, uses, bit) : cut;
  const fields = withoutUndefined({
    bitId: bit.id,
    personId,
    sharpenedAt: moment,
    before: dimensionsOf(bit),
    after: dimensionsOf(next),
    lifeEquivalentM: Math.max(0, cut - cutSince),
    repaired,
    notes,
  });
  const record: SharpeningRecord = newRecord(id, fields, at);
  const hold = holdIfTooSmall({ ...bit, ...next }, id, at);
  const back = bit.sentToSharpeningAt === undefined ? {} : { placeId: bit.homePlaceId };
  const nominalDiameterMm = bit.nominalDiameterMm ?? formDiameterMm(bit.form);
  const isSmaller = formDiameterMm(next.form) < nominalDiameterMm;
  const changed = {
    ...dimensionsOf(next),
    ...(isSmaller && { nominalDiameterMm }),
    ...back,
    sentToSharpeningAt: undefined,
    ...(isLatest && { sharpenedAt: moment }),
    used: { ...bit.used, equivalentMetresSinceSharpening: cutSince },
    ...(hold && { hold }),
  };
  return {
    record,
    changes: [creation(sharpeningKind, record), ...bitAfter(bit, "sharpened", changed, at).changes],
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
  return withoutUndefined({ form, massG });
}

function holdIfTooSmall(bit: BitRecord, causeId: string, at: string): Hold | undefined {
  const mm = tooSmallMm(bit);
  if (mm === undefined) return undefined;
  const reason = `Sharpened to ${mm} mm, under its smallest usable diameter of ${bit.smallestUsableDiameterMm} mm.`;
  return { since: at, reason, cause: "sharpening", causeId };
}
