import { showIn } from "@rimwise/domain";
import type { DrawnUnits } from "../../picture/define.ts";
import { title } from "../block.ts";
import { flowed } from "../flow.ts";
import { PAPERS, type PaperName } from "../paper.ts";
import type { Sheet } from "../sheet.ts";
import { type PlanNamed, planBlocks } from "./blocks.ts";

/** What a plan is printed of. */
export type PlanPrinted = PlanNamed & {
  /** What the shop calls the cut. */
  readonly name: string;
  readonly units: DrawnUnits;
  readonly paper: PaperName;
  /** What it was computed from, in short: it stands at the foot of each page. */
  readonly madeFrom?: string;
};

/**
 * A plan on paper, to lie beside the machine. On a card it has what is needed there: what is set, every caution, the section and the steps. A
 * plan that must not be run says that and why, and has no setting.
 */
export function planSheet(given: PlanPrinted): Sheet {
  const paper = PAPERS[given.paper];
  return flowed({
    paper,
    title: given.name,
    foot: given.madeFrom ?? "",
    blocks: [title(paper, given.name), ...planBlocks(given, paper, showIn(given.units))],
  });
}
