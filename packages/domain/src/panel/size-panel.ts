import type { Policy } from "../policy/policy.ts";
import { type PanelDimension, panelDimension } from "./dimension.ts";
import { type PanelFinding, type PanelVerdict, panelVerdict } from "./findings.ts";
import type { Groove, Opening, Side } from "./panel.ts";
import { type EngagementSpan, type Raising, type Tongue, tongueIn } from "./tongue.ts";
import type { PanelMovement } from "./year-movement.ts";

/** One panel, or several alike, sized for its opening. */
export type SizedPanel = {
  readonly count: number;
  readonly verdict: PanelVerdict;
  readonly findings: readonly PanelFinding[];
  readonly width: PanelDimension;
  readonly height: PanelDimension;
  readonly tongue: Tongue;
  /** How wide the raised border shows on each side; undefined for a flat panel. */
  readonly reveal: Readonly<Record<Side, Reveal>> | undefined;
};

/** From the frame's inside edge to the edge of the field, mm, through the year; below 0 the field is in the groove. */
export type Reveal = { readonly nowMm: number; readonly driestMm: number; readonly wettestMm: number };

/** The two dimensions of a panel, before anything is known of its edges. */
export type PanelDimensions = Pick<SizedPanel, "width" | "height">;

/** What every panel of a job shares. */
export type PanelContext = {
  readonly groove: Groove;
  readonly thicknessMm: number;
  readonly movement: PanelMovement;
  readonly policy: Policy;
};

const SIDES: readonly Side[] = ["width", "height"];

/** How far a length may be out before it counts, mm: rounding. */
const SLACK_MM = 1e-9;

/** The size to cut for an opening, and how it stands in its grooves through the year. */
export function panelDimensions(
  { groove, movement, policy }: PanelContext,
  opening: Opening,
): PanelDimensions {
  const along = opening.grainAlong ?? "height";
  const dimension = (side: Side) =>
    panelDimension({
      openingMm: side === "width" ? opening.widthMm : opening.heightMm,
      grooveDepthMm: groove.depthMm,
      givenMm: side === "width" ? opening.panel?.widthMm : opening.panel?.heightMm,
      moves: side === along ? "along-grain" : "across-grain",
      movement: side === along ? movement.along : movement.across,
      policy,
    });
  return { width: dimension("width"), height: dimension("height") };
}

/** How far the edges of a panel reach into its grooves, from the least to the most. */
export function engagementOf({ width, height }: PanelDimensions): EngagementSpan {
  return {
    leastMm: Math.min(width.engagementLeastMm, height.engagementLeastMm),
    mostMm: Math.max(width.engagementMostMm, height.engagementMostMm),
  };
}

/** A panel of these dimensions with its edges as they are, judged. */
export function sizedPanel(
  context: PanelContext,
  { count = 1 }: Opening,
  dimensions: PanelDimensions,
  raising: Raising | undefined,
): SizedPanel {
  const { groove, thicknessMm, movement, policy } = context;
  const engagement = engagementOf(dimensions);
  const tongue = tongueIn({ groove, thicknessMm, movement: movement.thickness, policy }, raising, engagement);
  const findings = [
    ...SIDES.flatMap((side) => sideFindings(side, dimensions[side], policy)),
    ...tongueFindings(tongue, groove, engagement, policy, raising?.fittingHeightMm),
    ...SIDES.flatMap((side) => fieldFindings(side, dimensions[side], tongue)),
  ];
  return {
    count,
    verdict: panelVerdict(findings),
    findings,
    ...dimensions,
    tongue,
    reveal: revealOf(dimensions, tongue),
  };
}

function revealOf({ width, height }: PanelDimensions, { fieldEdgeMm }: Tongue): SizedPanel["reveal"] {
  if (fieldEdgeMm === undefined) return undefined;
  const reveal = ({ now, driest, wettest }: PanelDimension): Reveal => ({
    nowMm: fieldEdgeMm - now.engagementMm,
    driestMm: fieldEdgeMm - driest.engagementMm,
    wettestMm: fieldEdgeMm - wettest.engagementMm,
  });
  return { width: reveal(width), height: reveal(height) };
}

function sideFindings(side: Side, dimension: PanelDimension, policy: Policy): PanelFinding[] {
  const { gapLeastMm: gapMm, engagementLeastMm: engagementMm, grooveDepthNeededMm } = dimension;
  const findings: PanelFinding[] = [];
  if (gapMm < -SLACK_MM) {
    findings.push({ code: "panel-would-bottom", severity: "refuse", side, overMm: -gapMm });
  } else if (gapMm < policy.panelClearanceMinMm - SLACK_MM) {
    const leastMm = policy.panelClearanceMinMm;
    findings.push({ code: "panel-clearance-small", severity: "care", side, gapMm, leastMm });
  }
  if (engagementMm < SLACK_MM) {
    const gap = { gapMm: Math.max(0, -engagementMm), grooveDepthNeededMm };
    findings.push({ code: "panel-would-show-gap", severity: "refuse", side, ...gap });
  } else if (engagementMm < policy.panelEngagementMinMm - SLACK_MM) {
    const cover = { engagementMm, leastMm: policy.panelEngagementMinMm, grooveDepthNeededMm };
    findings.push({ code: "panel-cover-small", severity: "care", side, ...cover });
  } else if (dimension.engagementSlidMm < SLACK_MM) {
    findings.push({ code: "keep-panel-centred", severity: "care", side });
  }
  return findings;
}

function tongueFindings(
  tongue: Tongue,
  { widthMm: grooveWidthMm }: Groove,
  { mostMm: engagementMm }: EngagementSpan,
  policy: Policy,
  fittingHeightMm: number | undefined,
): PanelFinding[] {
  const { thicknessMm, lengthMm } = tongue;
  switch (tongue.fit) {
    case "fits":
      return [];
    case "rattles":
      return [
        {
          code: "tongue-rattles",
          severity: "care",
          playMm: tongue.playMostMm,
          mostMm: policy.tonguePlayMaxMm,
          fittingHeightMm,
        },
      ];
    case "too-thick":
      return tongue.shape === "flat"
        ? [{ code: "edge-needs-thinning", severity: "care", thicknessMm, grooveWidthMm }]
        : [{ code: "tongue-too-thick", severity: "refuse", thicknessMm, grooveWidthMm, fittingHeightMm }];
    case "wedges":
      return [{ code: "tongue-wedges", severity: "refuse", lengthMm, engagementMm, fittingHeightMm }];
    case "cut-away":
      return [{ code: "tongue-cut-away", severity: "refuse", fittingHeightMm }];
  }
}

function fieldFindings(side: Side, { cutMm }: PanelDimension, { fieldEdgeMm }: Tongue): PanelFinding[] {
  if (fieldEdgeMm === undefined || cutMm > 2 * fieldEdgeMm) return [];
  return [{ code: "no-field-left", severity: "refuse", side, panelMm: cutMm, fieldEdgeMm }];
}
