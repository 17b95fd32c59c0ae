import {
  ADVICE,
  describeClimateFinding,
  describePanelAssumption,
  describePanelFinding,
  floorTo,
  type PanelDimension,
  type PanelSizing,
  type PanelsInput,
  type PanelWork,
  type Reveal,
  roundTo,
  type Show,
  type SideState,
  type SizedPanel,
  showIn,
  type Tongue,
  type Units,
} from "@rimwise/domain";
import { presentPlan } from "../plans/present.ts";
import { sealOf } from "../plans/seal.ts";
import type { PanelsAnswer } from "./answer-schema.ts";

type Panel = PanelsAnswer["panels"][number];
type Asked = Exclude<Units, "both"> | undefined;

/** Decimals that mean something on each kind of quantity. */
const DECIMALS = { mm: 1, settingMm: 2, tongueMm: 2, m: 1, m2: 3, s: 0, percent: 1 };

const MM_PER_M = 1000;

/**
 * Panels as they go over the wire: lengths to 0.1 mm (what is left at the worst always down), moisture contents of the
 * year to 0.5 %, each finding with its sentence.
 */
export function presentPanels(
  sizing: PanelSizing,
  work: PanelWork | undefined,
  { moisture, wood }: PanelsInput,
  names: readonly (string | undefined)[],
  units: Asked,
): PanelsAnswer {
  const show = showIn(units ?? "both");
  const { totals, raising, year } = sizing;
  return {
    panels: sizing.panels.map((panel, index) => presentPanel(panel, names[index], show, units !== undefined)),
    moisture: {
      nowPercent: roundTo(moisture.percent, DECIMALS.percent),
      driestPercent: toHalf(year.driestPercent),
      wettestPercent: toHalf(year.wettestPercent),
    },
    raising: raising
      ? {
          heightMm: roundTo(raising.heightMm, DECIMALS.settingMm),
          fenceMm: roundTo(raising.fenceMm, DECIMALS.settingMm),
        }
      : null,
    edges: sizing.edges.map(({ lengthMm, grain, count }, index) => ({
      number: index + 1,
      lengthMm: mm(lengthMm),
      grain,
      count,
    })),
    totals: {
      panels: totals.panels,
      areaM2: roundTo(totals.areaMm2 / MM_PER_M ** 2, DECIMALS.m2),
      edgeLengthM: roundTo(totals.edgeLengthMm / MM_PER_M, DECIMALS.m),
    },
    findings: sizing.findings.map((finding) => ({
      code: finding.code,
      severity: finding.severity,
      text: describeClimateFinding(finding),
    })),
    assumptions: sizing.assumptions.map((assumption) => ({
      code: assumption.code,
      text: describePanelAssumption(assumption, show),
    })),
    work: work ? presentWork(work, units) : null,
    wood: { id: wood.id, name: wood.name },
    advice: ADVICE,
  };
}

function presentPanel(panel: SizedPanel, name: string | undefined, show: Show, withDisplay: boolean): Panel {
  return {
    name: name ?? null,
    count: panel.count,
    verdict: panel.verdict,
    findings: panel.findings.map((finding) => ({
      code: finding.code,
      severity: finding.severity,
      text: describePanelFinding(finding, show),
    })),
    width: presentDimension(panel.width, panel.reveal?.width, show, withDisplay),
    height: presentDimension(panel.height, panel.reveal?.height, show, withDisplay),
    tongue: presentTongue(panel.tongue),
  };
}

function presentDimension(
  dimension: PanelDimension,
  reveal: Reveal | undefined,
  show: Show,
  withDisplay: boolean,
): Panel["width"] {
  const { now, driest, wettest } = dimension;
  const length = (value: number) => show.length(mm(value));
  return {
    openingMm: mm(dimension.openingMm),
    cutMm: mm(dimension.cutMm),
    moves: dimension.moves,
    now: presentState(now, reveal?.nowMm),
    driest: presentState(driest, reveal?.driestMm),
    wettest: presentState(wettest, reveal?.wettestMm),
    gapLeastMm: floorTo(dimension.gapLeastMm, DECIMALS.mm),
    engagementLeastMm: floorTo(dimension.engagementLeastMm, DECIMALS.mm),
    grooveDepthNeededMm: mmUp(dimension.grooveDepthNeededMm),
    ...(withDisplay
      ? {
          display: {
            cut: length(dimension.cutMm),
            gapNow: length(now.gapMm),
            gapDriest: length(driest.gapMm),
            gapWettest: length(wettest.gapMm),
          },
        }
      : {}),
  };
}

function presentState(state: SideState, revealMm: number | undefined): Panel["width"]["now"] {
  return {
    sizeMm: mm(state.sizeMm),
    gapMm: mm(state.gapMm),
    engagementMm: mm(state.engagementMm),
    revealMm: revealMm === undefined ? null : mm(revealMm),
  };
}

function presentTongue({
  shape,
  fit,
  thicknessMm,
  lengthMm,
  playLeastMm,
  playMostMm,
}: Tongue): Panel["tongue"] {
  return {
    shape,
    fit,
    thicknessMm: roundTo(thicknessMm, DECIMALS.tongueMm),
    lengthMm: floorTo(lengthMm, DECIMALS.mm),
    playLeastMm: roundTo(playLeastMm, DECIMALS.tongueMm),
    playMostMm: roundTo(playMostMm, DECIMALS.tongueMm),
  };
}

function presentWork({ input, plan, time }: PanelWork, units: Asked): NonNullable<PanelsAnswer["work"]> {
  return {
    plan: presentPlan(plan, input.wood, sealOf(input), units),
    time: time
      ? {
          setUps: time.setUps,
          cuttingSeconds: roundTo(time.cuttingSeconds, DECIMALS.s),
          settingUpSeconds: roundTo(time.settingUpSeconds, DECIMALS.s),
          totalSeconds: roundTo(time.totalSeconds, DECIMALS.s),
        }
      : null,
  };
}

function mm(value: number): number {
  return roundTo(value, DECIMALS.mm);
}

function mmUp(value: number): number {
  return roundTo(-floorTo(-value, DECIMALS.mm), DECIMALS.mm);
}

/** To 0.5 %, all that an equilibrium moisture content means. */
function toHalf(percent: number): number {
  return roundTo(2 * percent, 0) / 2;
}
