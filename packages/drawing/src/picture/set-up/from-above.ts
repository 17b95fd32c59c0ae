import { describeStep, type FeedDirection, type Plan, type PlanInput, type Show } from "@rimwise/domain";
import { PAGE_WIDTH_MM, SMALL_MM } from "../../drafting/page.ts";
import { paragraphs, type Rows, textLine } from "../../drafting/text.ts";
import type { Item } from "../../scene/scene.ts";
import { type Arranged, atTable, byHand } from "./arrangements.ts";

/** How far the picture seen from above goes up and down from the middle of the bit, mm of paper; work along a fence in front of it takes less. */
const WHOLE = { upMm: 20, downMm: 20 };
const ALONG_FENCE = { upMm: 11, downMm: 21 };
const MIDDLE_X_MM = PAGE_WIDTH_MM / 2;

/** The feed as one sees it from above, standing below: what moves, which way, and how the bit turns. */
export function fromAbove(plan: Plan, { cut, mounting }: PlanInput, topMm: number, show: Show): Rows {
  const step = plan.steps.findLast(({ code }) => code === "cut-edges");
  if (step?.code !== "cut-edges") return { items: [], bottomMm: topMm };
  const isGroove = cut.kind === "groove" || cut.kind === "inlay";
  const direction = withoutTurn(step.direction, plan);
  const isAlongFence = direction === "work-right-to-left" && !isGroove;
  const { upMm, downMm } = isAlongFence ? ALONG_FENCE : WHOLE;
  const bottomMm = topMm + upMm + downMm;
  const arranged: Arranged = {
    xMm: MIDDLE_X_MM,
    yMm: topMm + upMm,
    isGroove,
    isFedWithRotation: step.direction === "with-rotation",
    guide: plan.guide,
  };
  const items: Item[] = mounting === "table" ? atTable(direction, arranged) : byHand(direction, arranged);
  const under = paragraphs([describeStep(step, show)], bottomMm + SMALL_MM * 1.6);
  return {
    items: [
      {
        kind: "group",
        of: "from-above",
        label: "The feed, seen from above",
        items: [
          ...items,
          textLine(
            "From above; you stand here. Round arrow: the bit; straight: the feed.",
            bottomMm + SMALL_MM,
            {
              sizeMm: SMALL_MM,
            },
          ),
        ],
      },
      ...under.items,
    ],
    bottomMm: under.bottomMm,
  };
}

/** A cut with the rotation is arranged as one against it, with its arrow turned round. */
function withoutTurn(direction: FeedDirection, { mounting }: Plan): FeedDirection {
  if (direction !== "with-rotation") return direction;
  return mounting.requested === "table" ? "work-right-to-left" : "router-left-to-right";
}
