import { needsSled } from "./contact.ts";
import { defineGuide, isClosedToFences } from "./define.ts";

/**
 * A sled or coping jig that carries the work along the fence: for the ends of rails, and for parts so narrow or short that they would pivot
 * about the bit. Source: common practice.
 */
export const sled = defineGuide({
  name: "sled",
  isSet: true,
  runsOnWork: false,
  serves: (context) => {
    const { mounting, cut } = context;
    return (
      mounting === "table" && cut.kind !== "surface" && cut.kind !== "trim" && !isClosedToFences(context)
    );
  },
  waitsToBeNamed: (context) => context.form !== "cope" && !needsSled(context),
  direction: () => "work-right-to-left",
  steps: () => [{ code: "clamp-on-sled" }],
  says: ({ setup }) =>
    setup.sides === 1 ? ["never-trap-the-work", "work-clamped-on-sled"] : ["work-clamped-on-sled"],
});
