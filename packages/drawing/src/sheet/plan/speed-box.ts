import { describeCeiling, type Plan, type Show, VERDICT_MEANINGS, verdictTitle } from "@rimwise/domain";
import { fitted } from "../../font/fit.ts";
import { ASCENT_EM, textWidthMm } from "../../font/metrics.ts";
import type { Item } from "../../scene/scene.ts";
import { type Block, boxed, insideBox, type Strip, smallMm, textStrips } from "../block.ts";
import { isBrief, type Paper } from "../paper.ts";

/** Of the letters of the verdict, mark and speed: read at arm's length from where one stands. */
const LARGE_RATIO = 2.5;
const BRIEF_RATIO = 2;
const LEADING = 1.3;

/** Where the verdict ends and the mark begins, and the mark ends and the speed begins: shares of the box. */
const SHARES = [0, 0.5, 0.68, 1] as const;

/** What is looked at first: the verdict, and for a plan that may be run the mark and the speed. */
export function speedBox(paper: Paper, plan: Plan, show: Show): Block {
  const { verdict, speed } = plan;
  const within = insideBox(paper);
  const small = { ...within, sizeMm: smallMm(paper) };
  const { setting } = speed;
  if (verdict === "do-not-run" || setting === undefined) {
    const large = { ...within, sizeMm: paper.textMm * LARGE_RATIO, weight: "bold" } as const;
    return boxed(paper, [
      ...textStrips(verdictTitle("do-not-run"), large),
      ...textStrips(VERDICT_MEANINGS["do-not-run"], small),
    ]);
  }
  const mark = setting.mark === undefined ? "none" : show.mark(setting.mark);
  const cells = [
    { name: "Verdict", text: verdictTitle(verdict) },
    { name: "Dial mark", text: mark },
    { name: "Speed, about", text: show.rotation(setting.rpm) },
  ];
  return boxed(paper, [
    row(paper, cells),
    ...textStrips(
      `${VERDICT_MEANINGS[verdict]} The dial may be off: up to ${show.rotation(setting.rpmHighest)}. ${describeCeiling(plan, show)}`,
      small,
    ),
  ]);
}

type Cell = { readonly name: string; readonly text: string };

function row(paper: Paper, cells: readonly Cell[]): Strip {
  const { xMm, widthMm } = insideBox(paper);
  const nameMm = smallMm(paper);
  const wishedMm = paper.textMm * (isBrief(paper) ? BRIEF_RATIO : LARGE_RATIO);
  const room = (index: number) => ((SHARES[index + 1] ?? 1) - (SHARES[index] ?? 0)) * widthMm - nameMm / 2;
  // All three in letters of one height: that of the tightest.
  const sizeMm = Math.min(
    wishedMm,
    ...cells.map(({ text }, index) => room(index) / Math.max(1, textWidthMm(text, 1, "bold"))),
  );
  const heightMm = LEADING * (nameMm + sizeMm);
  return {
    heightMm,
    at: (topMm) =>
      cells.flatMap(({ name, text }, index): Item[] => {
        const common = {
          kind: "text",
          anchor: "start",
          xMm: xMm + (SHARES[index] ?? 0) * widthMm,
        } as const;
        const said = fitted(name, { widthMm: room(index), sizeMm: nameMm, weight: "normal" });
        return [
          { ...common, ...said, weight: "normal", sizeMm: nameMm, yMm: topMm + ASCENT_EM * nameMm },
          {
            ...common,
            text,
            weight: "bold",
            sizeMm,
            yMm: topMm + LEADING * nameMm + ASCENT_EM * sizeMm,
          },
        ];
      }),
  };
}
