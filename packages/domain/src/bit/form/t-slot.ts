import { defineForm } from "./define.ts";
import { neckedDimensions, neckedFaults, neckedOutline } from "./necked.ts";

export const tSlot = defineForm({
  kind: "t-slot",
  title: "T-slot",
  meaning: "A wide head on a neck: slots for bolts and cleats, entered from an end.",
  dimensions: neckedDimensions,
  faults: neckedFaults,
  outline: neckedOutline,
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.6,
});
