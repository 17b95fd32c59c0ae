import { burnsEasily } from "../wood/burning.ts";
import { definePrecaution } from "./define.ts";

type KeepMoving = {
  /** Whether the wood shows every scorch. */
  readonly burns: boolean;
  /** What slows the router down; nothing on one with a single speed. */
  readonly slowedBy: "mark" | "speed" | "nothing";
};

/** A bit that dwells burns, first at its slowest point; some woods show it at once. Source: common practice. */
export const keepMoving = definePrecaution<"keep-moving", KeepMoving>({
  code: "keep-moving",
  applies: ({ wood, router: { dial, minRpm, maxRpm } }) => {
    const slowedBy = dial !== undefined ? "mark" : minRpm < maxRpm ? "speed" : "nothing";
    return { burns: burnsEasily(wood), slowedBy };
  },
});
