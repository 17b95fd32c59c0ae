import type { TemplateFindingCode } from "../../../guide/template-fit.ts";

/** What each finding of a template means. */
export const TEMPLATE_FINDING_MEANINGS: Readonly<Record<TemplateFindingCode, string>> = {
  "inside-corner-too-tight": "The bit makes no inside corner as tight as the one wanted.",
  "bushing-too-small": "The bit does not turn free in the bushing.",
  "plug-not-possible": "The bushing for the plug would be too small for the bit to turn free in it.",
};
