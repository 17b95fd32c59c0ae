import type { MountingClearance, MountingReason } from "../../../router/mounting.ts";

/** What a bit is cleared for. */
export const CLEARANCE_MEANINGS: Readonly<Record<MountingClearance, string>> = {
  handheld: "An ordinary bit for a handheld router, and for a table.",
  "handheld-with-care": "At the limit for a handheld router.",
  "table-only": "For a router table only.",
};

/** What a clearance rests on. */
export const MOUNTING_REASON_MEANINGS: Readonly<Record<MountingReason["code"], string>> = {
  diameter: "The bit's diameter.",
  mass: "The bit's mass.",
  "stored-energy": "The energy stored in its spin.",
  "gyroscopic-couple": "How hard it resists being tilted.",
  form: "A form that takes a table and a fence, whatever it weighs.",
};
