import type { GuideName } from "../cut/guide-name.ts";
import { GUIDES } from "../guide/registry.ts";
import type { PlannedPass } from "../plan/planned-pass.ts";
import { closesCircle, type Link } from "./links.ts";
import { type OrderRule, ruleBetween } from "./order-rule.ts";
import type { Before, JobSetup, PlannedCut, SetupRun } from "./set-up.ts";

const MM_PER_M = 1000;

/** Heights and fences that differ by less are one setting, mm: no lift is set finer. Ours. */
const SAME_SETTING_MM = 0.01;

type Draft = Omit<JobSetup, "after"> & { readonly key: string };

/** A rule between two cuts of one part: every set-up of the first comes before every one of the second. */
type CutLink = { readonly first: number; readonly second: number; readonly rule: OrderRule };

/**
 * The set-ups of planned cuts: each pass of each cut is made at one, and passes at the same setting of the same bit in the same router share
 * it, across parts. What shares one never has to wait for itself: then a cut keeps a set-up of its own. Cuts without passes, whose plan
 * says not to run, have none.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * const router = { minRpm: 10_000, maxRpm: 20_000, dial: { marks: { first: 1, last: 5 } }, inputPowerW: 1600 };
 * const wood = woodById("black-cherry");
 * const cut = { kind: "groove", depthMm: 3, edges: partEdges({ lengthMm: 600, widthMm: 200, thicknessMm: 19 }, "face-across") };
 * const plan = makePlan({ bit, router, mounting: "table", wood, cut, policy: DEFAULT_POLICY });
 * const alike = { bitId: "bit", routerId: "router", mounting: "table", form: "straight", wood, cut, pieces: 4, plan };
 * jobSetups([{ ...alike, part: 0 }, { ...alike, part: 1 }]).length === plan.passes.length // → true
 */
export function jobSetups(cuts: readonly PlannedCut[]): JobSetup[] {
  const rules = cutLinks(cuts);
  let drafts: Draft[] = [];
  for (const [index, cut] of cuts.entries()) {
    const shared = withCut(drafts, cut, index, true);
    drafts = closesCircle(linksBetween(shared, rules)) ? withCut(drafts, cut, index, false) : shared;
  }
  const links = linksBetween(drafts, rules);
  return drafts.map(({ key: _key, ...draft }) => ({ ...draft, after: beforesOf(links, draft.id) }));
}

/** The set-ups with the passes of one more cut, at those that are alike or at new ones. */
function withCut(drafts: readonly Draft[], cut: PlannedCut, index: number, mayShare: boolean): Draft[] {
  const next = [...drafts];
  for (const planned of cut.plan.passes) {
    const made = draftOf(cut, index, planned, `setup-${next.length + 1}`);
    if (made === undefined) continue;
    const at = mayShare ? next.findIndex((each) => each.key === made.key) : -1;
    const alike = next[at];
    if (alike === undefined) next.push(made);
    else
      next[at] = {
        ...alike,
        runs: [...alike.runs, ...made.runs],
        testPiece: alike.testPiece ?? made.testPiece,
      };
  }
  return next;
}

function draftOf(cut: PlannedCut, index: number, planned: PlannedPass, id: string): Draft | undefined {
  const { bitId, routerId, mounting, plan } = cut;
  const { setting } = plan.speed;
  const { guide, testPiece, passes } = plan;
  if (setting === undefined || guide === undefined || isMade(cut, planned)) return undefined;
  const { number, kind, heightMm, cutterMm, fenceMm } = planned.pass;
  const isLast = number === passes.length;
  const place = {
    bitId,
    routerId,
    mounting,
    guide,
    heightMm,
    cutterMm,
    fenceMm: isSetToDistance(guide) ? fenceMm : undefined,
    positionMm: cut.positionMm,
    mark: setting.mark,
    rpm: setting.rpm,
  };
  return {
    ...place,
    id,
    key: keyOf(place),
    kind,
    runs: [runOf(cut, index, planned)],
    testPiece: isLast ? testPiece : undefined,
  };
}

