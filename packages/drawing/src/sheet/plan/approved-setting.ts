import { ADVICE, type Card, planCard, type Show, showIn } from "@rimwise/domain";
import type { DrawnUnits } from "../../picture/define.ts";
import { type Block, heading, title } from "../block.ts";
import { type CodeModules, code } from "../code.ts";
import { type Fact, facts } from "../facts.ts";
import { flowed } from "../flow.ts";
import { innerWidthMm, isBrief, PAPERS, type Paper, type PaperName } from "../paper.ts";
import { placedItems } from "../placed.ts";
import type { Sheet } from "../sheet.ts";
import { type PlanNamed, planBlocks } from "./blocks.ts";

/** What an approved setting is printed of; whether it may be relied on is whoever prints it to look up. */
export type ApprovedPrinted = {
  readonly name: string;
  readonly approvalId: string;
  /** For which course, by whom, until which day and under what supervision it was issued. */
  readonly issued: {
    readonly course: string;
    readonly by: string | undefined;
    readonly untilDay: string;
    readonly supervision: string;
  };
  readonly code: CodeModules;
  /** One plan a wood. */
  readonly plans: readonly [PlanNamed, ...PlanNamed[]];
  readonly units: DrawnUnits;
  readonly paper: PaperName;
};

/** A code is read at arm's length at this size, mm; on a card there is less room. */
const CODE_MM = 30;
const BRIEF_CODE_MM = 22;

/** An approved setting on paper: until when it may be relied on and a code to check that it still may, then its plan, one for each wood. */
export function approvedSheet(given: ApprovedPrinted): Sheet {
  const paper = PAPERS[given.paper];
  const show = showIn(given.units);
  const blocks = [title(paper, given.name), ...approval(given, paper), ...plansOf(given, paper, show)];
  const { approvalId, issued } = given;
  return flowed({ paper, title: given.name, foot: `Until ${issued.untilDay}, ${approvalId}`, blocks });
}

/** The same in words. */
export function approvedCard(given: Omit<ApprovedPrinted, "paper">): Card {
  const { name, approvalId, issued, plans, code: checked, units } = given;
  const { course, by, untilDay, supervision } = issued;
  const whole = plans.flatMap(({ input, plan }) => [
    { label: "wood", lines: [input.wood.name] },
    ...planCard(name, plan, showIn(units)).sections.filter(({ lines }) => !lines.includes(ADVICE)),
  ]);
  const approved = [
    `For ${course}, until ${untilDay}${by === undefined ? "" : `, issued by ${by}`}. Watched: ${supervision}.`,
    `${approvalId}: check first at ${checked.opens} whether it still holds.`,
  ];
  return {
    title: name,
    sections: [{ label: "approved", lines: approved }, ...whole, { label: "first of all", lines: [ADVICE] }],
  };
}

function plansOf({ plans }: ApprovedPrinted, paper: Paper, show: Show): Block[] {
  if (plans.length === 1) return planBlocks(plans[0], paper, show);
  return plans.flatMap((each) => [
    heading(paper, `In ${each.input.wood.name}`),
    ...planBlocks(each, paper, show),
  ]);
}

/** What was approved, beside a code: the words go on to another page if they must, the code stands at their start. */
function approval(given: ApprovedPrinted, paper: Paper): Block[] {
  const { approvalId, issued } = given;
  const codeMm = isBrief(paper) ? BRIEF_CODE_MM : CODE_MM;
  const said: Fact[] = [
    ["Approved", `for ${issued.course}`],
    ["Until", issued.untilDay],
    ...(issued.by === undefined ? [] : [["Issued by", issued.by] as const]),
    ["Watched", issued.supervision],
    ["Number", approvalId],
    ["First", "scan the code: it says whether this still holds, for you too."],
  ];
  const innerMm = innerWidthMm(paper);
  const [first, ...rest] = facts(paper, said, innerMm - codeMm - paper.textMm);
  const scanned = code(given.code, { xMm: paper.marginMm + innerMm - codeMm, yMm: 0 }, codeMm);
  if (first === undefined) return [];
  const wordsMm = [first, ...rest]
    .flatMap(({ strips }) => strips)
    .reduce((sum, { heightMm }) => sum + heightMm, 0);
  return [
    {
      part: "picture",
      ...(scanned.label !== undefined && { label: scanned.label }),
      strips: [
        {
          heightMm: codeMm,
          at: (topMm) => placedItems(scanned.items, { xMm: 0, yMm: topMm, scale: 1 }),
        },
      ],
      beforeMm: paper.textMm * 0.5,
      keepsNext: true,
      isWhole: true,
    },
    { ...first, beforeMm: -codeMm },
    ...rest,
    { part: "paragraph", strips: [{ heightMm: Math.max(0, codeMm - wordsMm), at: () => [] }], beforeMm: 0 },
  ];
}
