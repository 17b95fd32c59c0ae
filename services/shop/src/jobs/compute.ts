import {
  ENGINE_VERSION,
  edgesOverJob,
  type JobSetup,
  jobSetupsSteps,
  jobTimes,
  orderDaySteps,
  type PlannedCut,
} from "@rimwise/domain";
import type { BitRecord } from "../bits/schema.ts";
import { inTurns, type Turns } from "../http/turns.ts";
import { notValid } from "../problems/problem.ts";
import { fitBits } from "../profiles/search.ts";
import type { SetupMadeRecord } from "./act-schema.ts";
import { type BestPairs, candidatesByJoint } from "./by-joint.ts";
import { groupsByProfile } from "./by-profile.ts";
import { candidatesFor, type FindBit } from "./candidates.ts";
import { type Choice, choose, type JobTime } from "./choose.ts";
import { type ComputedCut, type JobToCompute, timeOf, type Ways } from "./computed.ts";
import { cutsIn, type JobBit, type JobGrounds, jobBit, jobGrounds, machinesFor } from "./facts.ts";
import { sealed } from "./grounds.ts";
import { insteadOf } from "./instead.ts";
import { withLastingIds } from "./lasting-ids.ts";
import { madeAt, mendedBits } from "./made.ts";
import { type Attempt, attempt, type Candidate, type Piece } from "./planned.ts";
import { presentWork } from "./present.ts";
import { MOST_CUTS, type NewJob } from "./schema.ts";
import { wasteAttempt } from "./waste.ts";
import type { JobWork } from "./work-schema.ts";

/**
 * Finds the bits, plans every cut, shares set-ups, orders them, and says how long it takes. It lets others have their turn between
 * plans. Throws a problem that names everything in the job that does not exist.
 */
export async function computeJob(job: JobToCompute, ways: Ways): Promise<JobWork> {
  const { answer, turns, at } = ways;
  requireFewEnough(job);
  const grounds = await answer(jobGrounds(job, at));
  const time = timeOf(job, at);
  const mended = mendedBits(job.made ?? [], grounds.policy);
  const bits = new Map(ways.bits);
  const find = remembering(bits, at, grounds);
  const computed: ComputedCut[] = [];
  for await (const cut of computedCuts(job, { ...grounds, mended }, time, find, ways)) computed.push(cut);
  const cuts = computed.map((each, index) => plannedCut(each, index, computed, job.made ?? []));
  const planned = cuts.flatMap((cut) => cut ?? []);
  const shared = await inTurns(jobSetupsSteps(planned), turns);
  const setups = withLastingIds(shared, planned, computed);
  const day = await ordered(setups, grounds, turns);
  const inOrder = day.order.flatMap(({ setupId }) => setups.find(({ id }) => id === setupId) ?? []);
  const instead = await answer(insteadOf(bits, time));
  return presentWork({
    job,
    computed,
    planned,
    setups: inOrder,
    day,
    times: jobTimes(setups, day.changeoverMin, grounds.policy),
    edges: edgesOverJob(inOrder, planned, edgesOf(inOrder, bits), grounds.policy),
    bits,
    instead,
    grounds,
    mended,
    time,
    at,
    engineVersion: ENGINE_VERSION,
  });
}

