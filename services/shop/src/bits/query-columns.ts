import {
  type Bit,
  bitCeilings,
  bitSizes,
  bitWords,
  clearanceOf,
  DEFAULT_POLICY,
  wordsIn,
} from "@rimwise/domain";
import { bareBit } from "./bare.ts";
import { facet, sizeFacets, wordFacets } from "./facets.ts";
import type { BitRecord } from "./schema.ts";

/** Why another of a bit must be bought. */
export const REORDER_REASONS = ["retired", "last-sharpening"] as const;

export type ReorderReason = (typeof REORDER_REASONS)[number];

/** What a bit is looked up by beside its own fields; computed again with every change of it. */
export function bitQueryColumns(record: BitRecord) {
  const bit = bareBit(record);
  const { name, notes = "", toothMaterial = "" } = record;
  const { hard, guide } = bitCeilings(bit, DEFAULT_POLICY);
  return {
    words: wordFacets([...bitWords(bit), ...wordsIn(`${name} ${notes} ${toothMaterial}`)]),
    facets: facetsOf(record, bit).join(" "),
    ceilingRpm: hard,
    guideRpm: guide,
    usedMinutes: record.used.minutes,
    reorderReason: reorderReason(record),
  };
}

function facetsOf(record: BitRecord, bit: Bit): string[] {
  const { state, homePlaceId, placeId, toothMaterial = "unknown" } = record;
  return [
    facet("state", state),
    facet("kind", bit.form.kind),
    facet("clearance", clearanceOf(bit, DEFAULT_POLICY)),
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

/** Why another must be bought; undefined when none must. */
function reorderReason({ retirement, smallestUsableDiameterMm, form }: BitRecord): ReorderReason | undefined {
  if (retirement !== undefined) return retirement.isReplaced ? undefined : "retired";
  if (smallestUsableDiameterMm === undefined || !("diameterMm" in form)) return undefined;
  return form.diameterMm <= smallestUsableDiameterMm + LAST_SHARPENING_MM ? "last-sharpening" : undefined;
}

/** What a sharpening takes off the diameter: within this of the smallest usable one there is none left. Ours. */
const LAST_SHARPENING_MM = 0.2;
