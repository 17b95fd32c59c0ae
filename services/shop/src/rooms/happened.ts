import { bitKind } from "../bits/kind.ts";
import { colletKind } from "../collets/kind.ts";
import { courseKind } from "../courses/kind.ts";
import { dialReadingKind } from "../dial-readings/kind.ts";
import { routerKind } from "../routers/kind.ts";
import { runOutKind } from "../run-out-readings/kind.ts";
import { shopPolicyKind } from "../shop-policy/kind.ts";
import { trialKind } from "../speed-trials/kind.ts";
import { isChangeOf } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import { useKind } from "../uses/kind.ts";
import type { UseOutcome } from "../uses/schema.ts";

const COLLET_CHANGES: Readonly<Record<string, string>> = {
  created: "A collet was added to the router.",
  held: "A collet of the router was taken out of use.",
  removed: "A collet of the router was removed.",
};

/** The cut as a person calls it, by what went wrong in it. */
const CUTS: Readonly<Record<UseOutcome, string>> = {
  fine: "a cut that was fine",
  scorched: "a scorched cut",
  chattered: "a cut that chattered",
  "tore-out": "a cut that tore out",
  "came-loose": "a cut in which the bit came loose",
};

/** What a change was, as a person says it: "Somebody logged a scorched cut." It is what an approval that lapses shows first. */
export function happened(change: Change): string {
  const happening = change.event.type.split(".")[1] ?? "";
  const done = happening.replaceAll("-", " ");
  if (isChangeOf(change, bitKind)) return `The bit was ${done}.`;
  if (isChangeOf(change, routerKind)) return `The router was ${done}.`;
  if (isChangeOf(change, courseKind)) return `The course was ${done}.`;
  if (isChangeOf(change, shopPolicyKind)) return "The shop's policy was changed.";
  if (isChangeOf(change, colletKind))
    return COLLET_CHANGES[happening] ?? "A collet of the router was changed.";
  if (!("record" in change)) return "What it rests on was removed.";
  if (isChangeOf(change, useKind)) {
    const cuts = change.record.outcomes.map((outcome) => CUTS[outcome]);
    return `Somebody logged ${cuts.join(" and ")}.`;
  }
  if (isChangeOf(change, trialKind)) {
    if (change.record.setAside !== undefined) return "A speed trial was set aside.";
    return change.record.outcome === "shook"
      ? "The bit shook in a speed trial."
      : "The bit ran free in a speed trial.";
  }
  if (isChangeOf(change, runOutKind)) return `A run-out of ${change.record.runOutMm} mm was measured.`;
  if (isChangeOf(change, dialReadingKind)) {
    const { mark, rpm } = change.record;
    return `Mark ${mark} of the router was measured at ${rpm.toLocaleString("en-GB")} rpm.`;
  }
  return "What it rests on was changed.";
}
