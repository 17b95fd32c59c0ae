/**
 * The way the work or the router moves, so that the edges meet the wood against the rotation: seen from above a router held by hand turns
 * clockwise, one in a table the other way. Source: geometry.
 */
export type FeedDirection =
  | "work-right-to-left"
  | "work-around-pin"
  | "work-around-opening"
  | "router-left-to-right"
  | "router-around-outside"
  | "router-clockwise-inside"
  | "router-left-to-right-straightedge-beyond"
  | "router-left-to-right-guided-edge-near"
  | "router-with-template-on-left"
  | "router-rows-away"
  | "with-rotation";
