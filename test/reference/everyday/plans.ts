import { DEFAULT_POLICY, makePlan, type Plan, type Router, type SetIn, woodById } from "@rimwise/domain";
import { EDGE_PLANS } from "./edges.ts";
import type { EverydayPlan } from "./everyday-plan.ts";
import { GROOVE_PLANS } from "./grooves.ts";
import { JOINT_PLANS } from "./joints.ts";
import { PANEL_PLANS } from "./panels.ts";
import { RABBET_PLANS } from "./rabbets.ts";
import { TEMPLATE_AND_SURFACE_PLANS } from "./templates-and-surfaces.ts";

export const EVERYDAY_PLANS: readonly EverydayPlan[] = [
  ...EDGE_PLANS,
  ...RABBET_PLANS,
  ...GROOVE_PLANS,
  ...PANEL_PLANS,
  ...JOINT_PLANS,
  ...TEMPLATE_AND_SURFACE_PLANS,
];

const ROUTER: Router = {
  minRpm: 8000,
  maxRpm: 24_000,
  dial: { marks: { first: 1, last: 6 }, steps: 2 },
  inputPowerW: 2200,
};

/** The plan of an everyday cut, in a strong router with a dial, in cherry if nothing else is said; set by tenths of a millimetre or by fractions of an inch. */
export function everydayPlan(
  { bit, cut, mounting, woodId = "black-cherry" }: EverydayPlan,
  setIn: SetIn = "metric",
): Plan {
  const wood = woodById(woodId);
  if (wood === undefined) throw new Error(`no wood ${woodId}`);
  return makePlan({ bit, cut, mounting, wood, router: ROUTER, policy: DEFAULT_POLICY, setIn });
}
