import type { Constant } from "./constants.ts";

/** Constants that a hundredth more cannot make wrong, by the end of their name, and why. */
const REASONS: readonly { readonly name: RegExp; readonly reason: string }[] = [
  {
    name: /(SLACK_MM2?|RELIEF_SLACK|NEAR_ENOUGH|SAME_PLACE_MM|END_ROUNDING_MM|THINNEST_STRIP_MM|WIDTH_MM|CLEARANCE|EXACT_BELOW)$/,
    reason: "room for rounding, an order of magnitude and not a value",
  },
  {
    name: /(STEPS_MAX|HALVINGS|HALVINGS_MAX|SHARE_STEP|SETTING_STEP_MM)$/,
    reason: "how long or how finely a solver searches; it stops earlier",
  },
];

/** Why a constant may change unnoticed, where there is a reason. */
export function reasonToSurvive({ name }: Constant): string | undefined {
  return REASONS.find((excuse) => excuse.name.test(name))?.reason;
}
