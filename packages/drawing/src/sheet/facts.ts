import { ASCENT_EM } from "../font/metrics.ts";
import { type Block, textStrips } from "./block.ts";
import { innerWidthMm, type Paper } from "./paper.ts";

/** A name and what it is. */
export type Fact = readonly [name: string, text: string];

const GAP_EM = 0.8;
/** The longest of our names of facts takes less, in heights of the letter. */
const NAME_EM = 5.6;

/** Facts one under the other, their names in a column of their own; as wide as the page unless it is said. */
export function facts(paper: Paper, given: readonly Fact[], widthMm = innerWidthMm(paper)): Block[] {
  const sizeMm = paper.textMm;
  const hangMm = (NAME_EM + GAP_EM) * sizeMm;
  return given.flatMap(([name, text], index): Block[] => {
    const strips = textStrips(text, {
      sizeMm,
      xMm: paper.marginMm + hangMm,
      widthMm: widthMm - hangMm,
    });
    const [first, ...rest] = strips;
    if (first === undefined) return [];
    const named = {
      heightMm: first.heightMm,
      at: (topMm: number) => [
        {
          kind: "text" as const,
          xMm: paper.marginMm,
          yMm: topMm + ASCENT_EM * sizeMm,
          sizeMm,
          anchor: "start" as const,
          weight: "bold" as const,
          text: name,
        },
        ...first.at(topMm),
      ],
    };
    return [{ part: "paragraph", strips: [named, ...rest], beforeMm: index === 0 ? sizeMm * 0.4 : 0 }];
  });
}
