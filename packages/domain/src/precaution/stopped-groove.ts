import { entersOwnHole, plungeOf } from "../bit/plunge.ts";
import { isUndercut } from "../bit/shape.ts";
import { isStopped } from "../cut/course.ts";
import type { Mounting } from "../router/mounting.ts";
import { definePrecaution } from "./define.ts";

type StoppedGroove = {
  readonly mounting: Mounting;
  /**
   * How the bit enters and leaves the work: plunged and raised, through a drilled hole and raised, along an undercut slot, or through a
   * keyhole's own hole. In a template's opening there is no start or end to mark.
   */
  readonly way: "plunge" | "drilled-hole" | "plunge-in-opening" | "hole-in-opening" | "back-out" | "own-hole";
};

/** A stopped groove starts and ends out of sight. A bit that is not known to cut at its end is never plunged. Source: common practice. */
export const stoppedGroove = definePrecaution<"stopped-groove", StoppedGroove>({
  code: "stopped-groove",
  applies: ({ mounting, cut, bit, solid }) => {
    if (!isStopped(cut)) return undefined;
    if (entersOwnHole(bit)) return { mounting, way: "own-hole" };
    if (isUndercut(solid.outline)) return { mounting, way: "back-out" };
    const plunges = plungeOf(bit) === "plunges";
    if (cut.kind === "inlay") return { mounting, way: plunges ? "plunge-in-opening" : "hole-in-opening" };
    return { mounting, way: plunges ? "plunge" : "drilled-hole" };
  },
});
