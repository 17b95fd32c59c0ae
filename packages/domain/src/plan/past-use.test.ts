import { describe, expect, it } from "vitest";
import { describeFinding } from "../wording/english/findings.ts";
import { showIn } from "../wording/show.ts";
import { historyFindings, type PastUse } from "./past-use.ts";

const use = (outcome: PastUse["outcome"], sameRouter = true, sameWood = true): PastUse => ({
  outcome,
  isSameRouter: sameRouter,
  sameWood,
});

describe("earlier cuts", () => {
  it("say nothing if there are none, or all came out fine", () => {
    expect(historyFindings(undefined)).toEqual([]);
    expect(historyFindings([use("fine"), use("fine", false, false)])).toEqual([]);
  });

  it("warn once for each code, with how often", () => {
    expect(
      historyFindings([
        use("scorched"),
        use("came-loose"),
        use("chattered"),
        use("chattered"),
        use("tore-out"),
        use("tore-out"),
        use("tore-out"),
      ]),
    ).toEqual([
      { code: "came-loose-before", severity: "care", times: 1 },
      { code: "chattered-before", severity: "care", times: 2 },
      { code: "scorched-before", severity: "note", times: 1 },
      { code: "tore-out-before", severity: "note", times: 3 },
    ]);
  });

  it("chatter counts in the same router, scorching and tear-out in the same wood, coming loose anywhere", () => {
    const elsewhere = [
      use("chattered", false, true),
      use("scorched", true, false),
      use("tore-out", true, false),
      use("came-loose", false, false),
    ];
    expect(historyFindings(elsewhere)).toEqual([{ code: "came-loose-before", severity: "care", times: 1 }]);
    expect(historyFindings([use("chattered", true, false), use("scorched", false, true)])).toHaveLength(2);
  });

  it.each([
    [1, "once"],
    [2, "twice"],
    [5, "5 times"],
  ])("%i is worded as %s, with what to do about it", (times, words) => {
    for (const outcome of ["came-loose", "chattered", "scorched", "tore-out"] as const) {
      const [finding] = historyFindings(Array.from({ length: times }, () => use(outcome)));
      if (finding === undefined) throw new Error("no finding");
      const sentence = describeFinding(finding, showIn("metric"));
      expect(sentence).toContain(` ${words}. `);
      expect(sentence).toMatch(/^This bit has .*\.$/);
    }
  });
});
