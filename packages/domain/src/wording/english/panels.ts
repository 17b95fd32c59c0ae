import type { PanelAssumption, PanelAssumptionCode } from "../../panel/assumptions.ts";
import type {
  ClimateFinding,
  ClimateFindingCode,
  PanelFinding,
  PanelFindingCode,
} from "../../panel/findings.ts";
import { floorTo, roundTo } from "../../quantity/round.ts";
import type { Show } from "../show.ts";

type FindingSentences = {
  readonly [Code in PanelFindingCode]: (finding: Extract<PanelFinding, { code: Code }>, show: Show) => string;
};
type ClimateSentences = {
  readonly [Code in ClimateFindingCode]: (finding: Extract<ClimateFinding, { code: Code }>) => string;
};
type AssumptionSentences = {
  readonly [Code in PanelAssumptionCode]: (
    assumption: Extract<PanelAssumption, { code: Code }>,
    show: Show,
  ) => string;
};

/** Decimals of a millimetre that mean anything on a panel. */
const LENGTH_DECIMALS = 1;
/** Decimals of a moisture content as a meter shows it. */
const MOISTURE_DECIMALS = 1;

const FINDINGS: FindingSentences = {
  "panel-would-bottom": ({ side, overMm }, show) =>
    `In the wettest air the panel may be ${larger(overMm, show)} too large on each side of its ${side}: it would reach the bottom of the groove and push the frame apart. Cut it smaller.`,
  "panel-clearance-small": ({ side, gapMm, leastMm }, show) =>
    `In the wettest air only ${smaller(gapMm, show)} may be left at the bottom of the groove on each side of the ${side}; at least ${show.length(leastMm)} is wanted.`,
  "panel-would-show-gap": ({ side, gapMm, grooveDepthNeededMm }, show) =>
    `In the driest air the panel may shrink out of its groove on the ${side}${gapMm > 0 ? `, leaving ${larger(gapMm, show)} open on each side` : ""}. ${deeperGroove(grooveDepthNeededMm, show)}`,
  "panel-cover-small": ({ side, engagementMm, leastMm, grooveDepthNeededMm }, show) =>
    `In the driest air only ${smaller(engagementMm, show)} of the panel may stay in the groove on each side of the ${side}; at least ${show.length(leastMm)} is wanted. ${deeperGroove(grooveDepthNeededMm, show)}`,
  "keep-panel-centred": ({ side }) =>
    `If the panel slides to one side of its ${side} it may come out of the other groove in the driest air. Pin it in the middle of the rails, or put spacers in the grooves.`,
  "tongue-too-thick": ({ thicknessMm, grooveWidthMm, fittingHeightMm }, show) =>
    `The tongue is ${larger(thicknessMm, show)} thick and the groove ${show.length(grooveWidthMm)} wide: it does not go in. ${otherHeight(fittingHeightMm, show)}`,
  "tongue-wedges": ({ lengthMm, engagementMm, fittingHeightMm }, show) =>
    `The tongue goes ${smaller(lengthMm, show)} into the groove before its face meets the edge of the frame, and the panel needs ${larger(engagementMm, show)} in the wettest air: it would wedge the groove open. ${otherHeight(fittingHeightMm, show)}`,
  "tongue-cut-away": ({ fittingHeightMm }, show) =>
    `At this height the bit cuts the whole edge away: no tongue is left, and nothing to run against. ${otherHeight(fittingHeightMm, show)}`,
  "tongue-rattles": ({ playMm, mostMm, fittingHeightMm }, show) =>
    `In the driest air the edge may have ${larger(playMm, show)} of play in the groove and rattle; at most ${show.length(mostMm)} is wanted. ${otherHeight(fittingHeightMm, show)}`,
  "edge-needs-thinning": ({ thicknessMm, grooveWidthMm }, show) =>
    `The panel is ${larger(thicknessMm, show)} thick and the groove ${show.length(grooveWidthMm)} wide: its edges must be raised or thinned before it goes in.`,
  "no-field-left": ({ side, panelMm, fieldEdgeMm }, show) =>
    `The bit takes ${larger(fieldEdgeMm, show)} from each edge, and the panel's ${side} is only ${show.length(panelMm)}: no field is left, and so small a piece must not be held against so large a bit.`,
};

