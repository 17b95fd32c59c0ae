import type { Bit } from "@rimwise/domain";
import { withoutUndefined } from "../http/given.ts";
import type { BitRecord } from "./schema.ts";

/** A kept bit without what no plan depends on. */
export function bareBit(record: BitRecord): Bit {
  const { form, shankDiameterMm, wings, massG, runOutMm, stickOutMm, isEndCutting, markedMaxRpm } = record;
  return withoutUndefined({
    form,
    shankDiameterMm,
    wings,
    massG,
    runOutMm,
    stickOutMm,
    isEndCutting,
    markedMaxRpm,
  });
}
