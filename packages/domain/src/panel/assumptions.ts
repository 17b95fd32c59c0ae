import type { Wood } from "../wood/wood.ts";
import type { PanelsInput, Sawn } from "./panel.ts";
import { ALONG_GRAIN_SHRINKAGE_PERCENT } from "./year-movement.ts";

/** What the sizing took for granted, and which side it took. */
export type PanelAssumption =
  | { readonly code: "panel-held-centred" }
  | { readonly code: "frame-taken-as-still" }
  | { readonly code: "no-movement-known"; readonly woodName: string }
  | { readonly code: "movement-spread"; readonly spreadRatio: number }
  | { readonly code: "coefficient-from-memory"; readonly woodName: string }
  | { readonly code: "along-grain-movement"; readonly shrinkagePercent: number }
  | { readonly code: "sawn-assumed"; readonly sawn: Sawn }
  | { readonly code: "quartersawn-taken-as-true" }
  | { readonly code: "grain-along-height" }
  | { readonly code: "moisture-tolerance-assumed"; readonly tolerancePercent: number }
  | { readonly code: "raising-height-found"; readonly heightMm: number }
  | { readonly code: "raising-height-whole"; readonly heightMm: number };

export type PanelAssumptionCode = PanelAssumption["code"];

/** The cautious side if nobody said how boards were sawn: a flatsawn one moves most. */
export const CAUTIOUS_SAWN: Sawn = "flat";

/** Everything taken for granted about the wood, the frame and the bit's height if it was left to be found. */
export function panelAssumptions(
  { openings, wood, sawn, moisture, policy }: PanelsInput,
  height: PanelAssumption | undefined,
): PanelAssumption[] {
  const found: PanelAssumption[] = [{ code: "panel-held-centred" }, { code: "frame-taken-as-still" }];
  if (wood.kind === "species") {
    found.push({ code: "movement-spread", spreadRatio: policy.movementSpreadRatio });
    if (isRemembered(wood)) found.push({ code: "coefficient-from-memory", woodName: wood.name });
    found.push({ code: "along-grain-movement", shrinkagePercent: ALONG_GRAIN_SHRINKAGE_PERCENT });
    if (sawn === undefined) found.push({ code: "sawn-assumed", sawn: CAUTIOUS_SAWN });
    if (sawn === "quarter") found.push({ code: "quartersawn-taken-as-true" });
    if (moisture.tolerancePercent === undefined) {
      const tolerancePercent = policy.moistureToleranceAssumedPercent;
      found.push({ code: "moisture-tolerance-assumed", tolerancePercent });
    }
  } else {
    found.push({ code: "no-movement-known", woodName: wood.name });
  }
  if (wood.hasGrain && openings.some(({ grainAlong }) => grainAlong === undefined)) {
    found.push({ code: "grain-along-height" });
  }
  if (height !== undefined) found.push(height);
  return found;
}

function isRemembered(wood: Extract<Wood, { kind: "species" }>): boolean {
  return Object.values(wood.changeCoefficient).some(({ provenance }) => provenance === "memory");
}
