import {
  DomainError,
  describeFault,
  edgeLife,
  type Policy,
  type PolicyLayer,
  type Wood,
} from "@rimwise/domain";
import { facet } from "../bits/facets.ts";
import { bits } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import { unknownRecord } from "../http/named-records.ts";
import { type KnownBit, type KnownRouter, knownBit, knownRouter } from "../learned/learned.ts";
import { loans } from "../loans/reads.ts";
import type { LoanRecord } from "../loans/schema.ts";
import { policyInForce } from "../policy/in-force.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import { reservations } from "../reservations/reads.ts";
import type { ReservationRecord } from "../reservations/schema.ts";
import { routers } from "../routers/kind.ts";
import { sharpenings } from "../sharpenings/kind.ts";
import { shopLayer } from "../shop-policy/reads.ts";
import type { Question } from "../store/query.ts";
import { woods } from "../woods/reads.ts";
import type { JobCut, Machine } from "./cut-schema.ts";
import type { NewJob } from "./schema.ts";

/** A router of the shop as it is held. */
export type KnownMachine = Machine & { readonly known: KnownRouter };

/** A bit with what was learned of it, what is left of its edge, and who has it or keeps it. */
export type JobBit = KnownBit & {
  readonly edgeExpectedM: number;
  readonly loan: LoanRecord | undefined;
  readonly kept: readonly ReservationRecord[];
};

/** What a whole job is planned under. */
export type JobGrounds = {
  readonly shop: PolicyLayer;
  readonly policy: Policy;
  readonly machines: readonly KnownMachine[];
  /** Woods by their id. */
  readonly woods: ReadonlyMap<string, Wood>;
};

/** A bit is sharpened a dozen times in its life. */
const MOST_SHARPENINGS = 200;

/** So many bits of a form are looked at. */
const MOST_OF_FORM = 500;

/** What a job names: its routers and woods. Throws a problem that names every one that does not exist or cannot be used so. */
export function* jobGrounds(job: NewJob, at: string): Question<JobGrounds> {
  const shop = yield* shopLayer();
  const policy = policyInForce(shop, job.policy ?? {});
  const faults: FieldFault[] = [];
  const machines: KnownMachine[] = [];
  for (const { pointer, machine } of machinesIn(job)) {
    const known = yield* knownRouter(machine.routerId, at, policy);
    if (known === undefined) faults.push(unknownRecord(`${pointer}/routerId`, routers.kind.noun));
    else if (known.record.mountings?.includes(machine.mounting) === false) {
      const accepted = `one of: ${known.record.mountings.join(", ")}`;
      const message = "This router cannot be used that way.";
      faults.push({ in: "body", pointer: `${pointer}/mounting`, message, accepted });
    } else machines.push({ ...machine, known });
  }
  const found = new Map<string, Wood>();
  for (const { pointer, woodId } of woodsIn(job)) {
    const wood = woods.find(woodId);
    if (wood === undefined) faults.push(unknownWood(pointer));
    else found.set(woodId, wood);
  }
  for (const { pointer, bitId } of bitsIn(job)) {
    if ((yield* bits.find(bitId)) === undefined) faults.push(unknownRecord(pointer, bits.kind.noun));
  }
  if (faults.length > 0) throw notValid(faults);
  return { shop, policy, machines, woods: found };
}

/** Everything about one bit that a job depends on; undefined if there is no such bit. */
export function* jobBit(id: string, at: string, policy: Policy): Question<JobBit | undefined> {
  const known = yield* knownBit(id, at, policy);
  if (known === undefined) return undefined;
  const { record } = known;
  const past = yield* sharpenings.newest(MOST_SHARPENINGS, { bitId: id });
  const toothMaterial = record.toothMaterial ?? "unknown";
  const pastLives = past.map(({ lifeEquivalentM }) => lifeEquivalentM);
  const { expectedM } = edgeLife({ toothMaterial, uses: [], pastLives }, policy);
  const loan = record.loanId === undefined ? undefined : yield* loans.find(record.loanId);
  return { ...known, edgeExpectedM: expectedM, loan, kept: yield* reservations.keptOf(id) };
}

/** The bits of the rack that are of a form. */
export function* bitsOfForm(form: string): Question<BitRecord[]> {
  const match = { words: [], anyOfFacets: [[facet("kind", form)]] };
  return (yield* bits.search(0, MOST_OF_FORM, { match })).map(({ record }) => record);
}

/** The machines a cut may be made with: its own, or any of the job's. */
export function machinesFor({ machine }: JobCut, { machines }: JobGrounds): readonly KnownMachine[] {
  if (machine === undefined) return machines;
  return machines.filter(
    ({ routerId, mounting }) => routerId === machine.routerId && mounting === machine.mounting,
  );
}

/** What the domain refuses, as one sentence; anything else goes on being thrown. */
export function refusalOf(error: unknown): string {
  const [fault] = error instanceof DomainError ? error.faults : [];
  if (fault === undefined) throw error;
  const { message, accepted } = describeFault(fault);
  return `${message} Accepted: ${accepted}.`;
}

function* machinesIn(job: NewJob): Generator<{ readonly pointer: string; readonly machine: Machine }> {
  for (const [index, machine] of job.machines.entries()) yield { pointer: `/machines/${index}`, machine };
  const isListed = ({ routerId, mounting }: Machine) =>
    job.machines.some((each) => each.routerId === routerId && each.mounting === mounting);
  for (const { pointer, cut } of cutsIn(job)) {
    if (cut.machine !== undefined && !isListed(cut.machine)) {
      const accepted = "one of the job's machines";
      const message = "The job does not list this machine.";
      throw notValid([{ in: "body", pointer: `${pointer}/machine`, message, accepted }]);
    }
  }
}

function woodsIn({ woodId, parts }: NewJob) {
  return [
    { pointer: "/woodId", woodId },
    ...parts.flatMap((part, index) =>
      part.woodId === undefined ? [] : [{ pointer: `/parts/${index}/woodId`, woodId: part.woodId }],
    ),
  ];
}

function bitsIn(job: NewJob) {
  return cutsIn(job).flatMap(({ pointer, cut: { wanted } }) =>
    wanted.by === "bit" ? [{ pointer: `${pointer}/wanted/bitId`, bitId: wanted.bitId }] : [],
  );
}

/** Every cut of a job with its place in the body. */
export function cutsIn({ parts }: NewJob) {
  return parts.flatMap((part, partIndex) =>
    part.cuts.map((cut, cutIndex) => ({
      part,
      cut,
      partNumber: partIndex + 1,
      cutNumber: cutIndex + 1,
      pointer: `/parts/${partIndex}/cuts/${cutIndex}`,
    })),
  );
}

function unknownWood(pointer: string): FieldFault {
  return {
    in: "body",
    pointer,
    message: "There is no such wood.",
    accepted: "an id that GET /v1/woods lists",
  };
}
