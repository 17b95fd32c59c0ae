import { defineLimit } from "./limit.ts";

/** What the motor can do. */
export const routerTop = defineLimit({
  name: "router",
  strength: "guide",
  formula: "n ≤ the router's fastest speed",
  source: "the router's rating plate or a tachometer reading",
  figure: ({ router }) => {
    const fastestReadingRpm = router.dial?.readings?.at(-1)?.rpm ?? 0;
    const rpm = Math.max(router.maxRpm, fastestReadingRpm);
    return { rpm, values: { minRpm: router.minRpm, maxRpm: rpm } };
  },
  raisedBy: () => ({ code: "faster-router" }),
});
