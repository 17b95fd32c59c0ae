/** What was learned by running a bit at one speed. */
export type SpeedTrial = {
  readonly rpm: number;
  readonly outcome: "ran-free" | "shook";
  /** Whether it was in the router the plan is for. */
  readonly isSameRouter: boolean;
};
