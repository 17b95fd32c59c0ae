import {
  type Bit,
  bitCeilings,
  bitFaults,
  bitSizes,
  bitWords,
  clearanceOf,
  type Policy,
  wastesGrooveMm,
  wordsIn,
} from "@rimwise/domain";
import { shopPolicyKind } from "../shop-policy/kind.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import type { Computed } from "../store/store.ts";
import { bareBit } from "./bare.ts";
import { facet, sizeFacets, wordFacets } from "./facets.ts";
import { bitKind } from "./kind.ts";
import type { BitRecord } from "./schema.ts";

/** Why another of a bit must be bought. */
export const REORDER_REASONS = ["retired", "last-sharpening"] as const;

export type ReorderReason = (typeof REORDER_REASONS)[number];

/** What a bit is looked up by beside its own fields. */
export const bitColumns: Computed<typeof bitKind> = {
  kind: bitKind,
  restOn: [shopPolicyKind],
  of: function* (record) {
    return columnsUnder(record, yield* shopPolicy());
  },
};

/** The same under a policy. */
export function columnsUnder(record: BitRecord, policy: Policy) {
  const bit = believed(bareBit(record));
  const { name, notes = "", toothMaterial = "" } = record;
  const { hard, guide } = bitCeilings(bit, policy);
  return {
    words: wordFacets([...bitWords(bit), ...wordsIn(`${name} ${notes} ${toothMaterial}`)]),
    facets: facetsOf(record, bit, policy).join(" "),
    ceilingRpm: hard,
    guideRpm: guide,
    usedMinutes: record.used.minutes,
    reorderReason: reorderReason(record),
    wastesGrooveMm: isAtHand(record) ? wastesGrooveMm(bit) : undefined,
  };
}

function facetsOf(record: BitRecord, bit: Bit, policy: Policy): string[] {
  const { state, homePlaceId, placeId, toothMaterial = "unknown" } = record;
  return [
    facet("state", state),
    facet("kind", bit.form.kind),
    facet("clearance", clearanceOf(bit, policy)),
    facet("tooth", toothMaterial),
    ...sizeFacets(bitSizes(bit)),
    ...(record.nominalDiameterMm === undefined
      ? []
      : sizeFacets([{ role: "diameter", mm: record.nominalDiameterMm }])),
    ...(homePlaceId === undefined ? [] : [facet("home", homePlaceId)]),
    ...(placeId === undefined ? [] : [facet("at", placeId)]),
    ...(record.missingSince === undefined ? [] : [facet("is", "missing")]),
    ...(bit.massG === undefined ? [facet("no", "mass")] : []),
    ...(bit.markedMaxRpm === undefined ? [facet("no", "marking")] : []),
  ];
}

/** A mass that was kept before it was held against the outline counts as none: the bit is found among those to be weighed. */
function believed({ massG, ...unweighed }: Bit): Bit {
  const bit = { ...unweighed, ...(massG !== undefined && { massG }) };
  return bitFaults(bit).some(({ pointer }) => pointer === "/massG") ? unweighed : bit;
}

/** Whether it can be taken from the rack now. */
function isAtHand({ state, missingSince }: BitRecord): boolean {
  return state === "in-rack" && missingSince === undefined;
}

/** Why another must be bought; undefined when none must. */
function reorderReason({ retirement, smallestUsableDiameterMm, form }: BitRecord): ReorderReason | undefined {
  if (retirement !== undefined) return retirement.isReplaced ? undefined : "retired";
  if (smallestUsableDiameterMm === undefined || !("diameterMm" in form)) return undefined;
  return form.diameterMm <= smallestUsableDiameterMm + LAST_SHARPENING_MM ? "last-sharpening" : undefined;
}

/** What a sharpening takes off the diameter: within this of the smallest usable one there is none left. Ours. */
const LAST_SHARPENING_MM = 0.2;
