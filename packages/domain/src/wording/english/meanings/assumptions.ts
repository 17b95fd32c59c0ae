import type { AssumptionCode } from "../../../plan/assumptions.ts";

/** What each assumption of a plan takes for granted. */
export const ASSUMPTION_MEANINGS: Readonly<Record<AssumptionCode, string>> = {
  "no-marked-maximum": "No maximum speed is recorded for the bit.",
  "mass-estimated": "The bit was not weighed: its mass is estimated, on the heavy side.",
  "pilot-height-assumed": "The height of the pilot bearing was not given.",
  "dimension-assumed": "A part of the bit was not measured and is taken as usual.",
  "run-out-assumed": "The run-out was not measured in this collet.",
  "stick-out-assumed": "The shank between collet and cutter was not measured.",
  "motor-power-assumed": "The router's power is not recorded.",
  "collets-unknown": "The router's collets are not recorded.",
  "end-cutting-unknown": "Whether the bit cuts at its end is not recorded, so it is not plunged.",
  "work-not-described": "The piece of wood is not described: it is taken to be as long as what is cut.",
  "guide-assumed": "No guide was named: one is taken.",
  "template-assumed": "The thickness of the template was not given.",
  "overhang-assumed": "How far the work stands out past the line of the cut was not given.",
  "thickness-assumed": "The thickness of the work was not given.",
  "height-assumed": "No height was given: the bit's own is taken.",
  "fence-assumed": "No fence was given: the bit's own place is taken.",
  "reading-doubted":
    "A tachometer reading is far from the others: until a second one agrees, the faster speed counts.",
  "reading-left-out": "A tachometer reading is not used.",
  "dial-not-measured": "The dial was not measured: its speeds are drawn from the router's range.",
  "dial-between-readings": "The mark lies between two tachometer readings.",
  "dial-unknown": "The router's dial is not described: only its slowest and its fastest speed are relied on.",
  "single-speed": "The router has one speed, which may be higher than its plate says.",
  "no-load-speed": "Speeds are those without load; in the cut a router slows down.",
};
