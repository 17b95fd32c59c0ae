import {
  type Cut,
  type CutSettings,
  DomainError,
  describeFault,
  describeFinding,
  makePlan,
  type PartPlace,
  type PartSize,
  type PlanInput,
  type Policy,
  type PolicyLayer,
  partEdges,
  partWork,
  roundTo,
  type SearchSetting,
  showIn,
  type Wood,
} from "@rimwise/domain";
import type { BitRecord } from "../bits/schema.ts";
import { type KnownRouter, knownBit, knownRouter } from "../learned/learned.ts";
import { loans } from "../loans/reads.ts";
import { inputOf } from "../plans/gather.ts";
import { DECIMALS, dialMark, rpm } from "../plans/rounding.ts";
import { policyInForce } from "../policy/in-force.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import { whyElsewhere } from "../reservations/elsewhere.ts";
import { reservations } from "../reservations/reads.ts";
import { edgeOf } from "../sharpenings/edge.ts";
import { sharpenings } from "../sharpenings/kind.ts";
import { shopLayer } from "../shop-policy/reads.ts";
import type { Question } from "../store/query.ts";
import { uses } from "../uses/kind.ts";
import { woods } from "../woods/reads.ts";
import type { ProfileSearchAsked, ProfileSettingPlan } from "./search-schema.ts";
import type { Ways } from "./ways.ts";

/** What is known of a setting that was found. */
export type PlannedSetting = {
  readonly bit: BitRecord;
  readonly elsewhere: string | undefined;
  readonly plan: ProfileSettingPlan | undefined;
};

type Machine = NonNullable<ProfileSearchAsked["machine"]>;

/** The edge that a profile is planned along if nobody says how long it is, and the width of the work behind it, mm. Ours. */
const USUAL_LENGTH_MM = 1000;
const USUAL_WIDTH_MM = 150;

/** A standing board is taken no thicker than the plan of an edge takes it, mm. */
const STANDING_HEIGHT_MM = 150;

const MOST_OF_A_BIT = 10_000;

/** Plans each setting in the machine that was asked for, and says who has its bit. */
export async function planSettings(
  settings: readonly SearchSetting[],
  rack: ReadonlyMap<string, BitRecord>,
  thicknessMm: number,
  machine: Machine | undefined,
  { answer, turns, at }: Ways,
): Promise<ReadonlyMap<SearchSetting, PlannedSetting>> {
  const planned = new Map<SearchSetting, PlannedSetting>();
  const known = machine && (await answer(knownMachine(machine, at)));
  const edges = new Map<string, number>();
  for (const setting of settings) {
    const bit = rack.get(setting.bitId);
    if (bit === undefined) continue;
    await turns();
    const elsewhere = await answer(elsewhereNow(bit, at));
    if (known === undefined) {
      planned.set(setting, { bit, elsewhere, plan: undefined });
      continue;
    }
    const edgeUsedPercent = edges.get(bit.id) ?? (await answer(edgeUsed(bit, known.policy)));
    edges.set(bit.id, edgeUsedPercent);
    const input = await answer(inputFor(setting, thicknessMm, known, at));
    planned.set(setting, { bit, elsewhere, plan: { ...figuresOf(input), edgeUsedPercent } });
  }
  return planned;
}

/** How a setting is cut as a profile along an edge: standing, the work's width is what stands above the table. */
export function cutOf(
  { heightMm, fenceMm, presentation }: Pick<SearchSetting, "heightMm" | "fenceMm" | "presentation">,
  size: PartSize,
  pieces: number,
  along: PartPlace = "one-side",
): Cut {
  const settings: CutSettings<"edge"> = { kind: "edge", heightMm, fenceMm };
  const edges = partEdges(size, along);
  if (presentation.work === "flat") return { ...settings, edges, work: partWork(size, pieces) };
  const thicknessMm = Math.min(STANDING_HEIGHT_MM, size.widthMm);
  return { ...settings, thicknessMm, edges, work: { lengthMm: size.lengthMm, count: pieces } };
}

/** The machine that was asked for, with what every plan in it rests on. */
type KnownMachine = {
  readonly asked: Machine;
  readonly shop: PolicyLayer;
  readonly policy: Policy;
  readonly router: KnownRouter;
  readonly wood: Wood;
};

function* knownMachine(asked: Machine, at: string): Question<KnownMachine> {
  const shop = yield* shopLayer();
  const policy = policyInForce(shop);
  const router = yield* knownRouter(asked.routerId, at, policy);
  const wood = woods.find(asked.woodId);
  const faults: FieldFault[] = [];
  if (router === undefined) faults.push(missing("/machine/routerId", "router"));
  if (wood === undefined) faults.push(missing("/machine/woodId", "wood"));
  if (router === undefined || wood === undefined) throw notValid(faults);
  return { asked, shop, policy, router, wood };
}

function* edgeUsed(bit: BitRecord, policy: Policy): Question<number> {
  const ofBit = { bitId: bit.id };
  const worked = yield* uses.page("", MOST_OF_A_BIT, ofBit);
  return edgeOf(bit, worked, yield* sharpenings.page("", MOST_OF_A_BIT, ofBit), policy).usedPercent;
}

/** What the plan of one setting is computed from; undefined if its bit is no longer on the rack. */
function* inputFor(
  setting: SearchSetting,
  thicknessMm: number,
  { asked, shop, policy, router, wood }: KnownMachine,
  at: string,
): Question<PlanInput | undefined> {
  const { routerId, mounting, woodId, lengthMm = USUAL_LENGTH_MM, widthMm = USUAL_WIDTH_MM } = asked;
  const bit = yield* knownBit(setting.bitId, at, policy);
  const cut = cutOf(setting, { lengthMm, widthMm, thicknessMm }, 1);
  const request = { bit: { id: setting.bitId }, router: { id: routerId }, mounting, woodId, cut };
  return inputOf(request, { bit, router, wood, layers: [shop] });
}

function figuresOf(input: PlanInput | undefined): Omit<ProfileSettingPlan, "edgeUsedPercent"> {
  const none = {
    verdict: "do-not-run",
    mark: null,
    rpm: null,
    bindingLimit: null,
    passes: 0,
    seconds: 0,
  } as const;
  if (input === undefined) return { ...none, text: "The bit is no longer on the rack." };
  try {
    const { verdict, speed, passes, findings } = makePlan(input);
    const { setting } = speed;
    const [weightiest] = findings;
    return {
      verdict,
      mark: setting?.mark === undefined ? null : dialMark(setting.mark),
      rpm: setting ? rpm(setting.rpm) : null,
      bindingLimit: speed.bindingLimit,
      passes: passes.length,
      seconds: roundTo(
        passes.flatMap(({ secondsPerEdge }) => secondsPerEdge).reduce((sum, each) => sum + each, 0),
        DECIMALS.s,
      ),
      text: verdict !== "run" && weightiest ? describeFinding(weightiest, showIn("both")) : "",
    };
  } catch (error) {
    const [fault] = error instanceof DomainError ? error.faults : [];
    if (fault === undefined) throw error;
    return { ...none, text: describeFault(fault).message };
  }
}

function* elsewhereNow(record: BitRecord, at: string): Question<string | undefined> {
  const loan = record.loanId === undefined ? undefined : yield* loans.find(record.loanId);
  const kept = yield* reservations.keptOf(record.id);
  return whyElsewhere({ record, loan, kept }, { days: undefined, at });
}

function missing(pointer: string, what: string): FieldFault {
  return { in: "body", pointer, message: `There is no such ${what}.`, accepted: `the id of a ${what}` };
}
