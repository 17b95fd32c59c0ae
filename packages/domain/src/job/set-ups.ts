import { allOf, type Steps } from "../quantity/steps.ts";
import { type Draft, draftOf } from "./draft.ts";
import { closesCircle, type Link } from "./links.ts";
import { type OrderRule, ruleBetween } from "./order-rule.ts";
import type { JobSetup, PlannedCut } from "./set-up.ts";

type SetupLink = Link<OrderRule>;
type PassAt = { readonly id: string; readonly pass: number };

/** The set-ups so far: which of them each cut is made at, and which comes before which. */
type Placed = {
  readonly drafts: readonly Draft[];
  readonly passesOf: ReadonlyMap<number, readonly PassAt[]>;
  readonly links: ReadonlyMap<string, SetupLink>;
};

/**
 * The set-ups of planned cuts: each pass of each cut is made at one, and passes at the same setting of the same bit in the same router share
 * it, across parts. What shares one never has to wait for itself: then a cut keeps set-ups of its own. Cuts without passes, whose plan
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
  return allOf(jobSetupsSteps(cuts));
}

/**
 * The same in short steps, for whoever must let others have their turn between them.
 * @example
 * jobSetupsSteps([]).next() // → { done: true, value: [] }
 */
export function* jobSetupsSteps(cuts: readonly PlannedCut[]): Steps<JobSetup[]> {
  let placed: Placed = { drafts: [], passesOf: new Map(), links: new Map() };
  for (const indices of cutsOfParts(cuts)) {
    placed = withPart(placed, cuts, indices);
    yield;
  }
  const { drafts } = placed;
  const links = [...placed.links.values()];
  return drafts.map(({ key: _key, ...draft }) => ({
    ...draft,
    after: links.filter(({ to }) => to === draft.id).map(({ from, why }) => ({ setupId: from, rule: why })),
  }));
}

/** The cuts of each part, by their places in the list. */
function cutsOfParts(cuts: readonly PlannedCut[]): number[][] {
  const ofParts = new Map<number, number[]>();
  for (const [index, { part }] of cuts.entries()) ofParts.set(part, [...(ofParts.get(part) ?? []), index]);
  return [...ofParts.values()];
}

/** The set-ups with those of one more part. Where sharing would lead in a circle, one cut of it keeps to itself, or else all of them do. */
function withPart(before: Placed, cuts: readonly PlannedCut[], indices: readonly number[]): Placed {
  let placed = before;
  for (const index of indices) {
    const shared = withCut(placed, cuts, indices, index, true);
    const own = shared ?? withCut(placed, cuts, indices, index, false);
    if (own === undefined) return withOwnSetups(before, cuts, indices);
    placed = own;
  }
  return placed;
}

/** The rules within one part lead in no circle, so that set-ups that it shares with no other part lead in none either. */
function withOwnSetups(before: Placed, cuts: readonly PlannedCut[], indices: readonly number[]): Placed {
  let placed = before;
  for (const index of indices) placed = withCut(placed, cuts, indices, index, false) ?? placed;
  return placed;
}

/** The set-ups with the passes of one more cut, at those that are alike or at new ones; undefined if that leads in a circle. */
function withCut(
  { drafts, passesOf, links }: Placed,
  cuts: readonly PlannedCut[],
  ofPart: readonly number[],
  index: number,
  mayShare: boolean,
): Placed | undefined {
  const cut = cuts[index];
  if (cut === undefined) return undefined;
  const next = [...drafts];
  const passes: PassAt[] = [];
  for (const planned of cut.plan.passes) {
    const made = draftOf(cut, index, planned, `setup-${next.length + 1}`);
    if (made === undefined) continue;
    const at = mayShare ? next.findIndex((each) => each.key === made.key) : -1;
    const alike = next[at];
    passes.push({ id: alike?.id ?? made.id, pass: planned.pass.number });
    if (alike === undefined) next.push(made);
    else
      next[at] = {
        ...alike,
        runs: [...alike.runs, ...made.runs],
        testPiece: alike.testPiece ?? made.testPiece,
      };
  }
  const placed = new Map(passesOf).set(index, passes);
  const more = linksOf(cuts, ofPart, index, placed).filter(({ from, to }) => !links.has(nameOf(from, to)));
  if (more.length === 0) return { drafts: next, passesOf: placed, links };
  const all = new Map(links);
  for (const link of more) all.set(nameOf(link.from, link.to), link);
  return closesCircle([...all.values()]) ? undefined : { drafts: next, passesOf: placed, links: all };
}

/** What the order of its passes, and the rules between it and the cuts of its part that are placed, ask of a cut's set-ups. */
function linksOf(
  cuts: readonly PlannedCut[],
  ofPart: readonly number[],
  index: number,
  passesOf: ReadonlyMap<number, readonly PassAt[]>,
): SetupLink[] {
  const own = passesOf.get(index) ?? [];
  const inOrder = own.slice(1).map(({ id }, place) => ({
    from: own[place]?.id ?? id,
    to: id,
    why: "passes-in-order" as const,
  }));
  const others = ofPart.filter((other) => other !== index && passesOf.has(other));
  const ruled = others.flatMap((other) => {
    const theirs = passesOf.get(other) ?? [];
    return [...between(cuts, index, other, own, theirs), ...between(cuts, other, index, theirs, own)];
  });
  return [...inOrder, ...ruled].filter(({ from, to }) => from !== to);
}

function between(
  cuts: readonly PlannedCut[],
  first: number,
  second: number,
  firstAt: readonly PassAt[],
  secondAt: readonly PassAt[],
): SetupLink[] {
  const why = ruleOf(cuts, first, second);
  if (why === undefined) return [];
  return firstAt.flatMap(({ id: from }) => secondAt.map(({ id: to }) => ({ from, to, why })));
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

function nameOf(from: string, to: string): string {
  return `${from} ${to}`;
}