/** Bits are chosen once for all parts that want the same in stock of the same thickness and wood, and planned for each. */
async function* computedCuts(
  job: JobToCompute,
  grounds: JobGrounds & { readonly mended: ReturnType<typeof mendedBits> },
  time: JobTime,
  find: FindBit,
  { answer, turns }: Ways,
): AsyncGenerator<ComputedCut> {
  const choices = new Map<string, readonly Choice[]>();
  const pairs: BestPairs = new Map();
  let rack: ReadonlyMap<string, BitRecord> | undefined;
  const planWith = ({ candidate, machine }: Pick<Attempt, "candidate" | "machine">, piece: Piece) =>
    attempt(candidate, machine, piece, job, grounds, grounds.mended.get(candidate.bit.record.id));

  for (const { part, cut, partNumber, cutNumber, pointer } of cutsIn(job)) {
    const wood = grounds.woods.get(part.woodId ?? job.woodId);
    if (wood === undefined) throw new Error("a wood that was looked up is not there");
    const { count, spares = 0, name } = part;
    const piece = { size: part, along: cut.along, pieces: count + spares, wood };
    const place = { part: partNumber, cut: cutNumber, name, positionMm: cut.positionMm, piece };
    const alike = JSON.stringify([cut.wanted, cut.machine, wood.id, part.thicknessMm, cut.along]);
    const chosen = choices.get(alike) ?? (await choicesFor());
    choices.set(alike, chosen);
    for (const choice of chosen) {
      await turns();
      const own = choice.taken && planWith(choice.taken, piece);
      const waste = own && (await answer(wasteAttempt(own, find)));
      if (waste !== undefined) {
        const taken = planWith(waste, piece);
        yield { ...place, choice: { taken, notTaken: [] }, own: taken, isWaste: true, ...sealed(taken) };
      }
      yield { ...place, choice, own, isWaste: false, ...sealed(own) };
    }

    /** One choice for each set-up that the cut takes. */
    async function choicesFor(): Promise<Choice[]> {
      const { wanted } = cut;
      const at = { thicknessMm: part.thicknessMm, pointer };
      if (wanted.by === "joint") {
        const { candidates, why } = await candidatesByJoint(wanted, at, find, pairs, { answer, turns });
        return [{ ...(await choiceAmong(candidates)), why }];
      }
      if (wanted.by !== "profile")
        return [await choiceAmong(await answer(candidatesFor(wanted, pointer, find)))];
      rack ??= await fitBits({ answer, turns });
      const groups = await groupsByProfile(wanted, at, rack, find, { answer, turns });
      const made: Choice[] = [];
      for (const group of groups) made.push(await choiceAmong(group));
      return made;
    }

    async function choiceAmong(candidates: readonly Candidate[]): Promise<Choice> {
      const attempts: Attempt[] = [];
      for (const candidate of candidates) {
        for (const machine of machinesFor(cut, grounds)) {
          await turns();
          attempts.push(planWith({ candidate, machine }, piece));
        }
      }
      return choose(attempts, time);
    }
  }
}

function plannedCut(
  { part, cut, positionMm, piece, own, isWaste }: ComputedCut,
  index: number,
  computed: readonly ComputedCut[],
  made: readonly SetupMadeRecord[],
): PlannedCut | undefined {
  if (own?.outcome.kind !== "planned") return undefined;
  const { plan, request } = own.outcome;
  const { record } = own.candidate.bit;
  // A cut that takes wood out stands before the cut it is for; those without a plan are left out of the count.
  const place = computed.slice(0, index).filter((each) => each.own?.outcome.kind === "planned").length;
  return {
    part,
    bitId: record.id,
    routerId: own.machine.routerId,
    mounting: own.machine.mounting,
    form: record.form.kind,
    wood: piece.wood,
    cut: request.cut,
    pieces: piece.pieces,
    positionMm,
    plan,
    isWasteFor: isWaste ? place + 1 : undefined,
    made: madeAt(made, record.id, { part, cut }),
  };
}

function ordered(setups: readonly JobSetup[], { policy }: JobGrounds, turns: Turns) {
  const asked = setups.map((setup) => ({
    id: setup.id,
    station: `${setup.routerId} ${setup.mounting}`,
    bitId: setup.bitId,
    guide: setup.guide,
    heightMm: setup.heightMm,
    fenceMm: setup.positionMm ?? setup.fenceMm,
    dial: setup.mark ?? setup.rpm,
    after: setup.after.map(({ setupId }) => setupId),
  }));
  return inTurns(orderDaySteps(asked, policy), turns);
}

function edgesOf(setups: readonly JobSetup[], bits: ReadonlyMap<string, JobBit>) {
  return [...new Set(setups.map(({ bitId }) => bitId))].flatMap((bitId) => {
    const bit = bits.get(bitId);
    if (bit === undefined) return [];
    const { toothMaterial = "unknown", used } = bit.record;
    const usedEquivalentM = used.equivalentMetresSinceSharpening;
    return [{ bitId, toothMaterial, usedEquivalentM, expectedM: bit.edgeExpectedM }];
  });
}

function remembering(bits: Map<string, JobBit>, at: string, { policy }: JobGrounds): FindBit {
  return function* (id) {
    const known = bits.get(id) ?? (yield* jobBit(id, at, policy));
    if (known !== undefined) bits.set(id, known);
    return known;
  };
}

function requireFewEnough(job: NewJob): void {
  const count = cutsIn(job).length;
  if (count <= MOST_CUTS) return;
  const accepted = `at most ${MOST_CUTS} cuts in all; make two jobs of it`;
  throw notValid([{ in: "body", pointer: "/parts", message: `That is ${count} cuts.`, accepted }]);
}
