import type { PanelVerdict } from "../../../panel/findings.ts";
import type { Severity } from "../../../plan/findings.ts";
import type { Verdict } from "../../../plan/plan.ts";

/** What a plan comes to. */
export const VERDICT_MEANINGS: Readonly<Record<Verdict, string>> = {
  run: "It may be run as planned.",
  "run-with-care": "It may be run, minding the findings.",
  "do-not-run": "It must not be run: no speed and no passes are given.",
};

/** What a finding does to the verdict. */
export const SEVERITY_MEANINGS: Readonly<Record<Severity, string>> = {
  refuse: "It stops the plan.",
  care: "It asks for care.",
  note: "It only informs.",
};

/** What a panel's findings come to. */
export const PANEL_VERDICT_MEANINGS: Readonly<Record<PanelVerdict, string>> = {
  fits: "The panel fits through the year.",
  "fits-with-care": "The panel fits, minding the findings.",
  "does-not-fit": "The panel does not fit.",
};
