import type { TemplateFinding } from "../../guide/template-fit.ts";
import type { Show } from "../show.ts";
import { describeFinding } from "./findings.ts";

/**
 * A finding of a template as a sentence or two.
 * @example
 * const finding = { code: "inside-corner-too-tight", severity: "refuse", wantedRadiusMm: 3, leastRadiusMm: 6 };
 * describeTemplateFinding(finding, showIn("metric")) // → "An inside corner of 3 mm radius is tighter than this bit makes it: at least 6 mm. Use a bit of 6 mm or less, or finish the corner by hand."
 */
export function describeTemplateFinding(finding: TemplateFinding, show: Show): string {
  switch (finding.code) {
    case "inside-corner-too-tight": {
      const { wantedRadiusMm, leastRadiusMm } = finding;
      const bit =
        wantedRadiusMm > 0 ? `Use a bit of ${show.length(2 * wantedRadiusMm)} or less, or finish` : "Finish";
      return `An inside corner of ${show.length(wantedRadiusMm)} radius is tighter than this bit makes it: at least ${show.length(leastRadiusMm)}. ${bit} the corner by hand.`;
    }
    case "plug-not-possible":
      return `The plug of this inlay cannot be cut on the same template with a bit of ${show.length(finding.bitDiameterMm)}. Cut the recess with a bushing of more than ${show.length(finding.aboveMm)}, or use a smaller bit.`;
    case "bushing-too-small":
      return describeFinding(finding, show);
  }
}
