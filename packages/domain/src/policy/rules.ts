import { CRIB_RULES } from "./rules/crib.ts";
import { DAY_RULES } from "./rules/day.ts";
import { DIAL_RULES } from "./rules/dial.ts";
import { HANDHELD_RULES } from "./rules/handheld.ts";
import { PANEL_RULES } from "./rules/panel.ts";
import { PASS_RULES } from "./rules/pass.ts";
import { SPEED_RULES } from "./rules/speed.ts";
import { STRENGTH_RULES } from "./rules/strength.ts";
import { TRIAL_RULES } from "./rules/trial.ts";
import { UPKEEP_RULES } from "./rules/upkeep.ts";
import { WEAR_RULES } from "./rules/wear.ts";

/** Every threshold of judgement, in the order people read them. */
export const RULES = {
  ...SPEED_RULES,
  ...DIAL_RULES,
  ...HANDHELD_RULES,
  ...PASS_RULES,
  ...STRENGTH_RULES,
  ...PANEL_RULES,
  ...TRIAL_RULES,
  ...UPKEEP_RULES,
  ...WEAR_RULES,
  ...CRIB_RULES,
  ...DAY_RULES,
} as const;
