import { defineForm } from "./define.ts";
import { neckedDimensions, neckedFaults, neckedOutline } from "./necked.ts";
import { wholeGroove } from "./usual-cut.ts";

export const tSlot = defineForm({
  kind: "t-slot",
  title: "T-slot",
  meaning: "A wide head on a neck: slots for bolts and cleats, entered from an end.",
  alsoCalled: ["tee"],
  suits: ["groove"],
  dimensions: neckedDimensions,
  faults: neckedFaults,
  outline: neckedOutline,
  pilotRadiusMm: () => undefined,
  usualCut: (_, outline) => wholeGroove(outline),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.6,
});
