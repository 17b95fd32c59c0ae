import type { Side } from "./panel.ts";

/** What weighs on whether a panel fits: `refuse` says it does not, `care` qualifies it. */
export type PanelFinding =
  | {
      readonly code: "panel-would-bottom";
      readonly severity: "refuse";
      readonly side: Side;
      readonly overMm: number;
    }
  | {
      readonly code: "panel-clearance-small";
      readonly severity: "care";
      readonly side: Side;
      readonly gapMm: number;
      readonly leastMm: number;
    }
  | {
      readonly code: "panel-would-show-gap";
      readonly severity: "refuse";
      readonly side: Side;
      readonly gapMm: number;
      readonly grooveDepthNeededMm: number;
    }
  | {
      readonly code: "panel-cover-small";
      readonly severity: "care";
      readonly side: Side;
      readonly engagementMm: number;
      readonly leastMm: number;
      readonly grooveDepthNeededMm: number;
    }
  | { readonly code: "keep-panel-centred"; readonly severity: "care"; readonly side: Side }
  | {
      readonly code: "tongue-too-thick";
      readonly severity: "refuse";
      readonly thicknessMm: number;
      readonly grooveWidthMm: number;
      readonly fittingHeightMm: number | undefined;
    }
  | {
      readonly code: "tongue-wedges";
      readonly severity: "refuse";
      readonly lengthMm: number;
      readonly engagementMm: number;
      readonly fittingHeightMm: number | undefined;
    }
  | {
      readonly code: "tongue-cut-away";
      readonly severity: "refuse";
      readonly fittingHeightMm: number | undefined;
    }
  | {
      readonly code: "tongue-rattles";
      readonly severity: "care";
      readonly playMm: number;
      readonly mostMm: number;
      readonly fittingHeightMm: number | undefined;
    }
  | {
      readonly code: "edge-needs-thinning";
      readonly severity: "care";
      readonly thicknessMm: number;
      readonly grooveWidthMm: number;
    }
  | {
      readonly code: "no-field-left";
      readonly severity: "refuse";
      readonly side: Side;
      readonly panelMm: number;
      readonly fieldEdgeMm: number;
    };

export type PanelFindingCode = PanelFinding["code"];

/** What weighs on all the panels alike. */
export type ClimateFinding = {
  readonly code: "moisture-outside-year";
  readonly severity: "care";
  readonly moisturePercent: number;
  readonly driestPercent: number;
  readonly wettestPercent: number;
};

export type ClimateFindingCode = ClimateFinding["code"];

export type PanelVerdict = "fits" | "fits-with-care" | "does-not-fit";

/** One refusal decides. */
export function panelVerdict(findings: readonly PanelFinding[]): PanelVerdict {
  if (findings.some(({ severity }) => severity === "refuse")) return "does-not-fit";
  return findings.some(({ severity }) => severity === "care") ? "fits-with-care" : "fits";
}
