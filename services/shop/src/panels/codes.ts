import { PANEL_ASSUMPTION_MEANINGS, PANEL_FINDING_MEANINGS, PANEL_VERDICT_MEANINGS } from "@rimwise/domain";
import { defineCodes } from "../http/code-list.ts";

export const PanelVerdict = defineCodes({
  name: "PanelVerdict",
  title: "What the findings on a panel come to",
  meanings: PANEL_VERDICT_MEANINGS,
});
export const PanelFindingCode = defineCodes({
  name: "PanelFindingCode",
  title: "What weighs on whether a panel fits",
  meanings: PANEL_FINDING_MEANINGS,
});
export const PanelAssumptionCode = defineCodes({
  name: "PanelAssumptionCode",
  title: "What the sizing of panels took for granted",
  meanings: PANEL_ASSUMPTION_MEANINGS,
});

/** Every list of codes in a sizing of panels. */
export const PANEL_CODES = [PanelVerdict, PanelFindingCode, PanelAssumptionCode];
