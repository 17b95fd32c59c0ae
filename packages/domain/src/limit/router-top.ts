import { defineLimit } from "./limit.ts";

/** What the motor can do. */
export const routerTop = defineLimit({
  name: "router",
  strength: "guide",
  formula: "n ≤ the router's fastest speed",
  source: "the router's rating plate or a tachometer reading",
  figure: ({ router }) => {
    const rpm = Math.max(router.maxRpm, ...(router.dial?.readings ?? []).map((reading) => reading.rpm));
    return { rpm, values: { minRpm: router.minRpm, maxRpm: rpm } };
  },
  raisedBy: () => ({ code: "faster-router" }),
});
