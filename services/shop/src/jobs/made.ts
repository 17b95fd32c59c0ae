import { afterMishaps, type MadeAt, type Mishap, type Policy, type PolicyLayer } from "@rimwise/domain";
import type { SetupMadeRecord } from "./act-schema.ts";

/** What tightens the rest of a job for each bit that something went wrong with. */
export function mendedBits(
  made: readonly SetupMadeRecord[],
  policy: Policy,
): ReadonlyMap<string, PolicyLayer> {
  const mishaps = new Map<string, Mishap[]>();
  for (const { bitId, rpm, outcomes } of made) {
    const own = outcomes.filter((outcome) => outcome !== "fine").map((outcome) => ({ outcome, rpm }));
    mishaps.set(bitId, [...(mishaps.get(bitId) ?? []), ...own]);
  }
  const layers = new Map<string, PolicyLayer>();
  for (const [bitId, own] of mishaps) {
    const layer = afterMishaps(own, policy);
    if (layer !== undefined) layers.set(bitId, layer);
  }
  return layers;
}

/** The settings at which a cut has been made with a bit. */
export function madeAt(
  made: readonly SetupMadeRecord[],
  bitId: string,
  { part, cut }: { readonly part: number; readonly cut: number },
): MadeAt[] {
  return made
    .filter((each) => each.bitId === bitId)
    .flatMap(({ heightMm, runs }) =>
      runs
        .filter((run) => run.part === part && run.cut === cut)
        .map(({ fenceMm }) => ({ heightMm, fenceMm })),
    );
}