const CLIMATE_FINDINGS: ClimateSentences = {
  "moisture-outside-year": ({ moisturePercent, driestPercent, wettestPercent }) =>
    `At ${moistureText(moisturePercent)} the wood is ${moisturePercent > wettestPercent ? "wetter" : "drier"} than it will ever be in use (${moistureText(driestPercent)} to ${moistureText(wettestPercent)}). Let it settle in the air it will live in before it is cut.`,
};

const ASSUMPTIONS: AssumptionSentences = {
  "panel-held-centred": () =>
    "The panel floats without glue and is held in the middle, so that it moves alike on both sides.",
  "frame-taken-as-still": () =>
    "The frame is taken as still: its grooves keep their depth and width, and its opening its size.",
  "no-movement-known": ({ woodName }) =>
    `${woodName} is taken as still. What little it moves with damp or heat is not counted.`,
  "movement-spread": ({ spreadRatio }, show) =>
    `One board is not another: at the worst it is taken to move ${show.percent(spreadRatio)} more than its species' average.`,
  "coefficient-from-memory": ({ woodName }) =>
    `The figures for the movement of ${woodName} are from memory and were not checked against their source.`,
  "along-grain-movement": ({ shrinkagePercent }) =>
    `Along the grain the wood is taken to shrink ${shrinkagePercent} % from green to oven-dry. Wood with crooked grain moves more.`,
  "sawn-assumed": ({ sawn }) =>
    `Nobody said how the boards were sawn: taken as ${sawn}sawn, which moves most.`,
  "quartersawn-taken-as-true": () =>
    "The boards are taken as truly quartersawn. Look at the end grain: if the rings do not stand upright they move more, up to twice as much.",
  "grain-along-height": () => "The grain is taken to run along the height.",
  "moisture-tolerance-assumed": ({ tolerancePercent }) =>
    `The moisture content may be ${tolerancePercent} % higher or lower than was said.`,
  "raising-height-found": ({ heightMm }, show) =>
    `The bit's height was found: at ${show.length(heightMm)} it leaves a tongue that fits the groove. Try it on scrap in the groove itself.`,
  "raising-height-whole": ({ heightMm }, show) =>
    `No height of this bit leaves a tongue of the groove's width, so its whole profile is taken: ${show.length(heightMm)} high.`,
};

/**
 * A finding about one panel as a sentence.
 * @example
 * const finding = { code: "panel-would-bottom", severity: "refuse", side: "width", overMm: 0.5 };
 * describePanelFinding(finding, showIn("metric")).startsWith("In the wettest air the panel may be 0.5 mm too large") // → true
 */
export function describePanelFinding<Code extends PanelFindingCode>(
  finding: Extract<PanelFinding, { code: Code }>,
  show: Show,
): string {
  return FINDINGS[finding.code](finding, show);
}

/**
 * A finding about the air and the wood as a sentence.
 * @example
 * const finding = { code: "moisture-outside-year", moisturePercent: 14, driestPercent: 6, wettestPercent: 10 };
 * describeClimateFinding(finding).startsWith("At 14 % the wood is wetter than it will ever be in use") // → true
 */
export function describeClimateFinding<Code extends ClimateFindingCode>(
  finding: Extract<ClimateFinding, { code: Code }>,
): string {
  return CLIMATE_FINDINGS[finding.code](finding);
}

/**
 * An assumption of a sizing as a sentence.
 * @example
 * describePanelAssumption({ code: "grain-along-height" }, showIn("metric")) // → "The grain is taken to run along the height."
 */
export function describePanelAssumption<Code extends PanelAssumptionCode>(
  assumption: Extract<PanelAssumption, { code: Code }>,
  show: Show,
): string {
  return ASSUMPTIONS[assumption.code](assumption, show);
}

/** The bit's height as a way out. */
function otherHeight(fittingHeightMm: number | undefined, show: Show): string {
  return fittingHeightMm === undefined
    ? "Another bit, groove or thickness is needed."
    : `Set ${show.length(fittingHeightMm)} high, the bit would leave a tongue for this groove.`;
}

/** Groove depth as a way out. */
function deeperGroove(neededMm: number, show: Show): string {
  return `A groove ${larger(neededMm, show)} deep would hold it; so may quartersawn or drier wood.`;
}

function moistureText(percent: number): string {
  return `${roundTo(percent, MOISTURE_DECIMALS)} %`;
}

function smaller(mm: number, show: Show): string {
  return show.length(floorTo(mm, LENGTH_DECIMALS));
}

function larger(mm: number, show: Show): string {
  return show.length(-floorTo(-mm, LENGTH_DECIMALS));
}