/** Whether the wood of a pass is gone already: it was cut as high and with the fence as far back, or further. */
function isMade({ made = [] }: PlannedCut, { pass }: PlannedPass): boolean {
  return made.some(
    ({ heightMm, fenceMm }) =>
      heightMm > pass.heightMm - SAME_SETTING_MM && fenceMm < pass.fenceMm + SAME_SETTING_MM,
  );
}

function isSetToDistance(name: GuideName): boolean {
  return GUIDES.find((guide) => guide.name === name)?.isSet === true;
}

type Place = Pick<
  JobSetup,
  "bitId" | "routerId" | "mounting" | "guide" | "heightMm" | "fenceMm" | "positionMm" | "mark" | "rpm"
>;

function keyOf({
  bitId,
  routerId,
  mounting,
  guide,
  heightMm,
  fenceMm,
  positionMm,
  mark,
  rpm,
}: Place): string {
  const settings = [heightMm, fenceMm, positionMm].map((mm) =>
    mm === undefined ? "none" : Math.round(mm / SAME_SETTING_MM),
  );
  return [bitId, routerId, mounting, guide, ...settings, mark ?? "", rpm].join(" ");
}

function runOf({ cut, pieces }: PlannedCut, index: number, { pass, secondsPerEdge }: PlannedPass): SetupRun {
  const runsSideBySide = pass.runs ?? 1;
  const lengthMm = cut.edges.reduce((sum, edge) => sum + edge.lengthMm, 0);
  return {
    cut: index,
    pass: pass.number,
    pieces,
    fenceMm: pass.fenceMm,
    metresPerPiece: (lengthMm * runsSideBySide) / MM_PER_M,
    secondsPerPiece: secondsPerEdge.reduce((sum, seconds) => sum + seconds, 0),
  };
}

/** The rules between the cuts of each part. Cuts of one part stand together in a job's list or not: all pairs are looked at. */
function cutLinks(cuts: readonly PlannedCut[]): CutLink[] {
  const ofParts = new Map<number, number[]>();
  for (const [index, { part }] of cuts.entries()) ofParts.set(part, [...(ofParts.get(part) ?? []), index]);
  return [...ofParts.values()].flatMap((indices) =>
    indices.flatMap((first) =>
      indices.flatMap((second) => {
        const rule = first === second ? undefined : ruleOf(cuts, first, second);
        return rule === undefined ? [] : [{ first, second, rule }];
      }),
    ),
  );
}

function ruleOf(cuts: readonly PlannedCut[], first: number, second: number): OrderRule | undefined {
  const [one, other] = [cuts[first], cuts[second]];
  if (one === undefined || other === undefined) return undefined;
  if (one.isWasteFor === second) return "waste-before-undercut";
  if (other.isWasteFor === first) return undefined;
  return ruleBetween(ordered(one), ordered(other));
}

function ordered({ cut, form }: PlannedCut) {
  return { kind: cut.kind, form, edges: cut.edges };
}

/** What the rules between cuts, and the order of each cut's passes, ask of the set-ups. */
function linksBetween(drafts: readonly Draft[], rules: readonly CutLink[]): Link<OrderRule>[] {
  const setupsOf = new Map<number, { readonly id: string; readonly pass: number }[]>();
  for (const { id, runs } of drafts) {
    for (const { cut, pass } of runs) {
      const made = setupsOf.get(cut) ?? [];
      made.push({ id, pass });
      setupsOf.set(cut, made);
    }
  }
  const links = new Map<string, Link<OrderRule>>();
  const add = (from: string, to: string, why: OrderRule) => {
    const name = `${from} ${to}`;
    if (from !== to && !links.has(name)) links.set(name, { from, to, why });
  };
  for (const made of setupsOf.values()) {
    const inOrder = made.toSorted((one, other) => one.pass - other.pass);
    for (const [index, { id }] of inOrder.slice(1).entries())
      add(inOrder[index]?.id ?? id, id, "passes-in-order");
  }
  for (const { first, second, rule } of rules) {
    for (const before of setupsOf.get(first) ?? []) {
      for (const after of setupsOf.get(second) ?? []) add(before.id, after.id, rule);
    }
  }
  return [...links.values()];
}

function beforesOf(links: readonly Link<OrderRule>[], id: string): Before[] {
  return links.filter(({ to }) => to === id).map(({ from, why }) => ({ setupId: from, rule: why }));
}
