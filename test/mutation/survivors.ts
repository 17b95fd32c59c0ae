import type { Constant } from "./constants.ts";

type Excuse = { readonly names: readonly string[]; readonly reason: string };

/** Constants that a hundredth more cannot make wrong. They are tried all the same. */
const EXCUSES: readonly Excuse[] = [
  {
    names: [
      "AXIS_SLACK_MM",
      "CLEARANCE",
      "END_ROUNDING_MM",
      "EXACT_BELOW",
      "NEAR_ENOUGH",
      "REACH_SLACK_MM",
      "RELIEF_SLACK",
      "SAME_PLACE_MM",
      "SLACK_MM",
      "SLACK_MM2",
      "THINNEST_STRIP_MM",
      "WIDTH_MM",
      "dialPositions.count",
    ],
    reason: "room for rounding: an order of magnitude",
  },
  {
    names: ["EDGE_SHARE", "HALVINGS", "HALVINGS_MAX", "SETTING_STEP_MM", "SHARE_STEP", "STEPS_MAX"],
    reason: "how long or how finely a search goes on",
  },
];

/** Why a constant may change unnoticed, if there is a reason. */
export function reasonToSurvive({ name }: Constant): string | undefined {
  return EXCUSES.find(({ names }) => names.includes(name))?.reason;
}
