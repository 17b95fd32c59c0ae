import { dialSpeeds } from "../router/dial.ts";
import { chartRpm } from "./diameter-chart.ts";
import { defineLimit } from "./limit.ts";

/** Share of the chart's speed for a material that melts. The trade says slower; how much is ours. */
const MELTING_SHARE = 0.75;

/**
 * Plastics melt at speeds that the bit itself would bear: they are cut slower. A router that cannot go so slow is taken at its slowest,
 * for a melted edge is no danger.
 */
export const material = defineLimit({
  name: "material",
  strength: "guide",
  formula: "0.75 of the chart's speed for a material that melts; not below the router's slowest",
  source: "slower in plastics: common practice; the share is ours",
  figure: ({ wood, solid, router, policy }) => {
    if (wood === undefined || !wood.isMeltable) return undefined;
    const slowestRpm = dialSpeeds(router, policy)[0]?.rpm ?? router.minRpm;
    const rpm = Math.max(MELTING_SHARE * chartRpm(2 * solid.rimRadiusMm), slowestRpm);
    return { rpm, values: { woodName: wood.name } };
  },
  raisedBy: () => undefined,
});
