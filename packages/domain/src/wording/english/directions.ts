import type { FeedDirection } from "../../guide/direction.ts";

/** What moves which way, to follow "moving". */
export const DIRECTIONS: Readonly<Record<FeedDirection, string>> = {
  "work-right-to-left": "the work from right to left",
  "work-around-pin":
    "the work from right to left past the near side of the bit, turning it as the edge turns",
  "work-around-opening":
    "the opening's far wall past the bit from left to right, its near wall from right to left",
  "router-left-to-right": "the router from left to right as you face the edge",
  "router-around-outside": "the router counter-clockwise around the outside",
  "router-clockwise-inside": "the router clockwise around the inside",
  "router-left-to-right-straightedge-beyond":
    "the router from left to right with the straightedge beyond it, on the left of its way",
  "router-left-to-right-guided-edge-near":
    "the router from left to right with the guided edge on your side, on the right of its way",
  "router-with-template-on-left":
    "the router with the template on the left of its way: clockwise in an opening, counter-clockwise around a piece",
  "router-rows-away":
    "the router from left to right in every row, from the row nearest to you away, and carrying it back clear of the wood",
  "with-rotation": "with the rotation, lightly and firmly held",
};
