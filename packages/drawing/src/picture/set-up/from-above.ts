import { describeStep, type FeedDirection, type Plan, type PlanInput, type Show } from "@rimwise/domain";
import { SMALL_MM } from "../../drafting/page.ts";
import { paragraphs, type Rows, textLine } from "../../drafting/text.ts";
import type { Item } from "../../scene/scene.ts";
import { type Arranged, atTable, byHand } from "./arrangements.ts";

/** The picture seen from above, mm of paper: its height, and where the bit is. */
const HEIGHT_MM = 40;
const MIDDLE_X_MM = 60;

/** The feed as one sees it from above, standing below: what moves, which way, and how the bit turns. */
export function fromAbove(plan: Plan, { cut, mounting }: PlanInput, topMm: number, show: Show): Rows {
  const step = plan.steps.findLast(({ code }) => code === "cut-edges");
  if (step?.code !== "cut-edges") return { items: [], bottomMm: topMm };
  const isGroove = cut.kind === "groove" || cut.kind === "inlay";
  const arranged: Arranged = {
    xMm: MIDDLE_X_MM,
    yMm: topMm + HEIGHT_MM / 2,
    isGroove,
    isFedWithRotation: step.direction === "with-rotation",
    guide: plan.guide,
  };
  const direction = withoutTurn(step.direction, plan);
  const items: Item[] = mounting === "table" ? atTable(direction, arranged) : byHand(direction, arranged);
  const under = paragraphs([describeStep(step, show)], topMm + HEIGHT_MM + SMALL_MM * 1.6);
  return {
    items: [
      {
        kind: "group",
        of: "from-above",
        label: "The feed, seen from above",
        items: [
          ...items,
          textLine(
            "Seen from above; you stand on this side. The round arrow is the bit, the other the feed.",
            topMm + HEIGHT_MM + SMALL_MM,
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
