import {
  ADVICE,
  CLEARANCE_MEANINGS,
  describeAssumption,
  describeFinding,
  describePrecaution,
  describeSpeed,
  describeStep,
  FORMS,
  formDiameterMm,
  mountingTitle,
  type Plan,
  type PlanInput,
  type Show,
} from "@rimwise/domain";
import { type Block, heading, listed, listItem, paragraph, picture } from "../block.ts";
import { type Fact, facts } from "../facts.ts";
import { isBrief, type Paper } from "../paper.ts";
import { setUpFigures } from "./figures.ts";
import { speedBox } from "./speed-box.ts";

/** A plan with what the shop calls its bit and its router. */
export type PlanNamed = {
  readonly input: PlanInput;
  readonly plan: Plan;
  readonly bitName?: string;
  readonly routerName?: string;
  /** Remarks that are kept with it or its bit. */
  readonly notes?: readonly string[];
};

/** The most of a page that the section takes, and the feed seen from above. */
const SECTION_SHARE = 0.4;
const ABOVE_SHARE = 0.24;
const BRIEF_SHARE = 0.82;

const GRAIN = { end: "end grain", long: "long grain", across: "across the grain" } as const;

/**
 * A plan at the machine: what it is of, the verdict with mark and speed, what to mind, the section, the steps; on more than a card also why.
 * One that must not be run comes with its reasons and without any setting.
 */
export function planBlocks(named: PlanNamed, paper: Paper, show: Show): Block[] {
  const { input, plan, notes = [] } = named;
  const said = facts(paper, factsOf(named, paper, show)).map(
    (each) => ({ ...each, keepsNext: true }) as const,
  );
  const start: Block[] = [...said, speedBox(paper, plan, show)];
  const advice = paragraph(paper, ADVICE, { weight: "bold", isSmall: isBrief(paper) });
  const remarks = listed(paper, "Remarks", notes);
  const findings = plan.findings.map((finding) => describeFinding(finding, show));
  if (plan.verdict === "do-not-run")
    return [...start, ...listed(paper, "Why not", findings), advice, ...remarks];
  const cautions = plan.precautions.map((each) => describePrecaution(each, show));
  const steps = plan.steps.map((step, index) =>
    listItem(paper, describeStep(step, show), `${index + 1}.`, isBrief(paper)),
  );
  const mind = isBrief(paper)
    ? listed(paper, "Cautions: read every card before the cut", [...findings, ...cautions])
    : [...listed(paper, "What asks for care", findings), ...listed(paper, "Cautions", cautions)];
  return [
    ...start,
    ...mind,
    advice,
    ...drawn(input, plan, paper, show),
    heading(paper, "Steps"),
    ...steps,
    ...(isBrief(paper) ? [] : why(plan, paper, show)),
    ...remarks,
  ];
}

function factsOf({ input, plan, bitName, routerName }: PlanNamed, paper: Paper, show: Show): Fact[] {
  const { bit, wood, cut } = input;
  const form = FORMS.find(({ kind }) => kind === bit.form.kind)?.title ?? bit.form.kind;
  const sizes = `${form}, Ø ${show.length(formDiameterMm(bit.form))}, shank ${show.length(bit.shankDiameterMm)}`;
  const held = mountingTitle(plan.mounting.requested);
  const edges = cut.edges.map(
    ({ lengthMm, grain }, index) => `${index + 1}: ${show.length(lengthMm)}, ${GRAIN[grain]}`,
  );
  const router: Fact = ["Router", [routerName, held].filter((each) => each !== undefined).join(", ")];
  if (isBrief(paper)) return [["Bit", bitName ?? sizes], router];
  return [
    ["Bit", [bitName, sizes].filter((each) => each !== undefined).join(": ")],
    router,
    ["Cleared", CLEARANCE_MEANINGS[plan.mounting.allowed]],
    ["Wood", wood.name],
    ["Edges", edges.join("; ")],
  ];
}

function drawn(input: PlanInput, plan: Plan, paper: Paper, show: Show): Block[] {
  const figures = setUpFigures(input, plan, show);
  if (figures === undefined) return [];
  const roomMm = paper.heightMm - 2 * paper.marginMm;
  const { section, above, legend } = figures;
  if (isBrief(paper))
    return [picture(paper, section, roomMm * BRIEF_SHARE), paragraph(paper, legend, { isSmall: true })];
  return [
    heading(paper, "Set-up"),
    picture(paper, section, roomMm * SECTION_SHARE),
    paragraph(paper, legend, { isSmall: true }),
    picture(paper, above, roomMm * ABOVE_SHARE),
  ];
}

function why(plan: Plan, paper: Paper, show: Show): Block[] {
  const assumed = plan.assumptions.map((each) => describeAssumption(each, show));
  return [
    ...listed(paper, "Why this speed", describeSpeed(plan, show)),
    ...listed(paper, "What was assumed", assumed),
  ];
}
