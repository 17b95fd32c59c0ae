import type { Finding, FindingCode } from "../../plan/findings.ts";
import type { Show } from "../show.ts";
import { limitTitle } from "./limits.ts";

type Sentences = {
  readonly [Code in FindingCode]: (finding: Extract<Finding, { code: Code }>, show: Show) => string;
};

const SENTENCES: Sentences = {
  "table-only": () => "This bit is not for a handheld router. Mount the router in a table.",
  "router-too-fast": ({ slowestRpm, slowestRpmHighest, breaks, limitRpm }, show) =>
    `The slowest this router is known to run is ${show.rotation(slowestRpm)}, perhaps ${show.rotation(slowestRpmHighest)}. ` +
    `That is over ${list(breaks.map(limitTitle))}: at most ${show.rotation(limitRpm)}. Use a slower router for this bit.`,
  "no-collet-fits": ({ shankDiameterMm, colletDiametersMm }, show) =>
    `None of this router's collets (${colletDiametersMm.map(show.length).join(", ")}) is made for a shank of ${show.length(shankDiameterMm)}.`,
  "too-many-passes": () =>
    "Even in many passes this cut is too heavy for the bit and the set-up. Waste most of the wood another way first.",
  "handheld-with-care": () =>
    "This bit is at the limit of what a handheld router may hold. Clamp the work, take both hands and light passes; a table is better.",
  "large-bit": ({ clearance }) =>
    clearance === "table-only"
      ? "This bit is for a table only. Large or heavy, it deserves care there too."
      : "This bit is nearly one for the table only. Large or heavy, it deserves care there too.",
};

/** A finding as a sentence. */
export function describeFinding<Code extends FindingCode>(
  finding: Extract<Finding, { code: Code }>,
  show: Show,
): string {
  return SENTENCES[finding.code](finding, show);
}

function list(names: readonly string[]): string {
  const [last, ...others] = [...names].reverse();
  return others.length === 0 ? String(last ?? "") : `${others.reverse().join(", ")} and ${last}`;
}
