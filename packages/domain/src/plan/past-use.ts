import type { Finding } from "./findings.ts";

/** How one earlier cut with this bit came out. */
export type PastUse = {
  readonly outcome: "fine" | "scorched" | "chattered" | "tore-out" | "came-loose";
  /** Whether it was in the router, and in the wood, the plan is for. */
  readonly isSameRouter: boolean;
  readonly sameWood: boolean;
};

/**
 * What earlier cuts warn of, one finding for each code with how often: coming loose wherever it happened, chatter in this router,
 * scorching and tear-out in this wood. A cut that came out fine says nothing.
 */
export function historyFindings(history: readonly PastUse[] = []): Finding[] {
  const count = (isOne: (use: PastUse) => boolean) => history.filter(isOne).length;
  const counted: readonly Extract<Finding, { times: number }>[] = [
    {
      code: "came-loose-before",
      severity: "care",
      times: count(({ outcome }) => outcome === "came-loose"),
    },
    {
      code: "chattered-before",
      severity: "care",
      times: count(({ outcome, isSameRouter: sameRouter }) => outcome === "chattered" && sameRouter),
    },
    {
      code: "scorched-before",
      severity: "note",
      times: count(({ outcome, sameWood }) => outcome === "scorched" && sameWood),
    },
    {
      code: "tore-out-before",
      severity: "note",
      times: count(({ outcome, sameWood }) => outcome === "tore-out" && sameWood),
    },
  ];
  return counted.filter(({ times }) => times > 0);
}
