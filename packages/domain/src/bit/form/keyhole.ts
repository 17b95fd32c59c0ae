import { defineForm } from "./define.ts";
import { neckedDimensions, neckedFaults, neckedOutline } from "./necked.ts";

export const keyhole = defineForm({
  kind: "keyhole",
  title: "Keyhole",
  meaning:
    "A head on a thin neck: hanging slots. It plunges at one end and is fed; it cannot be lifted out along the slot.",
  dimensions: neckedDimensions,
  faults: neckedFaults,
  outline: neckedOutline,
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.6,
});
