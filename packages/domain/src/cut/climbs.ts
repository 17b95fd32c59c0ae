import type { ConstraintContext } from "./constraints.ts";
import type { Cut } from "./kind/registry.ts";

/** Which passes of a cut are fed with the rotation: all of them, a light one before the others, or none. */
export function climbsOf(cut: Cut): ConstraintContext["climbs"] {
  if (cut.feedDirection === "with-rotation") return "all";
  return "hasBackRout" in cut && cut.hasBackRout === true ? "first" : undefined;
}
