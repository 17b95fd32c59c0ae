import type { PanelAssumptionCode } from "../../../panel/assumptions.ts";
import type { ClimateFindingCode, PanelFindingCode } from "../../../panel/findings.ts";

/** What each finding of a panel's sizing means. */
export const PANEL_FINDING_MEANINGS: Readonly<Record<PanelFindingCode | ClimateFindingCode, string>> = {
  "panel-would-bottom":
    "In the wettest air the panel may reach the bottom of the groove and push the frame apart.",
  "panel-clearance-small": "In the wettest air little of the gap at the bottom of the groove is left.",
  "panel-would-show-gap": "In the driest air the panel may shrink out of its groove.",
  "panel-cover-small": "In the driest air little of the panel stays in the groove.",
  "keep-panel-centred":
    "If the panel slides to one side, it may come out of the other groove in the driest air.",
  "tongue-too-thick": "The panel's edge does not go into the groove.",
  "tongue-wedges": "The panel's edge goes into the groove, but not as deep as it must.",
  "tongue-cut-away": "The bit leaves nothing of the panel's edge.",
  "tongue-rattles": "The panel's edge is loose in the groove.",
  "edge-needs-thinning": "The edge of a flat panel must be thinned to go into the groove.",
  "no-field-left": "The bit takes so much from the edges that no field is left between them.",
  "moisture-outside-year": "The wood is drier or wetter now than it will ever be in use.",
};

/** What each assumption of a panel's sizing takes for granted. */
export const PANEL_ASSUMPTION_MEANINGS: Readonly<Record<PanelAssumptionCode, string>> = {
  "panel-held-centred": "The panel stays in the middle of its opening.",
  "frame-taken-as-still": "The frame does not move.",
  "no-movement-known": "How this wood moves is not known: it is taken as still.",
  "movement-spread": "At the worst a board moves more than its species' average.",
  "coefficient-from-memory": "How much this wood moves is not from a source at hand.",
  "along-grain-movement": "Along the grain wood is taken to move a little.",
  "sawn-assumed": "How the boards were sawn was not said.",
  "quartersawn-taken-as-true": "The boards are taken as truly quartersawn.",
  "grain-along-height": "The grain is taken to run along the height.",
  "moisture-tolerance-assumed": "How far the moisture content may be off was not said.",
  "raising-height-found": "The bit's height was found: it leaves a tongue that fits the groove.",
  "raising-height-whole": "No height of the bit leaves a fitting tongue, so its whole profile is taken.",
};
