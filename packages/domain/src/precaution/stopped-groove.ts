import { isUndercut } from "../bit/shape.ts";
import type { Mounting } from "../router/mounting.ts";
import { definePrecaution } from "./define.ts";

type StoppedGroove = {
  readonly mounting: Mounting;
  /** How the bit leaves the work: raised, back along an undercut slot, or through a keyhole's own hole. */
  readonly way: "lift" | "back-out" | "own-hole";
};

/** A stopped groove starts and ends out of sight. Source: common practice. */
export const stoppedGroove = definePrecaution<"stopped-groove", StoppedGroove>({
  code: "stopped-groove",
  applies: ({ mounting, cut, bit, solid }) => {
    if (!("stopped" in cut) || cut.stopped !== true) return undefined;
    if (bit.form.kind === "keyhole") return { mounting, way: "own-hole" };
    return { mounting, way: isUndercut(solid.outline) ? "back-out" : "lift" };
  },
});
