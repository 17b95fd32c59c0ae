import { defineForm } from "./define.ts";
import { neckedDimensions, neckedFaults, neckedOutline } from "./necked.ts";
import { wholeGroove } from "./usual-cut.ts";

export const keyhole = defineForm({
  kind: "keyhole",
  title: "Keyhole",
  meaning:
    "A head on a thin neck: hanging slots. It plunges at one end and is fed; it cannot be lifted out along the slot.",
  alsoCalled: ["key hole", "hanging", "hanger"],
  suits: ["groove"],
  dimensions: neckedDimensions,
  faults: neckedFaults,
  outline: neckedOutline,
  pilotRadiusMm: () => undefined,
  usualCut: (_, outline) => wholeGroove(outline),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "always",
  wingFillRatio: 0.6,
});
