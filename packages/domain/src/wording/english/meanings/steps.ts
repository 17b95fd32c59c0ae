import type { StepCode } from "../../../plan/steps.ts";

/** What is done in each step of a plan. */
export const STEP_MEANINGS: Readonly<Record<StepCode, string>> = {
  "waste-groove": "Take out most of the wood with another bit first.",
  "mount-bit": "Seat the bit in the collet.",
  "set-dial": "Turn the dial to the mark.",
  "no-dial-to-set": "The router has one speed: there is nothing to set.",
  "set-slowest": "Turn a router whose dial is not described down as far as it goes.",
  "set-fastest": "Turn a router whose dial is not described up as far as it goes.",
  "fix-template": "Fix the template that the bearing runs on.",
  "fix-bushing-template": "Fix the template that the bushing runs along.",
  "clamp-straightedge": "Clamp the straightedge where the base runs along it.",
  "fix-pin": "Fix a starting pin in the table.",
  "clamp-on-sled": "Clamp the work on a sled.",
  "lay-rails": "Lay rails for the router's carriage.",
  "set-height": "Set how far the bit stands out.",
  "set-height-over-work": "Set the bit lower than where it touched the work.",
  "set-fence": "Set the fence or the edge guide.",
  "set-fence-to-groove": "Set the fence or the edge guide to where the groove lies.",
  "set-fence-halves": "Set both halves of the fence.",
  "move-over": "Move the fence or the straightedge to the next run beside the last.",
  "run-idle": "Run the bit out of the wood once, and listen.",
  "test-piece": "Cut a test piece and measure it.",
  "cut-edges": "Cut these edges at this setting.",
  "check-collet": "Check the collet after the first pass.",
};
